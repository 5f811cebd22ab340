"""Sheet stock: what a part cut from it will weigh."""

from tarebook.errors.row import later

# fmt: off
ROWS = {
    "sheet_material_unknown": later("Nothing is known of the material {material}.",
        "Choose one of the list, or enter its density."),
    "sheet_density_range": later("The lowest and the highest density do not make a range.",
        "Enter the lowest and the highest in kg/m³, the lowest first."),
    "sheet_no_thickness": later("The thickness is missing.", "Measure the sheet, or enter what it is sold as."),
    "sheet_gauge_unknown": later("The gauge table {table} has no number {gauge} here.", "Enter the thickness instead."),
    "sheet_gauge_not_steel": later("These gauge numbers are for steel, not for {material}.",
        "Enter the thickness instead: other metals have other gauges."),
    "sheet_thick": later("Nothing {text} thick is sold as sheet.", "Look at the number and its unit."),
    "sheet_huge": later("A size of {text} is more than any sheet for a car has.", "Look at the number and its unit."),
    "sheet_small": later("The piece would weigh less than 0.1 g.", "Look at the numbers and their units."),
    "sheet_size_missing": later("The {size} is missing.", "Type it with its unit, such as {example}."),
    "sheet_corner": later("Corner {corner} cannot be read: {typed}.",
        "Type how far across and how far up, each with its unit and a comma between, such as {example}."),
    "sheet_corners_long": later("These corners take more room than a record has.",
        "Draw the outline with fewer, or type shorter lengths."),
    "sheet_corners": later("An outline has {corners} corners.", "Draw one with 3 to {most}."),
    "sheet_crosses": later("Side {side} of an outline crosses or touches side {other}.",
        "Move a corner so that no two sides meet except at their ends; side 1 runs from corner 1 to corner 2."),
    "sheet_hole_outside": later("Hole {hole} does not lie wholly inside the outline.",
        "Move it or make it smaller, or draw the outline around it."),
    "sheet_holes_overlap": later("Holes {hole} and {other} overlap.", "Draw them as one hole."),
    "sheet_holes_too_large": later("The holes leave nothing of the piece.", "Correct their sizes."),
    "sheet_as_sold": later("The thickness is the one it is sold as; the real one is often less.",
        "Measure the sheet and say so."),
    "sheet_gauge_convention": later(
        "Gauge tables list steel 2.4 % heavier than it is: 41.82 lb/ft² for an inch is a convention.",
        "Measure the thickness to know better."),
    "sheet_gauge_legal": later(
        "The legal gauge means weight; its thicknesses are those of wrought iron, not of steel sheet.",
        "If the seller means the thickness, choose the makers' gauge."),
}
# fmt: on
