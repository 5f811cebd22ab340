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

RESCUE = {
    "export_newer": ErrorRow(500, "The export {file} was made by a newer app.",
        "Update Tarebook on this computer; nothing was taken in."),
    "export_unreadable": ErrorRow(500, "The export {file} is cut short before it says whose it is.",
        "Export again on the phone, and import that file."),
    "export_other_garage": ErrorRow(500, "The export {file} is of another garage than the one in this folder.",
        "Name the folder of its own garage, or an empty one, with --data."),
    "export_cut_short": ErrorRow(200, "The file ends in the middle; all that came before is looked at.",
        "Export again on the phone if it still can, and import that file too."),
    "export_line_unreadable": ErrorRow(200, "This record of the export cannot be read.",
        "Export again on the phone if it still can."),
    "export_photo_damaged": ErrorRow(200, "A photo in the export is damaged.",
        "Export again on the phone if it still can."),
}

JOINING = {
    "pair_code_wrong": ErrorRow(403, "This code or link is wrong, used up or older than five minutes.",
        "Ask the home computer for a fresh one: tarebook pair."),
    "pair_refused": ErrorRow(403, "The home computer did not let this device in.",
        "If it was meant to, ask there for a fresh code and compare the two words."),
    "pair_over": ErrorRow(403, "Nobody said yes on the home computer in time, or the wait is over.",
        "Ask there for a fresh code: tarebook pair."),
    "join_unknown": ErrorRow(404, "That device no longer waits to be let in.", "Let it ask again with a fresh code."),
    "home_only": ErrorRow(403, "Only the home computer itself may do this.",
        "Sit down at it, and open Tarebook there by the address that tarebook serve printed."),
    "no_phone_address": ErrorRow(409, "Phones have no address to reach this computer by yet.",
        "Stop the server and start it with tarebook serve --lan."),
    "device_nameless": ErrorRow(422, "A device needs a name.", "Type one that tells it from the others."),
    "device_unclear": ErrorRow(422, "Several devices are called {name}.", "Name it by its id, as the list shows it."),
}
# fmt: on
