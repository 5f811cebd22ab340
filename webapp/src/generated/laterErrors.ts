// Written by `python -m tarebook.contract`. Do not edit.

import { addErrors } from "./errors";

export const LATER_ERRORS = {
  "wheelbase_unknown": {
    "sentence": "The car's wheelbase is not known.",
    "do": "Measure it between the axle centres and enter it with the car."
  },
  "tracks_unknown": {
    "sentence": "The car's tracks are not both known.",
    "do": "Measure them between the middles of the tyres, front and rear, and enter them with the car."
  },
  "axles_unknown": {
    "sentence": "This weigh-in says nothing of the axles.",
    "do": "Weigh the car by axles or by corners."
  },
  "sides_unknown": {
    "sentence": "This weigh-in says nothing of the sides.",
    "do": "Weigh the car by corners."
  },
  "height_unknown": {
    "sentence": "The height of the centre of gravity is not known.",
    "do": "Enter the tracks, or measure it by lifting an axle."
  },
  "height_assumed": {
    "sentence": "The height of the centre of gravity is assumed from the track, as for most road cars.",
    "do": "Measure it by lifting an axle."
  },
  "beltline_unknown": {
    "sentence": "The beltline's height, or that of a part, is not known.",
    "do": "Measure the lower edge of the side windows and enter it with the car."
  },
  "yaw_unknown": {
    "sentence": "The change in yaw inertia needs the car's centre of gravity and the place of every part moved.",
    "do": "Weigh the car by corners, and enter its wheelbase and tracks."
  },
  "cross_unknown": {
    "sentence": "What stands on each corner cannot be worked out: spring seats and roll stiffness set the cross weight.",
    "do": "Weigh the car by corners again; axles and sides are worked out."
  },
  "corners_unweighed": {
    "sentence": "This weigh-in says nothing of the corners.",
    "do": "Weigh the car by corners."
  },
  "balance_without_ballast": {
    "sentence": "Ballast was fitted or taken out since the weigh-in, and these figures do not count that.",
    "do": "The Ballast screen tells the shares with it; or weigh the car again."
  },
  "centre_as_weighed": {
    "sentence": "The centre of gravity is that of the car as weighed, with the fuel, driver and ballast it then had.",
    "do": "Weigh it as you want to know it."
  },
  "tracks_unequal": {
    "sentence": "The tracks differ; what moved between the sides counts at their mean.",
    "do": "Weigh the car by corners for the exact shares."
  },
  "balance_job_unknown": {
    "sentence": "A job asked for is not there and is left out.",
    "do": "Choose the jobs again."
  },
  "nothing_left": {
    "sentence": "These jobs would leave nothing of the car.",
    "do": "Look for a slipped digit in a mass."
  },
  "place_outside": {
    "sentence": "A part's place lies outside the car.",
    "do": "Measure again: from the front axle rearward, from the centreline to the right, up from the ground."
  },
  "place_by_zone": {
    "sentence": "Some parts are taken to sit at the usual place of their zone.",
    "do": "Measure where they sit for a surer centre of gravity."
  },
  "place_anywhere": {
    "sentence": "Some parts have neither a place nor a zone; they could be anywhere in the car.",
    "do": "Give them a zone, or measure where they sit."
  },
  "level_unsure": {
    "sentence": "Some parts may be above or below the beltline.",
    "do": "Measure their height."
  },
  "lift_missing": {
    "sentence": "Not every reading of the axle lift is there.",
    "do": "Enter both axles level, the axle left on the ground with the other raised, and how far it was raised."
  },
  "radius_unknown": {
    "sentence": "The height of the axle centres above the ground is not known.",
    "do": "Measure from the ground to the wheel centres, front and rear, with the car standing on them."
  },
  "lift_above_wheelbase": {
    "sentence": "No axle can be raised by as much as the wheelbase.",
    "do": "Enter how far the centre of the raised axle rose, not the height of the lift."
  },
  "lift_wrong_way": {
    "sentence": "The axle left on the ground lost load when the other was raised.",
    "do": "Check which axle was raised and that both readings are of the one on the ground, brakes off."
  },
  "lift_too_small": {
    "sentence": "The lift is too small to tell the height of the centre of gravity.",
    "do": "Raise the axle further if it can be done safely, or use a finer scale."
  },
  "lift_unlikely": {
    "sentence": "No closed car has its centre of gravity at this height.",
    "do": "Look for a slipped reading or unit: the loads, the rise, the wheelbase."
  },
  "lift_wide": {
    "sentence": "The height of the centre of gravity is known only roughly.",
    "do": "Raise the axle further if it can be done safely, or repeat the weighing."
  },
  "lift_driver_in": {
    "sentence": "A driver was in the car at the weigh-in of this lift.",
    "do": "Nobody sits in a raised car: strap the same weight into the seat, or weigh level with the seat empty first."
  },
  "lift_fuel_moves": {
    "sentence": "Fuel in a part-filled tank runs to the low end and is taken for height.",
    "do": "Weigh level and lift with the tank full or empty, and note the fuel."
  },
  "height_by_lift": {
    "sentence": "The height of the centre of gravity was measured by lifting an axle.",
    "do": "Lift again when much has changed high up or low down."
  },
  "height_carried": {
    "sentence": "The height rests on the lift of another weigh-in, carried over by the jobs between the two.",
    "do": "Fuel, driver and ballast count as noted at both. Lift an axle at the newer weigh-in to measure it again."
  },
  "wheels_lift": {
    "sentence": "At this acceleration two wheels would carry nothing; the figure ends there.",
    "do": "Look at a smaller acceleration."
  },
  "power_unknown": {
    "sentence": "The power is not known.",
    "do": "Give it with its unit: kW, hp or PS."
  },
  "check_far_off": {
    "sentence": "A check shows a mass far from the one on the scale; it is not used.",
    "do": "Look at its unit and its digits, and enter it again."
  },
  "checks_too_rough": {
    "sentence": "The checks of this scale tell less than is assumed of its kind anyway.",
    "do": "Check it with a heavier mass, or say how closely the mass is known."
  },
  "checks_disagree": {
    "sentence": "The checks of this scale contradict each other; it is taken as less sure.",
    "do": "Check it once more, empty and loaded."
  },
  "bolts_differ": {
    "sentence": "One was weighed with its bolts, the other without.",
    "do": "Weigh both alike, or add the bolts as a part of their own."
  },
  "readings_disagree": {
    "sentence": "The weighings of a part differ by more than the scale's division explains.",
    "do": "Its mass is taken as less sure. Weigh it once more, or withdraw the wrong one."
  },
  "counted_twice": {
    "sentence": "More pieces of a part came off, or went on, than there are.",
    "do": "Look at the jobs it belongs to."
  },
  "scale_unnamed": {
    "sentence": "Some weighings name no scale; their readings are taken as within a few per cent.",
    "do": "Say which scale it was."
  },
  "gain_assumed": {
    "sentence": "Nobody has checked this scale; its error is assumed for its kind.",
    "do": "Check it with a mass you know."
  },
  "reading_missing": {
    "sentence": "A reading of this weigh-in is missing, so it has no total.",
    "do": "Enter every reading of it."
  },
  "reading_odd": {
    "sentence": "One reading of this weigh-in is far from the others.",
    "do": "Look for a slipped digit or another unit."
  },
  "gain_by_class": {
    "sentence": "Nobody has checked this scale; its error is taken from its legal class.",
    "do": "Check it with a mass you know."
  },
  "repeatability_assumed": {
    "sentence": "How well this scale repeats a whole car is not known; {kg} kg is assumed for its kind.",
    "do": "Roll the car on a few times and note how far the totals spread."
  },
  "official_scale_unnamed": {
    "sentence": "The official scale of a weigh-in has no name; its error is assumed.",
    "do": "Enter it as a scale: weighed on the same one again, the car is known better."
  },
  "official_scale_assumed": {
    "sentence": "The official scale has not weighed this car yet; its error is assumed.",
    "do": "Weigh the car on it when you can, and enter that as an official weigh-in."
  },
  "fuel_within_assumed": {
    "sentence": "How far the fuel in the tank may be off was not said; a tenth of it, at least a litre, is taken.",
    "do": "Say how far it may be off, or weigh with the tank drained or full."
  },
  "fuel_kind_unknown": {
    "sentence": "What fuel the car burns is not entered; the density of any is allowed for.",
    "do": "Choose the fuel on the car's page."
  },
  "fuel_above_tank": {
    "sentence": "More fuel is entered than the tank holds.",
    "do": "Correct the fuel, or the size of the tank."
  },
  "fuel_rule_unsaid": {
    "sentence": "The class sheet does not say how much fuel; it is taken as it was on the scale.",
    "do": "Enter it on the class sheet."
  },
  "driver_as_weighed": {
    "sentence": "The weight counts with whoever sat in the car; their weight is not known.",
    "do": "Weigh every driver with their gear: the lightest who will drive decides."
  },
  "driver_without_mass": {
    "sentence": "A driver has no weight yet, and the lightest who will drive decides.",
    "do": "Weigh every driver with their gear."
  },
  "driver_rule_unsaid": {
    "sentence": "The class sheet does not say whether the driver counts; the seat is taken as empty.",
    "do": "Enter it on the class sheet."
  },
  "risk_unusable": {
    "sentence": "The risk on the class sheet is not between 0 and 1; 0.05 is taken.",
    "do": "Enter it like 0.05."
  },
  "weigh_in_tells_nothing": {
    "sentence": "A weigh-in tells nothing that a later one does not say already.",
    "do": "Weigh the car once more, best on another scale."
  },
  "unweighed_between": {
    "sentence": "Parts without a weight moved between the weigh-ins, so the earlier ones tell little of the car now.",
    "do": "Weigh these parts, or weigh the car once more."
  },
  "two_differ": {
    "sentence": "Two weigh-ins differ by more than their doubts allow, and two cannot say which is off: the lower counts.",
    "do": "Look for what nobody wrote down, and weigh the car once more."
  },
  "last_differs": {
    "sentence": "The last weigh-in does not fit the others: something changed unnoted, or it is off. The lower weight counts.",
    "do": "Look for what nobody wrote down, and weigh the car once more."
  },
  "ballast_without_block": {
    "sentence": "A ballast place holds blocks nobody noted the weight of; they count zero.",
    "do": "Enter what one block weighs."
  },
  "ballast_unnoted": {
    "sentence": "There is ballast in the car now and none noted at the last weigh-in: it counts as put in since.",
    "do": "If it was on board then, correct that weigh-in."
  },
  "ballast_kept": {
    "sentence": "The ballast on board at the weigh-in is part of the weight.",
    "do": "Weigh again, or correct that weigh-in, when it comes out."
  },
  "sheet_material_unknown": {
    "sentence": "Nothing is known of the material {material}.",
    "do": "Choose one of the list, or enter its density."
  },
  "sheet_density_range": {
    "sentence": "The lowest and the highest density do not make a range.",
    "do": "Enter the lowest and the highest in kg/m³, the lowest first."
  },
  "sheet_no_thickness": {
    "sentence": "The thickness is missing.",
    "do": "Measure the sheet, or enter what it is sold as."
  },
  "sheet_gauge_unknown": {
    "sentence": "The gauge table {table} has no number {gauge} here.",
    "do": "Enter the thickness instead."
  },
  "sheet_gauge_not_steel": {
    "sentence": "These gauge numbers are for steel, not for {material}.",
    "do": "Enter the thickness instead: other metals have other gauges."
  },
  "sheet_thick": {
    "sentence": "Nothing {text} thick is sold as sheet.",
    "do": "Look at the number and its unit."
  },
  "sheet_huge": {
    "sentence": "A size of {text} is more than any sheet for a car has.",
    "do": "Look at the number and its unit."
  },
  "sheet_small": {
    "sentence": "The piece would weigh less than 0.1 g.",
    "do": "Look at the numbers and their units."
  },
  "sheet_size_missing": {
    "sentence": "The {size} is missing.",
    "do": "Type it with its unit, such as {example}."
  },
  "sheet_corner": {
    "sentence": "Corner {corner} cannot be read: {typed}.",
    "do": "Type how far across and how far up, each with its unit and a comma between, such as {example}."
  },
  "sheet_corners_long": {
    "sentence": "These corners take more room than a record has.",
    "do": "Draw the outline with fewer, or type shorter lengths."
  },
  "sheet_corners": {
    "sentence": "An outline has {corners} corners.",
    "do": "Draw one with 3 to {most}."
  },
  "sheet_crosses": {
    "sentence": "Side {side} of an outline crosses or touches side {other}.",
    "do": "Move a corner so that no two sides meet except at their ends; side 1 runs from corner 1 to corner 2."
  },
  "sheet_hole_outside": {
    "sentence": "Hole {hole} does not lie wholly inside the outline.",
    "do": "Move it or make it smaller, or draw the outline around it."
  },
  "sheet_holes_overlap": {
    "sentence": "Holes {hole} and {other} overlap.",
    "do": "Draw them as one hole."
  },
  "sheet_holes_too_large": {
    "sentence": "The holes leave nothing of the piece.",
    "do": "Correct their sizes."
  },
  "sheet_as_sold": {
    "sentence": "The thickness is the one it is sold as; the real one is often less.",
    "do": "Measure the sheet and say so."
  },
  "sheet_gauge_convention": {
    "sentence": "Gauge tables list steel 2.4 % heavier than it is: 41.82 lb/ft² for an inch is a convention.",
    "do": "Measure the thickness to know better."
  },
  "sheet_gauge_legal": {
    "sentence": "The legal gauge means weight; its thicknesses are those of wrought iron, not of steel sheet.",
    "do": "If the seller means the thickness, choose the makers' gauge."
  },
  "ballast_many_places": {
    "sentence": "There are more places for ballast than can be compared.",
    "do": "Choose {most} or fewer."
  },
  "ballast_bad_place": {
    "sentence": "The place {place} has no block that weighs something, or too many of them.",
    "do": "Enter the mass of one block and how many may go there."
  },
  "ballast_share_range": {
    "sentence": "The lowest and the highest share wanted do not make a range.",
    "do": "Enter the lowest first, both between nothing and all of the weight."
  },
  "ballast_ceiling": {
    "sentence": "The most the car may weigh is under the least it must weigh.",
    "do": "Correct one of them."
  },
  "ballast_no_front": {
    "sentence": "The front share wanted cannot be kept: the wheelbase or the car's front share is not known.",
    "do": "Note the wheelbase on the car sheet, and weigh the car by axles or corners."
  },
  "ballast_no_left": {
    "sentence": "The left share wanted cannot be kept: a track or the car's left share is not known.",
    "do": "Note both tracks on the car sheet, and weigh the car by corners."
  },
  "ballast_no_height": {
    "sentence": "Without the height of the centre it cannot be said how low it will be.",
    "do": "Measure it by lifting an axle, or look for the least mass."
  },
  "ballast_unweighed": {
    "sentence": "What the car weighs now is not known.",
    "do": "Weigh the whole car."
  },
  "ballast_no_minimum": {
    "sentence": "There is no minimum to reach.",
    "do": "Enter it on the class sheet."
  },
  "ballast_short": {
    "sentence": "All that may be fixed leaves the car {text} short of what it must weigh.",
    "do": "Allow more blocks, heavier ones or another place."
  },
  "ballast_over": {
    "sentence": "The car comes out {text} above the most it may weigh.",
    "do": "Take something else out, or allow smaller blocks."
  },
  "ballast_front_low": {
    "sentence": "The front axle lacks {text} for the share wanted.",
    "do": "Allow a place further forward, or a wider range."
  },
  "ballast_front_high": {
    "sentence": "The front axle carries {text} too much for the share wanted.",
    "do": "Allow a place further back, or a wider range."
  },
  "ballast_left_low": {
    "sentence": "The left side lacks {text} for the share wanted.",
    "do": "Allow a place further to the left, or a wider range."
  },
  "ballast_left_high": {
    "sentence": "The left side carries {text} too much for the share wanted.",
    "do": "Allow a place further to the right, or a wider range."
  },
  "ballast_place_open": {
    "sentence": "The ballast place {name} is not complete and is left out.",
    "do": "Enter where it is, what one block weighs, and how many it takes."
  },
  "ballast_then_anywhere": {
    "sentence": "Where the ballast of the last weigh-in stood is not known; the shares are told as if at the car's centre.",
    "do": "Weigh the car by corners without ballast, or with the blocks noted at their places."
  },
  "ballast_mean_track": {
    "sentence": "The tracks differ; what ballast adds to the left is told with their mean.",
    "do": "Weigh the corners again with the ballast in."
  },
  "ballast_not_proven": {
    "sentence": "There are very many ways to do it; a slightly better one may exist.",
    "do": "Allow fewer places or larger blocks to be sure."
  },
  "fuel_class_empty": {
    "sentence": "The class weighs with an empty tank, so the fuel left after a run changes nothing for the minimum.",
    "do": "Look at the weight now."
  },
  "fuel_class_full": {
    "sentence": "The class weighs with a full tank, so the fuel left after a run changes nothing for the minimum.",
    "do": "Look at the weight now."
  },
  "fuel_class_stated": {
    "sentence": "The class weighs with a stated amount of fuel, so what is left after a run changes nothing for the minimum.",
    "do": "Look at the weight now."
  },
  "fuel_start_unknown": {
    "sentence": "How much fuel the run starts with is not known.",
    "do": "Enter it, or the size of the tank on the car's page."
  },
  "tank_size_unknown": {
    "sentence": "The size of the tank is not entered.",
    "do": "Enter it on the car's page."
  },
  "fuel_lap_unknown": {
    "sentence": "How much fuel a lap takes is not known.",
    "do": "Enter it: what you filled up after some laps, divided by those laps."
  },
  "fuel_no_laps": {
    "sentence": "The run has no laps yet.",
    "do": "Say how many laps it has."
  },
  "fuel_many_laps": {
    "sentence": "The run has more laps than are worked out; the first {most} are told.",
    "do": "Enter it in parts, each with what is in the tank then."
  },
  "fuel_start_above_tank": {
    "sentence": "The start is more fuel than the tank holds; the run is worked out with a full tank.",
    "do": "Correct the start, or the size of the tank."
  },
  "fuel_lap_above_tank": {
    "sentence": "One lap takes more fuel than the tank holds.",
    "do": "Look for a slipped digit or another unit."
  },
  "fuel_run_assumed": {
    "sentence": "How far the start or a lap may be off was not said; half a litre and a tenth of a lap's fuel are taken.",
    "do": "Say it where you know better."
  },
  "fuel_runs_dry": {
    "sentence": "The tank runs dry in lap {lap}, before the flag.",
    "do": "Start with more fuel, or plan a stop."
  },
  "fuel_may_run_dry": {
    "sentence": "The tank lasts to the flag only if the laps take no more fuel than entered.",
    "do": "Start with more fuel, or say more closely what a lap takes."
  },
  "fuel_least_above_tank": {
    "sentence": "The tank does not hold the fuel that the run should start with.",
    "do": "Plan a stop, or put ballast in the car."
  },
  "tank_place_unknown": {
    "sentence": "Where the tank sits is not entered.",
    "do": "Measure its middle: from the front axle, from the centreline and from the ground. Enter it on the car's page."
  },
  "driver_place_unknown": {
    "sentence": "Where the driver sits is not entered.",
    "do": "Measure the hips of the driver: from the front axle, from the centreline and from the ground. Enter it on the car's page."
  }
} as const;

addErrors(LATER_ERRORS);
