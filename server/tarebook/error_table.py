"""The error table: every code with its HTTP status, its sentence and what a person can do about it.

`{name}` in a text is filled from the error's data. To add a code, add a row to its group and run `python -m
tarebook.contract`; no other place knows sentences.
"""

from __future__ import annotations

from tarebook.error_row import ErrorRow
from tarebook.error_table_car import WHOLE_CAR
from tarebook.error_table_home import BACKUPS, JOINING, RESCUE
from tarebook.error_table_lan import HOME_NETWORK

# fmt: off
_REQUEST = {
    "bad_request": ErrorRow(400, "The request could not be read.",
        "Reload the app; if it happens again, export and report it."),
    "malformed_json": ErrorRow(400, "What was sent is not readable JSON: {reason}.", "Send one JSON object in UTF-8."),
    "bad_input": ErrorRow(422, "Something sent has the wrong shape.",
        "Look at the fields named in the data and send them as documented."),
    "not_found": ErrorRow(404, "There is nothing at this address.", "Check the address."),
    "method_not_allowed": ErrorRow(405, "This address does not do that.",
        "Use one of the methods in the Allow header."),
    "too_large": ErrorRow(413, "That is more than one request may carry.", "Send it in smaller pieces."),
    "unsupported_type": ErrorRow(415, "The request has a content type this address does not take.",
        "Send application/json."),
    "wrong_host": ErrorRow(421, "This server does not answer to that host name.",
        "Open the address that tarebook serve printed."),
    "rate_limited": ErrorRow(429, "Too many tries in a short time.", "Wait a minute and try again."),
    "broken": ErrorRow(500, "The server met a fault of its own.",
        "Nothing you saved is lost. Try again; if it happens again, report it."),
    "busy": ErrorRow(503, "The database is busy.", "It will be tried again by itself."),
    "disk_full": ErrorRow(507, "The home computer's disk is full; nothing of this was kept there.",
        "Make room on it. The phone keeps everything until then."),
    "store_unwell": ErrorRow(507, "The home computer cannot write to its folder.",
        "Check the folder and its disk. The phone keeps everything until then."),
}

_DEVICES = {
    "unpaired": ErrorRow(401, "This device is not paired with the garage.",
        "Pair it with a fresh link from the home computer. Its records stay here."),
    "revoked": ErrorRow(403, "This device was taken off the garage's list.",
        "Everything is still here: export it, then pair again."),
    "device_unknown": ErrorRow(404, "There is no such device.", "Reload the list of devices."),
    "garage_unknown": ErrorRow(404, "There is no such garage here.", "Check the name with tarebook devices."),
}

_SYNC = {
    "protocol": ErrorRow(426, "This app is too old or too new to talk to the home computer.",
        "Update the app; until then export keeps everything safe."),
    "other_garage": ErrorRow(409, "These records belong to another garage.",
        "Pair this app with the garage they came from."),
    "rewound": ErrorRow(409, "The home computer was restored from an older copy.",
        "The app sends again everything it holds, by itself."),
    "too_many_entries": ErrorRow(413, "One push may carry at most {most} entries.",
        "The app sends smaller batches by itself."),
    "entry_too_large": ErrorRow(413, "One record may be at most {most} bytes long.", "Shorten its note."),
    "upload_unknown": ErrorRow(404, "There is no such upload.", "The app starts it again by itself."),
    "upload_offset": ErrorRow(409, "The upload goes on at byte {offset}.", "The app goes on from there by itself."),
    "upload_chunk_too_large": ErrorRow(413, "A piece of a photo may be at most {most} bytes long.",
        "The app sends smaller pieces by itself."),
    "photo_too_large": ErrorRow(413, "A photo may be at most {most} bytes long.",
        "Take it again, or choose a smaller one."),
    "photo_hash_mismatch": ErrorRow(422, "The photo arrived damaged.", "The app sends it again by itself."),
    "photo_not_an_image": ErrorRow(422, "This file is not a picture.", "Choose a JPEG, PNG or WebP picture."),
    "photo_wrong_type": ErrorRow(422, "This picture is {found}, not {told}.", "Choose it again."),
    "photo_too_many_pixels": ErrorRow(422, "This picture has {width} × {height} pixels, too many to open safely.",
        "Choose a smaller one."),
    "photo_truncated": ErrorRow(422, "This picture is cut short.", "Take or choose it again."),
    "photo_unknown": ErrorRow(404, "This photo is not on the home computer.",
        "It comes when the phone that took it has sent it."),
}

