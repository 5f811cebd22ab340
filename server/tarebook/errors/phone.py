"""The phone's own troubles: storage, camera, network."""

from tarebook.errors.row import first

# fmt: off
ROWS = {
    "storage_full": first("This phone has no room left; nothing of this was saved.",
        "Make room on the phone and save again. What you typed is still here.", 507),
    "storage_failed": first("The phone's own store did not take this; nothing of it was saved.",
        "Save again; if it happens again, export everything and reload the app.", 500),
    "storage_blocked": first("Another tab holds the records with an older app.",
        "Close Tarebook's other tabs, then reload this one.", 500),
    "storage_newer": first("The records on this device were written by a newer app.",
        "Reload to get the newer app; nothing was changed.", 500),
    "garage_not_open": first("No garage is open on this device yet; nothing was saved.",
        "Pair this device with the garage first.", 500),
    "not_savable": first("The field {field} does not fit; nothing was saved.", "Correct it and save again.", 422),
    "unreachable": first("The home computer does not answer.",
        "It is tried again by itself; until then everything stays here.", 503),
    "answer_unreadable": first("The home computer's answer could not be read.",
        "It is tried again by itself; until then everything stays here.", 502),
    "app_older": first("This app is older than the home computer's, which does not understand it.",
        "Take the new version, under Devices; until then everything stays here, and export keeps it safe.", 426),
    "home_older": first("The home computer's Tarebook is older than this app and does not understand it.",
        "Update it there; until then everything stays here, and export keeps it safe.", 426),
    "photo_not_shrunk": first("This phone could not make the picture small enough.",
        "Save without it, or choose another one.", 422),
    "photo_damaged_here": first("A photo on this phone is damaged and cannot be sent.",
        "Take it again if the thing is still at hand. What was weighed is not touched.", 422),
}
# fmt: on
