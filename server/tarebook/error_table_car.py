"""The rows of the error table that speak of the whole car: warnings beside a weigh-in or a standing, and the reasons
for an answer that cannot be given.
"""

from __future__ import annotations

from tarebook.error_row import ErrorRow
from tarebook.error_table_balance import BALANCE
from tarebook.error_table_beside import BESIDE
from tarebook.error_table_fuel import FUEL
from tarebook.error_table_stock import STOCK

# fmt: off
WHOLE_CAR = {
    **BALANCE,
    **BESIDE,
    **STOCK,
    **FUEL,
    "fuel_unknown": ErrorRow(200, "How much fuel was in the tank at this weigh-in is not known.",
        "Note the fuel at the next weigh-in, or correct this one."),
    "tank_unknown": ErrorRow(200, "The class weighs with a full tank, and the size of the tank is not entered.",
        "Enter it on the car's page."),
    "fuel_stated_missing": ErrorRow(200, "The class weighs with so much fuel, and how much is not entered.",
        "Enter it on the class sheet."),
    "driver_unknown": ErrorRow(200, "The car was weighed with a driver whose weight is not known.",
        "Say who it was, and weigh them with their gear."),
    "no_driver": ErrorRow(200, "The class weighs with the driver, and no driver's weight is known.",
        "Weigh the lightest who will drive, with their gear."),
    "no_class_sheet": ErrorRow(200, "The class minimum is not entered yet.", "Enter it on the class sheet."),
    "no_minimum": ErrorRow(200, "The class minimum is not entered yet.", "Enter it on the class sheet."),
    "no_weigh_in": ErrorRow(200, "The car has not been weighed yet.", "Weigh the whole car."),
    "weigh_in_incomplete": ErrorRow(200, "A weigh-in lacks a reading and has no total; it is left out.",
        "Weigh the car again, or correct that weigh-in."),
    "jobs_not_confirmed": ErrorRow(200, "Which jobs were in the car at the weigh-in was not confirmed.",
        "Correct that weigh-in and confirm its jobs."),
    "one_weigh_in": ErrorRow(200, "It takes two whole weigh-ins to check what is written down.",
        "Weigh the car again."),
    "no_start": ErrorRow(200, "What the car weighed before the work is not known.",
        "Weigh the car, or enter its book weight."),
}
# fmt: on