# The reasons for which an entry is set aside: kept, numbered, shown, and folded later when it can be.
_ASIDE = {
    "unreadable": ErrorRow(200, "This record could not be read.", "It is kept as it came. Export keeps it too."),
    "newer_schema": ErrorRow(200, "This record was made by a newer app.",
        "Update this one; the record then appears by itself."),
    "unknown_kind": ErrorRow(200, "This record is of a kind this app does not know.",
        "Update the app; the record then appears by itself."),
    "invalid": ErrorRow(200, "This record has a field that does not fit.",
        "It is kept as it came; enter it again if it matters."),
    "waiting": ErrorRow(200, "This record follows one that has not arrived yet.",
        "It appears by itself when the other phone has sent its records."),
    "fact": ErrorRow(200, "This changes a reading, and readings are never changed.",
        "Weigh again, or enter the correction as a new reading."),
    "id_reuse": ErrorRow(200, "Two different records came under one name.",
        "Both are kept; look at them and keep the right one."),
    "stranger": ErrorRow(200, "This record comes from a device that is not in this garage.",
        "Look at it, then take it in or leave it."),
    "kind_changed": ErrorRow(200, "This record says it is another kind of thing than before.",
        "It is kept as it came; enter it again if it matters."),
}

_SERVE = {
    "port_taken": ErrorRow(500, "Port {port} is taken by another program.",
        "Stop that program, or choose another port with {option}."),
    "folder_not_writable": ErrorRow(500, "The folder {folder} cannot be written to.",
        "Choose another one with --data, or change its permissions."),
    "folder_in_use": ErrorRow(500, "Another Tarebook is already serving the folder {folder}.",
        "Stop it, or choose another folder with --data."),
    "database_newer": ErrorRow(500, "The database was made by a newer Tarebook.",
        "Update this one; nothing was changed."),
    "database_unreachable": ErrorRow(500, "The database cannot be opened: {reason}.",
        "Check DATABASE_URL and that the database is running."),
    "database_damaged": ErrorRow(500, "The file {folder} is not a readable Tarebook database.",
        "Restore it from a copy; nothing was changed."),
    "app_missing": ErrorRow(404, "The app's files are not part of this installation.", "Install again: pip install ."),
    "bad_setting": ErrorRow(500, "The setting {name} is {value}, which cannot be used: {reason}.",
        "Correct it and start again."),
}

# Core: a typed mass, length or volume that cannot be read (core/numbers/quantity).
# Data: `typed`, `kind` and `example` always; `instead` is what the person may have meant.
_QUANTITY = {
    "quantity_empty": ErrorRow(422, "Nothing is typed here.", "Type a {kind}, like {example}."),
    "quantity_long": ErrorRow(422, "This is too long to be a {kind}.",
        "Type only the number and its unit, like {example}."),
    "quantity_unreadable": ErrorRow(422, "“{typed}” cannot be read as a {kind}.",
        "Type a number and its unit, like {example}."),
    "quantity_comma": ErrorRow(422, "The comma in “{typed}” can mean two things: type {instead}.",
        "Write decimals with a point, like 1.25, and thousands without any mark."),
    "quantity_exponent": ErrorRow(422, "“{typed}” is not written out.", "Write the number out in full."),
    "quantity_negative": ErrorRow(422, "A {kind} cannot be less than nothing.",
        "Type {instead}."),
    "quantity_zero": ErrorRow(422, "This {kind} cannot be zero.", "Type the {kind}, like {example}."),
    "quantity_absurd": ErrorRow(422, "“{typed}” is more than any car.",
        "Check the number and the unit; the most that is read is {most}."),
    "size_unlikely": ErrorRow(422, "“{typed}” is no size of a car: here {span} is read.",
        "Look for a slipped unit or digit."),
    "quantity_sum": ErrorRow(422, "“{typed}” is a sum or a count, not one reading.",
        "Type one reading, like {example}; how many pieces is asked separately."),
    "quantity_gap": ErrorRow(422, "There is a gap inside the number of “{typed}”.", "Type {instead} without the gap."),
    "quantity_fraction": ErrorRow(422, "The fraction in “{typed}” cannot be read.",
        "Type a whole number, a space and one fraction, like 6 3/8."),
    "quantity_unit_missing": ErrorRow(422, "“{typed}” lacks a unit.", "Type {instead}."),
    "quantity_unit_unknown": ErrorRow(422, "“{unit}” is not a unit of {kind}.", "Type the {kind} in {units}."),
    "quantity_unit_unclear": ErrorRow(422, "“{unit}” can mean more than one thing.", "Type {instead}."),
    "quantity_order": ErrorRow(422, "The larger unit comes first.", "Type {instead}."),
    "quantity_mix": ErrorRow(422, "{units} do not go together.", "Type the {kind} in one unit, like {example}."),
    "quantity_two_fractions": ErrorRow(422, "Only the last number may have a fraction; “{part}” has one too.",
        "Type a whole number before it, or use one unit."),
    "quantity_carry": ErrorRow(422, "“{part}” is 1 {large} or more.",
        "Type less than {most} {unit} after the {large}."),
}

