"""Ballast: what is fitted, and how much more goes where."""

from tarebook.errors.row import later

# fmt: off
ROWS = {
    "ballast_many_places": later("There are more places for ballast than can be compared.", "Choose {most} or fewer."),
    "ballast_bad_place": later("The place {place} has no block that weighs something, or too many of them.",
        "Enter the mass of one block and how many may go there."),
    "ballast_share_range": later("The lowest and the highest share wanted do not make a range.",
        "Enter the lowest first, both between nothing and all of the weight."),
    "ballast_ceiling": later("The most the car may weigh is under the least it must weigh.", "Correct one of them."),
    "ballast_no_front": later(
        "The front share wanted cannot be kept: the wheelbase or the car's front share is not known.",
        "Note the wheelbase on the car sheet, and weigh the car by axles or corners."),
    "ballast_no_left": later("The left share wanted cannot be kept: a track or the car's left share is not known.",
        "Note both tracks on the car sheet, and weigh the car by corners."),
    "ballast_no_height": later("Without the height of the centre it cannot be said how low it will be.",
        "Measure it by lifting an axle, or look for the least mass."),
    "ballast_unweighed": later("What the car weighs now is not known.", "Weigh the whole car."),
    "ballast_short": later("All that may be fixed leaves the car {text} short of what it must weigh.",
        "Allow more blocks, heavier ones or another place."),
    "ballast_over": later("The car comes out {text} above the most it may weigh.",
        "Take something else out, or allow smaller blocks."),
    "ballast_front_low": later("The front axle lacks {text} for the share wanted.",
        "Allow a place further forward, or a wider range."),
    "ballast_front_high": later("The front axle carries {text} too much for the share wanted.",
        "Allow a place further back, or a wider range."),
    "ballast_left_low": later("The left side lacks {text} for the share wanted.",
        "Allow a place further to the left, or a wider range."),
    "ballast_left_high": later("The left side carries {text} too much for the share wanted.",
        "Allow a place further to the right, or a wider range."),
    "ballast_place_open": later("The ballast place {name} is not complete and is left out.",
        "Enter where it is, what one block weighs, and how many it takes."),
    "ballast_then_anywhere": later(
        "Where the ballast of the last weigh-in stood is not known; the shares are told as if at the car's centre.",
        "Weigh the car by corners without ballast, or with the blocks noted at their places."),
    "ballast_not_proven": later("There are very many ways to do it; a slightly better one may exist.",
        "Allow fewer places or larger blocks to be sure."),
    "ballast_without_block": later("A ballast place holds blocks nobody noted the weight of; they count zero.",
        "Enter what one block weighs."),
    "ballast_unnoted": later(
        "There is ballast in the car now and none noted at the last weigh-in: it counts as put in since.",
        "If it was on board then, correct that weigh-in."),
    "ballast_kept": later("The ballast on board at the weigh-in is part of the weight.",
        "Weigh again, or correct that weigh-in, when it comes out."),
}
# fmt: on
