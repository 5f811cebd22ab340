// Written by `python -m tarebook.contract`. Do not edit.

export const ERRORS = {
  "bad_request": {
    "sentence": "The request could not be read.",
    "do": "Reload the app; if it happens again, export and report it."
  },
  "malformed_json": {
    "sentence": "What was sent is not readable JSON: {reason}.",
    "do": "Send one JSON object in UTF-8."
  },
  "bad_input": {
    "sentence": "Something sent has the wrong shape.",
    "do": "Look at the fields named in the data and send them as documented."
  },
  "not_found": {
    "sentence": "There is nothing at this address.",
    "do": "Check the address."
  },
  "method_not_allowed": {
    "sentence": "This address does not do that.",
    "do": "Use one of the methods in the Allow header."
  },
  "too_large": {
    "sentence": "That is more than one request may carry.",
    "do": "Send it in smaller pieces."
  },
  "unsupported_type": {
    "sentence": "The request has a content type this address does not take.",
    "do": "Send application/json."
  },
  "wrong_host": {
    "sentence": "This server does not answer to that host name.",
    "do": "Open the address that tarebook serve printed."
  },
  "rate_limited": {
    "sentence": "Too many tries in a short time.",
    "do": "Wait a minute and try again."
  },
  "broken": {
    "sentence": "The server met a fault of its own.",
    "do": "Nothing you saved is lost. Try again; if it happens again, report it."
  },
  "busy": {
    "sentence": "The database is busy.",
    "do": "It will be tried again by itself."
  },
  "disk_full": {
    "sentence": "The home computer's disk is full; nothing of this was kept there.",
    "do": "Make room on it. The phone keeps everything until then."
  },
  "store_unwell": {
    "sentence": "The home computer cannot write to its folder.",
    "do": "Check the folder and its disk. The phone keeps everything until then."
  },
  "unpaired": {
    "sentence": "This device is not paired with the garage.",
    "do": "Pair it with a fresh link from the home computer. Its records stay here."
  },
  "revoked": {
    "sentence": "This device was taken off the garage's list.",
    "do": "Everything is still here: export it, then pair again."
  },
  "device_unknown": {
    "sentence": "There is no such device.",
    "do": "Reload the list of devices."
  },
  "garage_unknown": {
    "sentence": "There is no such garage here.",
    "do": "Check the name with tarebook devices."
  },
  "protocol": {
    "sentence": "This app is too old or too new to talk to the home computer.",
    "do": "Update the app; until then export keeps everything safe."
  },
  "other_garage": {
    "sentence": "These records belong to another garage.",
    "do": "Pair this app with the garage they came from."
  },
  "rewound": {
    "sentence": "The home computer was restored from an older copy.",
    "do": "The app sends again everything it holds, by itself."
  },
  "too_many_entries": {
    "sentence": "One push may carry at most {most} entries.",
    "do": "The app sends smaller batches by itself."
  },
  "entry_too_large": {
    "sentence": "One record may be at most {most} bytes long.",
    "do": "Shorten its note."
  },
  "upload_unknown": {
    "sentence": "There is no such upload.",
    "do": "The app starts it again by itself."
  },
  "upload_offset": {
    "sentence": "The upload goes on at byte {offset}.",
    "do": "The app goes on from there by itself."
  },
  "upload_chunk_too_large": {
    "sentence": "A piece of a photo may be at most {most} bytes long.",
    "do": "The app sends smaller pieces by itself."
  },
  "photo_too_large": {
    "sentence": "A photo may be at most {most} bytes long.",
    "do": "Take it again, or choose a smaller one."
  },
  "photo_hash_mismatch": {
    "sentence": "The photo arrived damaged.",
    "do": "The app sends it again by itself."
  },
  "photo_not_an_image": {
    "sentence": "This file is not a picture.",
    "do": "Choose a JPEG, PNG or WebP picture."
  },
  "photo_wrong_type": {
    "sentence": "This picture is {found}, not {told}.",
    "do": "Choose it again."
  },
  "photo_too_many_pixels": {
    "sentence": "This picture has {width} × {height} pixels, too many to open safely.",
    "do": "Choose a smaller one."
  },
  "photo_truncated": {
    "sentence": "This picture is cut short.",
    "do": "Take or choose it again."
  },
  "photo_unknown": {
    "sentence": "This photo is not on the home computer.",
    "do": "It comes when the phone that took it has sent it."
  },
  "unreadable": {
    "sentence": "This record could not be read.",
    "do": "It is kept as it came. Export keeps it too."
  },
  "newer_schema": {
    "sentence": "This record was made by a newer app.",
    "do": "Update this one; the record then appears by itself."
  },
  "unknown_kind": {
    "sentence": "This record is of a kind this app does not know.",
    "do": "Update the app; the record then appears by itself."
  },
  "invalid": {
    "sentence": "This record has a field that does not fit.",
    "do": "It is kept as it came; enter it again if it matters."
  },
  "waiting": {
    "sentence": "This record follows one that has not arrived yet.",
    "do": "It appears by itself when the other phone has sent its records."
  },
  "fact": {
    "sentence": "This changes a reading, and readings are never changed.",
    "do": "Weigh again, or enter the correction as a new reading."
  },
  "id_reuse": {
    "sentence": "Two different records came under one name.",
    "do": "Both are kept; look at them and keep the right one."
  },
  "stranger": {
    "sentence": "This record comes from a device that is not in this garage.",
    "do": "Look at it, then take it in or leave it."
  },
  "kind_changed": {
    "sentence": "This record says it is another kind of thing than before.",
    "do": "It is kept as it came; enter it again if it matters."
  },
  "quantity_empty": {
    "sentence": "Nothing is typed here.",
    "do": "Type a {kind}, like {example}."
  },
  "quantity_long": {
    "sentence": "This is too long to be a {kind}.",
    "do": "Type only the number and its unit, like {example}."
  },
  "quantity_unreadable": {
    "sentence": "“{typed}” cannot be read as a {kind}.",
    "do": "Type a number and its unit, like {example}."
  },
  "quantity_comma": {
    "sentence": "The comma in “{typed}” can mean two things: type {instead}.",
    "do": "Write decimals with a point, like 1.25, and thousands without any mark."
  },
  "quantity_exponent": {
    "sentence": "“{typed}” is not written out.",
    "do": "Write the number out in full."
  },
  "quantity_negative": {
    "sentence": "A {kind} cannot be less than nothing.",
    "do": "Type {instead}."
  },
  "quantity_zero": {
    "sentence": "This {kind} cannot be zero.",
    "do": "Type the {kind}, like {example}."
  },
  "quantity_absurd": {
    "sentence": "“{typed}” is more than any car.",
    "do": "Check the number and the unit; the most that is read is {most}."
  },
  "quantity_sum": {
    "sentence": "“{typed}” is a sum or a count, not one reading.",
    "do": "Type one reading, like {example}; how many pieces is asked separately."
  },
  "quantity_gap": {
    "sentence": "There is a gap inside the number of “{typed}”.",
    "do": "Type {instead} without the gap."
  },
  "quantity_fraction": {
    "sentence": "The fraction in “{typed}” cannot be read.",
    "do": "Type a whole number, a space and one fraction, like 6 3/8."
  },
  "quantity_unit_missing": {
    "sentence": "“{typed}” lacks a unit.",
    "do": "Type {instead}."
  },
  "quantity_unit_unknown": {
    "sentence": "“{unit}” is not a unit of {kind}.",
    "do": "Type the {kind} in {units}."
  },
  "quantity_unit_unclear": {
    "sentence": "“{unit}” can mean more than one thing.",
    "do": "Type {instead}."
  },
  "quantity_order": {
    "sentence": "The larger unit comes first.",
    "do": "Type {instead}."
  },
  "quantity_mix": {
    "sentence": "{units} do not go together.",
    "do": "Type the {kind} in one unit, like {example}."
  },
  "quantity_two_fractions": {
    "sentence": "Only the last number may have a fraction; “{part}” has one too.",
    "do": "Type a whole number before it, or use one unit."
  },
  "quantity_carry": {
    "sentence": "“{part}” is 1 {large} or more.",
    "do": "Type less than {most} {unit} after the {large}."
  },
  "unreadable_list": {
    "sentence": "{list} is not a list of records; none of it is counted.",
    "do": "Send a list of objects, each with an id."
  },
  "unreadable_record": {
    "sentence": "Record {position} of {list} has no readable id; it is not counted.",
    "do": "Give it an id of up to 80 plain characters."
  },
  "duplicate_record": {
    "sentence": "The id {id} comes twice in {list}; only the first is counted.",
    "do": "Give one of them an id of its own."
  },
  "unknown_field": {
    "sentence": "{id} in {list} has a field {field} that nothing reads.",
    "do": "Check its spelling."
  },
  "unreadable_field": {
    "sentence": "The {field} of {id} in {list} cannot be read; it is left out.",
    "do": "Look at it and enter it again."
  },
  "missing_field": {
    "sentence": "{id} in {list} is not counted: it lacks its {field}.",
    "do": "Enter it."
  },
  "dangling": {
    "sentence": "{id} in {list} speaks of {ref}, which is not there.",
    "do": "It may still come from another phone; else choose again."
  },
  "dangling_deleted": {
    "sentence": "{id} in {list} speaks of {ref}, which was deleted.",
    "do": "Bring that back, or choose another."
  },
  "unknown_car": {
    "sentence": "There is no car {car}; the first one is shown.",
    "do": "Choose one of the garage's cars."
  },
  "unknown_trim": {
    "sentence": "There is no trim {trim}; the road trim is shown.",
    "do": "Choose road or event."
  },
  "not_positive": {
    "sentence": "A weighing comes to nothing or less; it is not counted.",
    "do": "Check which reading was with the part and which without."
  },
  "above_capacity": {
    "sentence": "A reading is above what the scale can weigh.",
    "do": "Weigh it on a larger scale, or correct the scale's capacity."
  },
  "readings_disagree": {
    "sentence": "The weighings of a part differ by more than the scale's division explains.",
    "do": "Its mass is taken as less sure. Weigh it once more, or withdraw the wrong one."
  },
  "bolts_differ": {
    "sentence": "One was weighed with its bolts, the other without.",
    "do": "Weigh both alike, or add the bolts as a part of their own."
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
  "gain_assumed": {
    "sentence": "Nobody has checked this scale; its error is assumed for its kind.",
    "do": "Check it with a mass you know."
  },
  "scale_unnamed": {
    "sentence": "Some weighings name no scale; their readings are taken as within a few per cent.",
    "do": "Say which scale it was."
  },
  "counted_twice": {
    "sentence": "More pieces of a part came off, or went on, than there are.",
    "do": "Look at the jobs it belongs to."
  },
  "no_mass": {
    "sentence": "Nobody has weighed it yet, or said what it weighs.",
    "do": "Weigh it, or say a guess."
  },
  "unweighed": {
    "sentence": "Some parts have no weight yet and count as nothing.",
    "do": "Weigh them, or say a guess."
  },
  "nothing_to_compare": {
    "sentence": "There is no part to compare this one with.",
    "do": "Say which part it would replace."
  },
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
    "sentence": "Without the car's front share and its wheelbase no front share can be aimed at.",
    "do": "Weigh the car by axles or corners, and enter the wheelbase."
  },
  "ballast_no_left": {
    "sentence": "Without the car's left share and both tracks no left share can be aimed at.",
    "do": "Weigh the car by corners, and enter the tracks."
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
  "fuel_unknown": {
    "sentence": "How much fuel was in the tank at this weigh-in is not known.",
    "do": "Note the fuel at the next weigh-in, or correct this one."
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
  "tank_unknown": {
    "sentence": "The class weighs with a full tank, and the size of the tank is not entered.",
    "do": "Enter it on the car's page."
  },
  "fuel_stated_missing": {
    "sentence": "The class weighs with so much fuel, and how much is not entered.",
    "do": "Enter it on the class sheet."
  },
  "fuel_rule_unsaid": {
    "sentence": "The class sheet does not say how much fuel; it is taken as it was on the scale.",
    "do": "Enter it on the class sheet."
  },
  "driver_unknown": {
    "sentence": "The car was weighed with a driver whose weight is not known.",
    "do": "Say who it was, and weigh them with their gear."
  },
  "driver_as_weighed": {
    "sentence": "The weight counts with whoever sat in the car; their weight is not known.",
    "do": "Weigh every driver with their gear: the lightest who will drive decides."
  },
  "driver_without_mass": {
    "sentence": "A driver has no weight yet, and the lightest who will drive decides.",
    "do": "Weigh every driver with their gear."
  },
  "no_driver": {
    "sentence": "The class weighs with the driver, and no driver's weight is known.",
    "do": "Weigh the lightest who will drive, with their gear."
  },
  "driver_rule_unsaid": {
    "sentence": "The class sheet does not say whether the driver counts; the seat is taken as empty.",
    "do": "Enter it on the class sheet."
  },
  "no_class_sheet": {
    "sentence": "The class minimum is not entered yet.",
    "do": "Enter it on the class sheet."
  },
  "no_minimum": {
    "sentence": "The class minimum is not entered yet.",
    "do": "Enter it on the class sheet."
  },
  "risk_unusable": {
    "sentence": "The risk on the class sheet is not between 0 and 1; 0.05 is taken.",
    "do": "Enter it like 0.05."
  },
  "no_weigh_in": {
    "sentence": "The car has not been weighed yet.",
    "do": "Weigh the whole car."
  },
  "weigh_in_incomplete": {
    "sentence": "A weigh-in lacks a reading and has no total; it is left out.",
    "do": "Weigh the car again, or correct that weigh-in."
  },
  "jobs_not_confirmed": {
    "sentence": "Which jobs were in the car at the weigh-in was not confirmed.",
    "do": "Correct that weigh-in and confirm its jobs."
  },
  "one_weigh_in": {
    "sentence": "It takes two whole weigh-ins to check what is written down.",
    "do": "Weigh the car again."
  },
  "no_start": {
    "sentence": "What the car weighed before the work is not known.",
    "do": "Weigh the car, or enter its book weight."
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
  "storage_full": {
    "sentence": "This phone has no room left; nothing of this was saved.",
    "do": "Make room on the phone and save again. What you typed is still here."
  },
  "storage_failed": {
    "sentence": "The phone's own store did not take this; nothing of it was saved.",
    "do": "Save again; if it happens again, export everything and reload the app."
  },
  "storage_blocked": {
    "sentence": "Another tab holds the records with an older app.",
    "do": "Close Tarebook's other tabs, then reload this one."
  },
  "storage_newer": {
    "sentence": "The records on this device were written by a newer app.",
    "do": "Reload to get the newer app; nothing was changed."
  },
  "garage_not_open": {
    "sentence": "No garage is open on this device yet; nothing was saved.",
    "do": "Pair this device with the garage first."
  },
  "not_savable": {
    "sentence": "The field {field} does not fit; nothing was saved.",
    "do": "Correct it and save again."
  },
  "unreachable": {
    "sentence": "The home computer does not answer.",
    "do": "It is tried again by itself; until then everything stays here."
  },
  "answer_unreadable": {
    "sentence": "The home computer's answer could not be read.",
    "do": "It is tried again by itself; until then everything stays here."
  },
  "app_older": {
    "sentence": "This app is older than the home computer's, which does not understand it.",
    "do": "Take the new version, under Devices; until then everything stays here, and export keeps it safe."
  },
  "home_older": {
    "sentence": "The home computer's Tarebook is older than this app and does not understand it.",
    "do": "Update it there; until then everything stays here, and export keeps it safe."
  },
  "photo_not_shrunk": {
    "sentence": "This phone could not make the picture small enough.",
    "do": "Save without it, or choose another one."
  },
  "photo_damaged_here": {
    "sentence": "A photo on this phone is damaged and cannot be sent.",
    "do": "Take it again if the thing is still at hand. What was weighed is not touched."
  },
  "pair_code_wrong": {
    "sentence": "This code or link is wrong, used up or older than five minutes.",
    "do": "Ask the home computer for a fresh one: tarebook pair."
  },
  "pair_refused": {
    "sentence": "The home computer did not let this device in.",
    "do": "If it was meant to, ask there for a fresh code and compare the two words."
  },
  "pair_over": {
    "sentence": "Nobody said yes on the home computer in time, or the wait is over.",
    "do": "Ask there for a fresh code: tarebook pair."
  },
  "join_unknown": {
    "sentence": "That device no longer waits to be let in.",
    "do": "Let it ask again with a fresh code."
  },
  "home_only": {
    "sentence": "Only the home computer itself may do this.",
    "do": "Sit down at it, and open Tarebook there by the address that tarebook serve printed."
  },
  "no_phone_address": {
    "sentence": "Phones have no address to reach this computer by yet.",
    "do": "Stop the server and start it with tarebook serve --lan."
  },
  "device_nameless": {
    "sentence": "A device needs a name.",
    "do": "Type one that tells it from the others."
  },
  "device_unclear": {
    "sentence": "Several devices are called {name}.",
    "do": "Name it by its id, as the list shows it."
  }
} as const;

export type ErrorCode = keyof typeof ERRORS;
export type ErrorData = Record<string, unknown>;
export type Described = { code: ErrorCode; sentence: string; do: string; data: ErrorData };

function fill(text: string, data: ErrorData): string {
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => (name in data ? String(data[name]) : whole));
}

/** The error as every answer of the server carries it. */
export function describe(code: ErrorCode, data: ErrorData = {}): Described {
  const row = ERRORS[code];
  return { code, sentence: fill(row.sentence, data), do: fill(row.do, data), data };
}

export class AppError extends Error {
  readonly code: ErrorCode;
  readonly data: ErrorData;
  readonly sentence: string;
  readonly do: string;

  constructor(code: ErrorCode, data: ErrorData = {}, described = describe(code, data)) {
    super(described.sentence);
    this.name = "AppError";
    this.code = code;
    this.data = data;
    this.sentence = described.sentence;
    this.do = described.do;
  }

  /** Reads `{"error": {code, sentence, do, data}}`, an answer of the server; null when it is something else. */
  static fromBody(body: unknown): AppError | null {
    const error = (body as { error?: Partial<Described> } | null)?.error;
    if (typeof error?.code !== "string") return null;
    const { code, data = {} } = error;
    if (Object.hasOwn(ERRORS, code)) return new AppError(code, data);
    // A code this app has no row for brings its own words.
    return typeof error.sentence === "string" ? new AppError(code, data, { do: "", ...error } as Described) : null;
  }
}
