"""The rows of the error table that speak of the home computer's own business: backups, and joining a phone."""

from __future__ import annotations

from tarebook.error_row import ErrorRow

# fmt: off
BACKUPS = {
    "backup_no_room": ErrorRow(507, "There is no room for a backup in {folder}; none was made.",
        "Make room there, or name a file elsewhere: tarebook backup FILE. Older backups are untouched."),
    "backup_differs": ErrorRow(500, "{changed} rows of the backup are not what its journal makes; it was not kept.",
        "Run tarebook rebuild, then make the backup again."),
    "backup_damaged": ErrorRow(500, "The backup {file} is damaged: {reason}.",
        "Use an older one. Nothing was changed."),
    "backup_newer": ErrorRow(500, "The backup {file} was made by a newer Tarebook.",
        "Update this one; nothing was changed."),
    "not_a_backup": ErrorRow(500, "The file {file} is not a backup of Tarebook, or only a piece of one.",
        "Name one that tarebook backup made. What an app has exported is taken in by tarebook import."),
    "restore_not_empty": ErrorRow(500, "The database that DATABASE_URL names holds a garage already.",
        "Make an empty database and name that one. Nothing was changed."),
}
# fmt: on
