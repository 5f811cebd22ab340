"""What goes between a phone and the home computer: entries, photos, and entries that are set aside.

An entry set aside is kept, numbered, shown, and folded later when it can be; its row is the reason.
"""

from tarebook.errors.row import at_home, first, later

# fmt: off
ROWS = {
    "protocol": first("This app is too old or too new to talk to the home computer.",
        "Update the app; until then export keeps everything safe.", 426),
    "other_garage": at_home("These records belong to another garage.",
        "Pair this app with the garage they came from.", 409),
    "rewound": first("The home computer was restored from an older copy.",
        "The app sends again everything it holds, by itself.", 409),
    "too_many_entries": at_home("One push may carry at most {most} entries.",
        "The app sends smaller batches by itself.", 413),
    "entry_too_large": first("One record may be at most {most} bytes long.", "Shorten its note.", 413),
    "upload_unknown": at_home("There is no such upload.", "The app starts it again by itself.", 404),
    "upload_offset": at_home("The upload goes on at byte {offset}.", "The app goes on from there by itself.", 409),
    "upload_chunk_too_large": at_home("A piece of a photo may be at most {most} bytes long.",
        "The app sends smaller pieces by itself.", 413),
    "photo_too_large": first("A photo may be at most {most} bytes long.",
        "Take it again, or choose a smaller one.", 413),
    "photo_hash_mismatch": at_home("The photo arrived damaged.", "The app sends it again by itself.", 422),
    "photo_not_an_image": first("This file is not a picture.", "Choose a JPEG, PNG or WebP picture.", 422),
    "photo_wrong_type": at_home("This picture is {found}, not {told}.", "Choose it again.", 422),
    "photo_too_many_pixels": first("This picture has {width} × {height} pixels, too many to open safely.",
        "Choose a smaller one.", 422),
    "photo_truncated": first("This picture is cut short.", "Take or choose it again.", 422),
    "photo_tells_place": at_home("This picture says where it was taken.",
        "Send it without the place. The app takes it out by itself.", 422),
    "photo_unknown": at_home("This photo is not on the home computer.",
        "It comes when the phone that took it has sent it.", 404),
    "photo_no_room": at_home("The home computer's disk is nearly full; photos wait on the phone.",
        "Make room on it. Weighings still go in.", 507),
    "photo_damaged": at_home("This photo was damaged on the home computer's disk.",
        "A phone that still has it sends it again by itself, within the hour.", 404),
    "unreadable": first("This record could not be read.", "It is kept as it came. Export keeps it too."),
    "newer_schema": first("This record was made by a newer app.",
        "Update this one; the record then appears by itself."),
    "unknown_kind": first("This record is of a kind this app does not know.",
        "Update the app; the record then appears by itself."),
    "invalid": first("This record has a field that does not fit, or changes something that is not here.",
        "It is kept as it came; enter it again if it matters."),
    "waiting": first("This record follows one that has not arrived yet, or that is set aside.",
        "It appears by itself when that one has come, or when you take it in."),
    "fact": first("This changes a reading, and readings are never changed.",
        "Weigh again, or enter the correction as a new reading."),
    "id_reuse": first("Two different records came under one name.",
        "Both are kept; look at them and keep the right one."),
    "stranger": first("This record comes from a device that is not in this garage.",
        "Look at it, then take it in or leave it."),
    "unproven": later("Sent by {sender}, and not proven to be from {author}.",
        "If it matters, ask who wrote it, or weigh again."),
    "kind_changed": first("This record says it is another kind of thing than before.",
        "It is kept as it came; enter it again if it matters."),
}
# fmt: on
