"""A typed mass, length or volume that cannot be read (core/numbers/quantity).

Data: `typed`, `kind` and `example` always; `instead` is what the person may have meant.
"""

from tarebook.errors.row import later

# fmt: off
ROWS = {
    "quantity_empty": later("Nothing is typed here.", "Type a {kind}, like {example}.", 422),
    "quantity_long": later("This is too long to be a {kind}.",
        "Type only the number and its unit, like {example}.", 422),
    "quantity_unreadable": later("“{typed}” cannot be read as a {kind}.",
        "Type a number and its unit, like {example}.", 422),
    "quantity_comma": later("The comma in “{typed}” can mean two things: type {instead}.",
        "Write decimals with a point, like 1.25, and thousands without any mark.", 422),
    "quantity_exponent": later("“{typed}” is not written out.", "Write the number out in full.", 422),
    "quantity_negative": later("A {kind} cannot be less than nothing.", "Type {instead}.", 422),
    "quantity_zero": later("This {kind} cannot be zero.", "Type the {kind}, like {example}.", 422),
    "quantity_absurd": later("“{typed}” is more than any car.",
        "Check the number and the unit; the most that is read is {most}.", 422),
    "size_unlikely": later("“{typed}” is no size of a car: here {span} is read.",
        "Look for a slipped unit or digit.", 422),
    "quantity_sum": later("“{typed}” is a sum or a count, not one reading.",
        "Type one reading, like {example}; how many pieces is asked separately.", 422),
    "quantity_gap": later("There is a gap inside the number of “{typed}”.", "Type {instead} without the gap.", 422),
    "quantity_fraction": later("The fraction in “{typed}” cannot be read.",
        "Type a whole number, a space and one fraction, like 6 3/8.", 422),
    "quantity_unit_missing": later("“{typed}” lacks a unit.", "Type {instead}.", 422),
    "quantity_unit_unknown": later("“{unit}” is not a unit of {kind}.", "Type the {kind} in {units}.", 422),
    "quantity_unit_unclear": later("“{unit}” can mean more than one thing.", "Type {instead}.", 422),
    "quantity_order": later("The larger unit comes first.", "Type {instead}.", 422),
    "quantity_mix": later("{units} do not go together.", "Type the {kind} in one unit, like {example}.", 422),
    "quantity_two_fractions": later("Only the last number may have a fraction; “{part}” has one too.",
        "Type a whole number before it, or use one unit.", 422),
    "quantity_carry": later("“{part}” is 1 {large} or more.", "Type less than {most} {unit} after the {large}.", 422),
}
# fmt: on
