"""What the vectors of core/numbers/normal run in Python."""

from tarebook.core.numbers import normal

CLAIMS = {
    "normal.erfc": lambda given: normal.erfc(given["x"]),
    "normal.density": lambda given: normal.density(given["z"]),
    "normal.cumulative": lambda given: normal.cumulative(given["z"]),
    "normal.inverse": lambda given: normal.inverse(given["p"]),
}
