"""What `tarebook doctor` finds beside what has a row elsewhere."""

from tarebook.errors.row import at_home

# fmt: off
ROWS = {
    "tables_differ": at_home("{changed} rows of the tables are not what the journal makes.",
        "Run tarebook rebuild. The journal, which is the truth, is sound."),
    "photos_damaged": at_home("{bad} of {known} photos are damaged or missing on this computer.",
        "Leave tarebook serve running: what a backup has is brought back, and phones send the rest again."),
    "disk_low": at_home("Only {free} MB are free on the disk of the folder {folder}.",
        "Make room. Until then photos and daily backups wait; weighings still go in."),
    "clock_behind": at_home("This computer's clock says {now}, but {what} is of {then}.",
        "Set its date and time. If they are right now and were wrong then, nothing needs to be done."),
    "open_to_others": at_home("Others on this computer can read {file}.",
        "Run chmod -R go= on it, or start tarebook serve, which does so with what is its own."),
}
# fmt: on
