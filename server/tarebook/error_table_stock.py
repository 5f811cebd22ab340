"""The rows of the error table that speak of sheet stock, ballast and fuel over a run."""

from __future__ import annotations

from tarebook.error_row import ErrorRow

# fmt: off
STOCK = {
    "sheet_material_unknown": ErrorRow(200, "Nothing is known of the material {material}.",
        "Choose one of the list, or enter its density."),
    "sheet_density_range": ErrorRow(200, "The density is not a range above zero.",
        "Enter the lowest and the highest in kg/m³, the lowest first."),
    "sheet_no_thickness": ErrorRow(200, "The thickness is missing.", "Measure the sheet, or enter what it is sold as."),
    "sheet_gauge_unknown": ErrorRow(200, "The gauge table {table} has no number {gauge} here.",
        "Enter the thickness instead."),
    "sheet_gauge_not_steel": ErrorRow(200, "These gauge numbers are for steel, not for {material}.",
        "Enter the thickness instead: other metals have other gauges."),
    "sheet_corners": ErrorRow(200, "An outline has {corners} corners.", "Draw one with 3 to {most}."),
    "sheet_crosses": ErrorRow(200, "Side {side} of an outline crosses or touches side {other}.",
        "Move a corner so that no two sides meet except at their ends."),
    "sheet_hole_outside": ErrorRow(200, "Hole {hole} is not wholly inside the outline.",
        "Move it, or draw the outline around it."),
    "sheet_holes_overlap": ErrorRow(200, "Holes {hole} and {other} overlap.", "Draw them as one hole."),
    "sheet_holes_too_large": ErrorRow(200, "The holes leave nothing of the piece.", "Correct their sizes."),
    "sheet_as_sold": ErrorRow(200, "The thickness is the one it is sold as; the real one is often less.",
        "Measure the sheet and say so."),
    "sheet_gauge_convention": ErrorRow(200,
        "Gauge tables list steel 2.4 % heavier than it is: 41.82 lb/ft² for an inch is a convention.",
        "Measure the thickness to know better."),
    "sheet_gauge_legal": ErrorRow(200,
        "The legal gauge means weight; its thicknesses are those of wrought iron, not of steel sheet.",
        "If the seller means the thickness, choose the makers' gauge."),
}
# fmt: on
