"""What stands beside a weigh-in or a standing, and the reasons for an answer that cannot be given."""

from tarebook.errors.row import first, later

# fmt: off
ROWS = {
    "fuel_unknown": first("How much fuel was in the tank at this weigh-in is not known.",
        "Correct that weigh-in, or enter the size of the tank on the car's page."),
    "fuel_unsaid": later("How much fuel was in the tank is not said: anything from empty to full is allowed for.",
        "Say it: the weight gets surer."),
    "driver_unsaid": later("Who sat in the car is not said: anyone known and an empty seat are allowed for.",
        "Say who, or that nobody did: the weight gets surer."),
    "tank_unknown": first("The class weighs with a full tank, and the size of the tank is not entered.",
        "Enter it on the car's page."),
    "fuel_stated_missing": first("The class weighs with so much fuel, and how much is not entered.",
        "Enter it on the class sheet."),
    "driver_unknown": first("The car was weighed with a driver whose weight is not known.",
        "Say who it was, and weigh them with their gear."),
    "no_driver": first("The class weighs with the driver, and no driver's weight is known.",
        "Weigh the lightest who will drive, with their gear."),
    "no_minimum": first("The class minimum is not entered yet.", "Enter it on the class sheet."),
    "no_weigh_in": first("The car has not been weighed yet.", "Weigh the whole car."),
    "reading_missing": first("A reading of a weigh-in is missing, so it has no total.",
        "Enter every reading of it, or weigh the car again."),
    "jobs_not_confirmed": first("Nobody confirmed which jobs were in the car at the weigh-in.",
        "Correct that weigh-in and confirm its jobs."),
    "one_weigh_in": later("It takes two whole weigh-ins to check what is written down.", "Weigh the car again."),
    "no_start": later("What the car weighed before the work is not known.", "Weigh the car, or enter its book weight."),
    "reading_odd": later("One reading of this weigh-in is far from the others.",
        "Look for a slipped digit or another unit."),
    "official_scale_unnamed": later("The official scale of a weigh-in has no name; its error is assumed.",
        "Enter it as a scale: weighed on the same one again, the car is known better."),
    "official_scale_assumed": later("The official scale has not weighed this car yet; its error is assumed.",
        "Weigh the car on it when you can, and enter that as an official weigh-in."),
    "fuel_within_assumed": later(
        "How far the fuel in the tank may be off was not said; a tenth of it, at least a litre, is taken.",
        "Say how far it may be off, or weigh with the tank drained or full."),
    "fuel_kind_unknown": later("What fuel the car burns is not entered; the density of any is allowed for.",
        "Choose the fuel on the car's page."),
    "fuel_above_tank": later("More fuel is entered than the tank holds.", "Correct the fuel, or the size of the tank."),
    "fuel_rule_unsaid": later("The class sheet does not say how much fuel; it is taken as it was on the scale.",
        "Enter it on the class sheet."),
    "driver_as_weighed": later("The weight counts with whoever sat in the car; their weight is not known.",
        "Weigh every driver with their gear: the lightest who will drive decides."),
    "driver_without_mass": later("A driver has no weight yet, and the lightest who will drive decides.",
        "Weigh every driver with their gear."),
    "driver_rule_unsaid": later("The class sheet does not say whether the driver counts; the seat is taken as empty.",
        "Enter it on the class sheet."),
    "risk_unusable": later("The risk on the class sheet is not between 0 and 1; 0.05 is taken.", "Enter it like 0.05."),
    "weigh_in_tells_nothing": later("A weigh-in tells nothing that a later one does not say already.",
        "Weigh the car once more, best on another scale."),
    "unweighed_between": later(
        "Parts without a weight moved between the weigh-ins, so the earlier ones tell little of the car now.",
        "Weigh these parts, or weigh the car once more."),
    "two_differ": later(
        "Two weigh-ins differ by more than their doubts allow, and two cannot say which is off.",
        "Look for what nobody wrote down, and weigh the car once more."),
    "last_differs": later(
        "The last weigh-in does not fit the others: something changed unnoted, or it is off.",
        "Look for what nobody wrote down, and weigh the car once more."),
}
# fmt: on
