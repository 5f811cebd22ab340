"""What the reader of a garage could not use. `list` is the plural kind, `id` the record."""

from tarebook.errors.row import first, later

# fmt: off
ROWS = {
    "unreadable_list": later("{list} is not a list of records; none of it is counted.",
        "Send a list of objects, each with an id."),
    "unreadable_record": later("Record {position} of {list} has no readable id; it is not counted.",
        "Give it an id of up to 80 plain characters."),
    "duplicate_record": later("The id {id} comes twice in {list}; only the first is counted.",
        "Give one of them an id of its own."),
    "unknown_field": later("{id} in {list} has a field {field} that nothing reads.", "Check its spelling."),
    "unreadable_field": first("The {field} of {id} in {list} cannot be read; it is left out.",
        "Look at it and enter it again."),
    "missing_field": first("{id} in {list} is not counted: it lacks its {field}.", "Enter it."),
    "dangling": later("{id} in {list} speaks of {ref}, which is not there.",
        "It may still come from another phone; else choose again."),
    "dangling_deleted": later("{id} in {list} speaks of {ref}, which was deleted.",
        "Bring that back, or choose another."),
    "corrected_apart": later("Corrected more than once, each time without sight of the other; one counts.",
        "Look at all of them, and say which is right."),
    "unknown_car": later("There is no car {car}; the first one is shown.", "Choose one of the garage's cars."),
    "unknown_trim": later("There is no trim {trim}; the road trim is shown.", "Choose road or event."),
}
# fmt: on
