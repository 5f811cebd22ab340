"""What cannot be taken in: a spreadsheet's lines, or what an app has exported."""

from tarebook.errors.row import at_home

# fmt: off
ROWS = {
    "import_no_header": at_home("The file {file} has no line that names its columns.",
        "Begin it with a line such as: part, off, on, unit, quantity, stage, zone, hours, money, note.", 500),
    "import_own_report": at_home("The file {file} is Tarebook's own report; here its jobs would count twice.",
        "An empty garage can take it in. To have its lines as new jobs all the same, remove the columns {columns}.",
        500),
    "import_column_twice": at_home("Line {line} names two columns {column}.", "Rename or remove one of them.", 500),
    "import_strict": at_home("{bad} of {lines} lines cannot be read, so nothing was taken in.",
        "Correct them, or leave --strict out to take in the others.", 500),
    "import_unasked": at_home("Nothing was taken in: nobody has said yes.",
        "Give the same command with --yes when it is right.", 500),
    "import_not_found": at_home("No import of a file {file} is here to be taken back.",
        "Those that are: {imports}.", 500),
    "line_open_quote": at_home("A quotation mark is opened and never closed.", "Close it, or take it out."),
    "line_no_part": at_home("No part is named.", "Name it in the column part."),
    "line_heading": at_home("“{part}” is a heading, not a part.", "If it is a part, say what it weighs."),
    "line_blank": at_home("There is nothing in it.", "Leave it as it is."),
    "line_two_readings": at_home("“{typed}” can mean two things: {instead}.",
        "Type the one it is, or say for the whole file which mark stands before decimals: --decimals comma or point."),
    "line_empty": at_home("It has neither a mass nor hours nor money.", "Enter what came off, or what went on."),
    "line_total": at_home("“{part}” is a sum, not a part.", "Leave it out; Tarebook adds up by itself."),
    "line_too_long": at_home("It is longer than {most} characters.", "Shorten it."),
    "line_bad_quantity": at_home("“{typed}” is not a number of pieces.", "Type a whole number from 1 to {most}."),
    "line_bad_number": at_home("“{typed}” is not a plain number.", "Type it like 12.50."),
    "import_is_backup": at_home("The file {file} is a backup.", "Bring it back with tarebook restore.", 500),
    "export_newer": at_home("The export {file} was made by a newer app.",
        "Update Tarebook on this computer; nothing was taken in.", 500),
    "export_unreadable": at_home("The export {file} is cut short before it says whose it is.",
        "Export again on the phone, and import that file.", 500),
    "export_other_garage": at_home("The export {file} is of another garage than the one in this folder.",
        "Name the folder of its own garage, or an empty one, with --data.", 500),
    "export_cut_short": at_home("The file ends in the middle; all that came before is looked at.",
        "Export again on the phone if it still can, and import that file too."),
    "export_line_unreadable": at_home("This record of the export cannot be read.",
        "Export again on the phone if it still can."),
    "export_photo_damaged": at_home("A photo in the export is damaged.", "Export again on the phone if it still can."),
}
# fmt: on
