"""A run on fuel."""

from tarebook.errors.row import later

# fmt: off
ROWS = {
    "fuel_class_empty": later(
        "The class weighs with an empty tank, so the fuel left after a run changes nothing for the minimum.",
        "Look at the weight now."),
    "fuel_class_full": later(
        "The class weighs with a full tank, so the fuel left after a run changes nothing for the minimum.",
        "Look at the weight now."),
    "fuel_class_stated": later(
        "The class weighs with a stated amount of fuel, so what is left after a run changes nothing for the minimum.",
        "Look at the weight now."),
    "fuel_start_unknown": later("How much fuel the run starts with is not known.",
        "Enter it, or the size of the tank on the car's page."),
    "tank_size_unknown": later("The size of the tank is not entered.", "Enter it on the car's page."),
    "fuel_lap_unknown": later("How much fuel a lap takes is not known.",
        "Enter it: what you filled up after some laps, divided by those laps."),
    "fuel_no_laps": later("The run has no laps yet.", "Say how many laps it has."),
    "fuel_many_laps": later("The run has more laps than are worked out; the first {most} are told.",
        "Enter it in parts, each with what is in the tank then."),
    "fuel_start_above_tank": later(
        "The start is more fuel than the tank holds; the run is worked out with a full tank.",
        "Correct the start, or the size of the tank."),
    "fuel_lap_above_tank": later("One lap takes more fuel than the tank holds.",
        "Look for a slipped digit or another unit."),
    "fuel_run_assumed": later(
        "How far the start or a lap may be off was not said; half a litre and a tenth of a lap's fuel are taken.",
        "Say it where you know better."),
    "fuel_runs_dry": later("The tank runs dry in lap {lap}, before the flag.", "Start with more fuel, or plan a stop."),
    "fuel_may_run_dry": later("The tank lasts to the flag only if the laps take no more fuel than entered.",
        "Start with more fuel, or say more closely what a lap takes."),
    "fuel_least_above_tank": later("The tank does not hold the fuel that the run should start with.",
        "Plan a stop, or put ballast in the car."),
    "tank_place_unknown": later("Where the tank sits is not entered.",
        "Measure its middle: from the front axle, from the centreline and from the ground. "
        "Enter it on the car's page."),
    "driver_place_unknown": later("Where the driver sits is not entered.",
        "Measure the hips of the driver: from the front axle, from the centreline and from the ground. Enter it on the "
        "car's page."),
}
# fmt: on
