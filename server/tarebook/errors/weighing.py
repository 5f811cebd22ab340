"""What stands beside the mass of a part: its weighings, the scales they were made on, the jobs it moved in."""

from tarebook.errors.row import at_home, first, later

# fmt: off
ROWS = {
    "not_positive": later("A weighing comes to nothing or less; it is not counted.",
        "Check which reading was with the part and which without."),
    "above_capacity": later("A reading is above what the scale can weigh.",
        "Weigh it on a larger scale, or correct the scale's capacity."),
    "no_mass": at_home("Nobody has weighed it yet, or said what it weighs.", "Weigh it, or say a guess."),
    "unweighed": later("Some parts have no weight yet and count as nothing.", "Weigh them, or say a guess."),
    "nothing_to_compare": first("There is no part to compare this one with.", "Say which part it would replace."),
    "check_far_off": later("A check shows a mass far from the one on the scale; it is not used.",
        "Look at its unit and its digits, and enter it again."),
    "checks_too_rough": later("The checks of this scale tell less than is assumed of its kind anyway.",
        "Check it with a heavier mass, or say how closely the mass is known."),
    "checks_disagree": later("The checks of this scale contradict each other; it is taken as less sure.",
        "Check it once more, empty and loaded."),
    "bolts_differ": later("One was weighed with its bolts, the other without.",
        "Weigh both alike, or add the bolts as a part of their own."),
    "readings_disagree": later("The weighings of a part differ by more than the scale's division explains.",
        "Its mass is taken as less sure. Weigh it once more, or withdraw the wrong one."),
    "counted_twice": later("More pieces of a part came off, or went on, than there are.",
        "Look at the jobs it belongs to."),
    "scale_unnamed": later("Some weighings name no scale; their readings are taken as within a few per cent.",
        "Say which scale it was."),
    "gain_assumed": later("Nobody has checked this scale; its error is assumed for its kind.",
        "Check it with a mass you know."),
    "gain_by_class": later("Nobody has checked this scale; its error is taken from its legal class.",
        "Check it with a mass you know."),
    "repeatability_assumed": later(
        "How well this scale repeats a whole car is not known; {kg} kg is assumed for its kind.",
        "Roll the car off and on and read it again at a weigh-in; the scale's record learns."),
}
# fmt: on
