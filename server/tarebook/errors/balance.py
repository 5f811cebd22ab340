"""Where the weight is: balance, axle lift and load transfer."""

from __future__ import annotations

from tarebook.errors.row import later

# fmt: off
ROWS = {
    "wheelbase_unknown": later("The car's wheelbase is not known.",
        "Measure it between the axle centres and enter it with the car."),
    "tracks_unknown": later("The car's tracks are not both known.",
        "Measure them between the middles of the tyres, front and rear, and enter them with the car."),
    "axles_unknown": later("This weigh-in says nothing of the axles.", "Weigh the car by axles or by corners."),
    "sides_unknown": later("This weigh-in says nothing of the sides.", "Weigh the car by corners."),
    "height_unknown": later("The height of the centre of gravity is not known.",
        "Enter the tracks, or measure it by lifting an axle."),
    "height_assumed": later("The height of the centre of gravity is assumed from the track, as for most road cars.",
        "Measure it by lifting an axle."),
    "beltline_unknown": later("The beltline's height, or that of a part, is not known.",
        "Measure the lower edge of the side windows and enter it with the car."),
    "yaw_unknown": later(
        "The change in yaw inertia needs the car's centre of gravity and the place of every part moved.",
        "Weigh the car by corners, and enter its wheelbase and tracks."),
    "cross_unknown": later(
        "What stands on each corner cannot be worked out: spring seats and roll stiffness set the cross weight.",
        "Weigh the car by corners again; axles and sides are worked out."),
    "corners_unweighed": later("This weigh-in says nothing of the corners.", "Weigh the car by corners."),
    "balance_without_ballast": later(
        "Ballast was fitted or taken out since the weigh-in, and these figures do not count that.",
        "The Ballast screen tells the shares with it; or weigh the car again."),
    "centre_as_weighed": later(
        "The centre of gravity is that of the car as weighed, with the fuel, driver and ballast it then had.",
        "Weigh it as you want to know it."),
    "tracks_unequal": later("The tracks differ; what moved between the sides counts at their mean.",
        "Weigh the car by corners for the exact shares."),
    "balance_job_unknown": later("A job asked for is not there and is left out.", "Choose the jobs again."),
    "nothing_left": later("These jobs would leave nothing of the car.", "Look for a slipped digit in a mass."),
    "place_outside": later("A place lies outside the car.", "Look at the side, the sign and the unit."),
    "place_by_zone": later("Some parts are taken to sit at the usual place of their zone.",
        "Measure where they sit for a surer centre of gravity."),
    "place_anywhere": later("Some parts have neither a place nor a zone; they could be anywhere in the car.",
        "Give them a zone, or measure where they sit."),
    "level_unsure": later("Some parts may be above or below the beltline.", "Measure their height."),
    "lift_missing": later("Not every reading of the axle lift is there.",
        "Enter both axles level, the axle left on the ground with the other raised, and how far it was raised."),
    "radius_unknown": later("The height of the axle centres above the ground is not known.",
        "Measure from the ground to the wheel centres, front and rear, with the car standing on them."),
    "lift_above_wheelbase": later("No axle can be raised by as much as the wheelbase.",
        "Enter how far the centre of the raised axle rose, not the height of the lift."),
    "lift_wrong_way": later("The axle left on the ground lost load when the other was raised.",
        "Check which axle was raised and that both readings are of the one on the ground, brakes off."),
    "lift_too_small": later("The lift is too small to tell the height of the centre of gravity.",
        "Raise the axle further if it can be done safely, or use a finer scale."),
    "lift_hopeless": later("On these scales no safe rise would tell the height.",
        "Finer ones would: the step of the display and how well they repeat decide."),
    "lift_unlikely": later("No closed car has its centre of gravity at this height.",
        "Look for a slipped reading or unit: the loads, the rise, the wheelbase."),
    "lift_wide": later("The height of the centre of gravity is known only roughly.",
        "Raise the axle further if it can be done safely, or repeat the weighing."),
    "lift_driver_in": later("A driver was in the car at the weigh-in of this lift.",
        "Nobody sits in a raised car: strap the same weight into the seat, or weigh level with the seat empty first."),
    "lift_fuel_moves": later("Fuel in a part-filled tank runs to the low end and is taken for height.",
        "Weigh level and lift with the tank full or empty, and note the fuel."),
    "height_by_lift": later("The height of the centre of gravity was measured by lifting an axle.",
        "Lift again when much has changed high up or low down."),
    "height_carried": later(
        "The height rests on the lift of another weigh-in, carried over by the jobs between the two.",
        "Fuel, driver and ballast count as noted at both. Lift an axle at the newer weigh-in to measure it again."),
    "wheels_lift": later("At this acceleration two wheels would carry nothing; the figure ends there.",
        "Look at a smaller acceleration."),
    "power_unknown": later("The power is not known.", "Give it with its unit: kW, hp or PS."),
}
# fmt: on
