"""The rows of the error table that speak of the whole car: warnings beside a weigh-in or a standing, and the reasons
for an answer that cannot be given.
"""

from __future__ import annotations

from tarebook.error_row import ErrorRow
from tarebook.error_table_balance import BALANCE
from tarebook.error_table_fuel import FUEL
from tarebook.error_table_stock import STOCK

# fmt: off
WHOLE_CAR = {
    **BALANCE,
    **STOCK,
    **FUEL,
    "reading_missing": ErrorRow(200, "A reading of this weigh-in is missing, so it has no total.",
        "Enter every reading of it."),
    "reading_odd": ErrorRow(200, "One reading of this weigh-in is far from the others.",
        "Look for a slipped digit or another unit."),
    "gain_by_class": ErrorRow(200, "Nobody has checked this scale; its error is taken from its legal class.",
        "Check it with a mass you know."),
    "repeatability_assumed": ErrorRow(200,
        "How well this scale repeats a whole car is not known; {kg} kg is assumed for its kind.",
        "Roll the car on a few times and note how far the totals spread."),
    "official_scale_unnamed": ErrorRow(200, "The official scale of a weigh-in has no name; its error is assumed.",
        "Enter it as a scale: weighed on the same one again, the car is known better."),
    "official_scale_assumed": ErrorRow(200, "The official scale has not weighed this car yet; its error is assumed.",
        "Weigh the car on it when you can, and enter that as an official weigh-in."),
    "fuel_unknown": ErrorRow(200, "How much fuel was in the tank at this weigh-in is not known.",
        "Note the fuel at the next weigh-in, or correct this one."),
    "fuel_within_assumed": ErrorRow(200,
        "How far the fuel in the tank may be off was not said; a tenth of it, at least a litre, is taken.",
        "Say how far it may be off, or weigh with the tank drained or full."),
    "fuel_kind_unknown": ErrorRow(200, "What fuel the car burns is not entered; the density of any is allowed for.",
        "Choose the fuel on the car's page."),
    "fuel_above_tank": ErrorRow(200, "More fuel is entered than the tank holds.",
        "Correct the fuel, or the size of the tank."),
    "tank_unknown": ErrorRow(200, "The class weighs with a full tank, and the size of the tank is not entered.",
        "Enter it on the car's page."),
    "fuel_stated_missing": ErrorRow(200, "The class weighs with so much fuel, and how much is not entered.",
        "Enter it on the class sheet."),
    "fuel_rule_unsaid": ErrorRow(200, "The class sheet does not say how much fuel; it is taken as it was on the scale.",
        "Enter it on the class sheet."),
    "driver_unknown": ErrorRow(200, "The car was weighed with a driver whose weight is not known.",
        "Say who it was, and weigh them with their gear."),
    "driver_as_weighed": ErrorRow(200, "The weight counts with whoever sat in the car; their weight is not known.",
        "Weigh every driver with their gear: the lightest who will drive decides."),
    "driver_without_mass": ErrorRow(200, "A driver has no weight yet, and the lightest who will drive decides.",
        "Weigh every driver with their gear."),
    "no_driver": ErrorRow(200, "The class weighs with the driver, and no driver's weight is known.",
        "Weigh the lightest who will drive, with their gear."),
    "driver_rule_unsaid": ErrorRow(200,
        "The class sheet does not say whether the driver counts; the seat is taken as empty.",
        "Enter it on the class sheet."),
    "no_class_sheet": ErrorRow(200, "The class minimum is not entered yet.", "Enter it on the class sheet."),
    "no_minimum": ErrorRow(200, "The class minimum is not entered yet.", "Enter it on the class sheet."),
    "risk_unusable": ErrorRow(200, "The risk on the class sheet is not between 0 and 1; 0.05 is taken.",
        "Enter it like 0.05."),
    "no_weigh_in": ErrorRow(200, "The car has not been weighed yet.", "Weigh the whole car."),
    "weigh_in_incomplete": ErrorRow(200, "A weigh-in lacks a reading and has no total; it is left out.",
        "Weigh the car again, or correct that weigh-in."),
    "jobs_not_confirmed": ErrorRow(200, "Which jobs were in the car at the weigh-in was not confirmed.",
        "Correct that weigh-in and confirm its jobs."),
    "one_weigh_in": ErrorRow(200, "It takes two whole weigh-ins to check what is written down.",
        "Weigh the car again."),
    "no_start": ErrorRow(200, "What the car weighed before the work is not known.",
        "Weigh the car, or enter its book weight."),
    "ballast_kept": ErrorRow(200, "The ballast on board at the weigh-in is part of the weight.",
        "Weigh again, or correct that weigh-in, when it comes out."),
}
# fmt: on