# Core: what the reader of a garage could not use. `list` is the plural kind, `id` the record.
_GARAGE = {
    "unreadable_list": ErrorRow(200, "{list} is not a list of records; none of it is counted.",
        "Send a list of objects, each with an id."),
    "unreadable_record": ErrorRow(200, "Record {position} of {list} has no readable id; it is not counted.",
        "Give it an id of up to 80 plain characters."),
    "duplicate_record": ErrorRow(200, "The id {id} comes twice in {list}; only the first is counted.",
        "Give one of them an id of its own."),
    "unknown_field": ErrorRow(200, "{id} in {list} has a field {field} that nothing reads.", "Check its spelling."),
    "unreadable_field": ErrorRow(200, "The {field} of {id} in {list} cannot be read; it is left out.",
        "Look at it and enter it again."),
    "missing_field": ErrorRow(200, "{id} in {list} is not counted: it lacks its {field}.", "Enter it."),
    "dangling": ErrorRow(200, "{id} in {list} speaks of {ref}, which is not there.",
        "It may still come from another phone; else choose again."),
    "dangling_deleted": ErrorRow(200, "{id} in {list} speaks of {ref}, which was deleted.",
        "Bring that back, or choose another."),
    "unknown_car": ErrorRow(200, "There is no car {car}; the first one is shown.", "Choose one of the garage's cars."),
    "unknown_trim": ErrorRow(200, "There is no trim {trim}; the road trim is shown.", "Choose road or event."),
}

# Core: warnings beside a result (weighing, ledger, weigh-in, standing).
_CALC = {
    "not_positive": ErrorRow(200, "A weighing comes to nothing or less; it is not counted.",
        "Check which reading was with the part and which without."),
    "above_capacity": ErrorRow(200, "A reading is above what the scale can weigh.",
        "Weigh it on a larger scale, or correct the scale's capacity."),
    "no_mass": ErrorRow(200, "Nobody has weighed it yet, or said what it weighs.", "Weigh it, or say a guess."),
    "unweighed": ErrorRow(200, "Some parts have no weight yet and count as nothing.", "Weigh them, or say a guess."),
    "nothing_to_compare": ErrorRow(200, "There is no part to compare this one with.",
        "Say which part it would replace."),
}

# The phone's own troubles: storage, camera, network.
_PHONE = {
    "storage_full": ErrorRow(507, "This phone has no room left; nothing of this was saved.",
        "Make room on the phone and save again. What you typed is still here."),
    "storage_failed": ErrorRow(500, "The phone's own store did not take this; nothing of it was saved.",
        "Save again; if it happens again, export everything and reload the app."),
    "storage_blocked": ErrorRow(500, "Another tab holds the records with an older app.",
        "Close Tarebook's other tabs, then reload this one."),
    "storage_newer": ErrorRow(500, "The records on this device were written by a newer app.",
        "Reload to get the newer app; nothing was changed."),
    "garage_not_open": ErrorRow(500, "No garage is open on this device yet; nothing was saved.",
        "Pair this device with the garage first."),
    "not_savable": ErrorRow(422, "The field {field} does not fit; nothing was saved.", "Correct it and save again."),
    "unreachable": ErrorRow(503, "The home computer does not answer.",
        "It is tried again by itself; until then everything stays here."),
    "answer_unreadable": ErrorRow(502, "The home computer's answer could not be read.",
        "It is tried again by itself; until then everything stays here."),
    "app_older": ErrorRow(426, "This app is older than the home computer's, which does not understand it.",
        "Take the new version, under Devices; until then everything stays here, and export keeps it safe."),
    "home_older": ErrorRow(426, "The home computer's Tarebook is older than this app and does not understand it.",
        "Update it there; until then everything stays here, and export keeps it safe."),
    "photo_not_shrunk": ErrorRow(422, "This phone could not make the picture small enough.",
        "Save without it, or choose another one."),
    "photo_damaged_here": ErrorRow(422, "A photo on this phone is damaged and cannot be sent.",
        "Take it again if the thing is still at hand. What was weighed is not touched."),
}

