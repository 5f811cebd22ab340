"""Backups, and bringing the garage back from one."""

from tarebook.errors.row import at_home, later

# fmt: off
ROWS = {
    "backup_no_room": at_home("There is no room for a backup in {folder}; none was made.",
        "Make room there, or name a file elsewhere: tarebook backup FILE. Older backups are untouched.", 507),
    "backup_differs": at_home("{changed} rows of the backup are not what its journal makes; it was not kept.",
        "Run tarebook rebuild, then make the backup again.", 500),
    "backup_none": later("The home computer has proven no backup yet.",
        "It makes one by itself while tarebook serve runs; tarebook doctor there says what stands in the way."),
    "backup_old": later("The home computer's last proven backup is of {when}.",
        "It should be no older than a day. Run tarebook doctor there: it says what stands in the way."),
    "backup_damaged": at_home("The backup {file} is damaged: {reason}.", "Use an older one. Nothing was changed.", 500),
    "backup_newer": at_home("The backup {file} was made by a newer Tarebook.",
        "Update this one; nothing was changed.", 500),
    "not_a_backup": at_home("The file {file} is not a backup of Tarebook, or only a piece of one.",
        "Name one that tarebook backup made. What an app has exported is taken in by tarebook import.", 500),
    "restore_unasked": at_home("The garage in this backup lets in phones, and nobody was asked which may still do so.",
        "Add --phones all, --phones none, or --phones with names and commas between. Its phones are: {phones}. "
        "Nothing was changed.", 500),
    "restore_phone_unknown": at_home("The backup has no phone called {name} that can be let in.",
        "Its phones are: {phones}. Nothing was changed.", 500),
    "restore_not_empty": at_home("The database that DATABASE_URL names holds a garage already.",
        "Make an empty database and name that one. Nothing was changed.", 500),
}
# fmt: on
