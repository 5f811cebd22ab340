"""How likely each kind of slip is before anything was weighed, and how large those are that have no size of their own.

All of it is common practice, no source. A kind's odds are shared among all its instances in a garage; a kind that has
none there counts for nothing. The phone's copy is written by `python -m tarebook.contract`.
"""

PRIORS = {
    "unwritten": 0.22,
    "misread": 0.06,
    "wrong_side": 0.10,
    "unit": 0.10,
    "fuel": 0.09,
    "tare": 0.07,
    "twice": 0.07,
    "put_back": 0.06,
    "person": 0.05,
    "ballast": 0.05,
    "zero": 0.04,
    "guess": 0.04,
    "other_driver": 0.03,
    "other_scale": 0.03,
    "wet": 0.04,
    "chance": 1.0,
}
"""Against one another. "chance": nothing of these, the readings are as far apart as readings are."""

UNSPECIFIC = ("unwritten", "misread", "chance")
"""Those that no record tells of: where one of them is the likeliest, nothing explains what does not fit."""

FACTORS = {
    "pounds": 0.45359237,
    "kilograms": 1.0 / 0.45359237,
    "ounces": 16.0,
    "sixteenth": 1.0 / 16.0,
    "grams": 28.349523125,
    "gram_ounces": 1.0 / 28.349523125,
    "ten": 10.0,
    "tenth": 0.1,
}
"""What a reading must be multiplied by: pounds were noted as kilograms, and so on."""

RATES = {"pounds": 3.0, "kilograms": 3.0, "ten": 2.0, "tenth": 2.0}
"""How often some of the factors, against once each of the others."""

SPREADS = {"unwritten": (3.0, 15.0), "misread": (2.0, 20.0), "zero": (3.0,), "guessed": (0.6,), "quoted": (0.3,)}
"""Standard deviations about nothing, each as likely; kg, of claims a share of the part."""

RANGES = {"container": (0.1, 5.0), "wet": (0.3, 6.0), "wet_part": (0.0, 0.3), "tank": (0.0, 60.0)}
"""Evenly between two sizes; kg, of a wet part a share of it. "tank": of unknown size."""

SOMEBODY = (78.0, 15.0)
"""A person nobody knows, clothed: the mean and the standard deviation, kg."""

SAME_PART = 3.0
"""How much likelier two jobs with the very same part are one entered twice than two with parts of one name."""

ALIKE = 0.15
"""Two parts of one name are the same one when their masses are within this share of each other."""