# The command line: import, export, report.
_COMMAND = {
    "command_broken": ErrorRow(500, "Tarebook met a fault of its own: {reason}.",
        "Nothing saved is lost. What happened is written down in {file}."),
    "file_unreadable": ErrorRow(500, "The file {file} cannot be read: {reason}.",
        "Check its name and its permissions."),
    "file_unwritable": ErrorRow(500, "The file {file} cannot be written: {reason}.", "Choose another name or folder."),
    "garage_missing": ErrorRow(500, "There is no garage in the folder {folder} yet.",
        "Start one with tarebook serve, or name its folder with --data."),
    "host_not_loopback": ErrorRow(500, "Tarebook serves this computer only, so it cannot listen on {host}.",
        "Leave --host out. Serving phones over HTTPS comes with the next stage."),
    "calc_unknown": ErrorRow(404, "There is no computation called {name}.", "tarebook calc --list names them all."),
    "car_unknown": ErrorRow(404, "There is no car called {name} in this garage.", "Its cars are: {cars}."),
    "car_unclear": ErrorRow(422, "This garage has several cars.", "Say which one. Its cars are: {cars}."),
    "import_no_header": ErrorRow(500, "The file {file} has no line that names its columns.",
        "Begin it with a line such as: part, off, on, unit, quantity, stage, zone, hours, money, note."),
    "import_own_report": ErrorRow(500, "The file {file} is Tarebook's own report; here its jobs would count twice.",
        "An empty garage can take it in. To have its lines as new jobs all the same, remove the columns {columns}."),
    "import_column_twice": ErrorRow(500, "Line {line} names two columns {column}.", "Rename or remove one of them."),
    "import_strict": ErrorRow(500, "{bad} of {lines} lines cannot be read, so nothing was taken in.",
        "Correct them, or leave --strict out to take in the others."),
    "line_open_quote": ErrorRow(200, "A quotation mark is opened and never closed.", "Close it, or take it out."),
    "line_no_part": ErrorRow(200, "No part is named.", "Name it in the column part."),
    "line_empty": ErrorRow(200, "It has neither a mass nor hours nor money.", "Enter what came off, or what went on."),
    "line_total": ErrorRow(200, "“{part}” is a sum, not a part.", "Leave it out; Tarebook adds up by itself."),
    "line_too_long": ErrorRow(200, "It is longer than {most} characters.", "Shorten it."),
    "line_bad_quantity": ErrorRow(200, "“{typed}” is not a number of pieces.", "Type a whole number from 1 to {most}."),
    "line_bad_number": ErrorRow(200, "“{typed}” is not a plain number.", "Type it like 12.50."),
}

_COMMANDS = {**_SERVE, **HOME_NETWORK, **_COMMAND, **BACKUPS, **RESCUE}
ERRORS: dict[str, ErrorRow] = {
    **_REQUEST, **_DEVICES, **_SYNC, **_ASIDE, **_QUANTITY, **_GARAGE, **_CALC, **WHOLE_CAR, **_PHONE, **JOINING,
    **_COMMANDS,
}

_ANSWERS = (
    "not_found", "method_not_allowed", "unsupported_type", "disk_full", "store_unwell", "device_unknown",
    "garage_unknown", "upload_chunk_too_large", "photo_unknown", "pair_code_wrong", "join_unknown", "home_only",
    "no_phone_address", "device_nameless", "device_unclear",
)
ONLY_AT_HOME: frozenset[str] = frozenset((*_COMMANDS, *_ANSWERS))
"""What only commands, `serve` and its answers say: a phone that is answered so takes the words from the answer."""
# fmt: on
