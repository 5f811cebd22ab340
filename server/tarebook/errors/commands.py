"""The command line: serving, reports, computations."""

from tarebook.errors.row import at_home

# fmt: off
ROWS = {
    "port_taken": at_home("Port {port} is taken by another program.",
        "Stop that program, or choose another port with {option}.", 500),
    "folder_not_writable": at_home("The folder {folder} cannot be written to: {reason}.",
        "Choose another one with --data, or change its permissions.", 500),
    "folder_full": at_home("The disk of the folder {folder} is full.",
        "Make room on it. Until then report, devices, export, and backup to another disk still work.", 500),
    "folder_read_only": at_home("The disk of the folder {folder} is read-only.",
        "Check whether it has failed. Until then report, devices, export, and backup to another disk still work.", 500),
    "folder_in_use": at_home("Another Tarebook is already serving the folder {folder}.",
        "Stop it, or choose another folder with --data.", 500),
    "database_newer": at_home("The database was made by a newer Tarebook.",
        "Update this one; nothing was changed.", 500),
    "database_unreachable": at_home("The database cannot be opened: {reason}.",
        "Check DATABASE_URL and that the database is running.", 500),
    "database_damaged": at_home("The database {file} is damaged: {reason}.",
        "Stop the server and bring a backup back: tarebook restore FILE. Phones then send what is newer.", 500),
    "app_missing": at_home("The app's files are not part of this installation.", "Install again: pip install .", 404),
    "bad_setting": at_home("The setting {name} is {value}, which cannot be used: {reason}.",
        "Correct it and start again.", 500),
    "command_broken": at_home("Tarebook met a fault of its own: {reason}.",
        "Nothing saved is lost. What happened is written down in {file}.", 500),
    "file_unreadable": at_home("The file {file} cannot be read: {reason}.", "Check its name and its permissions.", 500),
    "file_unwritable": at_home("The file {file} cannot be written: {reason}.", "Choose another name or folder.", 500),
    "garage_missing": at_home("There is no garage in the folder {folder} yet.",
        "Start one with tarebook serve, or name its folder with --data.", 500),
    "host_not_loopback": at_home("Plain HTTP is for this computer only, so not on {host}.",
        "Leave --host or TAREBOOK_HOST out. For phones there is tarebook serve --lan, which speaks HTTPS.", 500),
    "calc_unknown": at_home("There is no computation called {name}.", "tarebook calc --list names them all.", 404),
    "car_unknown": at_home("There is no car called {name} in this garage.", "Its cars are: {cars}.", 404),
    "car_unclear": at_home("This garage has several cars.", "Say which one. Its cars are: {cars}.", 422),
}
# fmt: on
