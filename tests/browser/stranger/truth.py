"""What is true of the build, in exact fractions of a kilogram, worked out without the product.

The pound is 0.453 592 37 kg and its sixteenth the ounce: NIST Special Publication 811 (2008), appendix B.8.
"""

from fractions import Fraction

from tests.browser.stranger.build import STAGES, START, Job, Part

LB = Fraction(45_359_237, 100_000_000)
UNITS = {"kg": Fraction(1), "lb": LB, "oz": LB / 16}
# How such a car stands on its wheels; a pad shows the nearest half kilogram.
SHARES = {"Left front": 31, "Right front": 30, "Left rear": 20, "Right rear": 19}


def mass(part: Part) -> Fraction:
    return sum((Fraction(word) for word in part.shown.split()), Fraction(0)) * UNITS[part.scale.unit]


def change(job: Job) -> Fraction:
    """What the job adds to the car, kg."""
    return sum((mass(part) for part in job.on), Fraction(0)) - sum((mass(part) for part in job.off), Fraction(0))


def stage_change(name: str) -> Fraction:
    return sum((change(job) for job in STAGES[name]), Fraction(0))


def weight(*stages: str) -> Fraction:
    """The car after these stages, kg."""
    return Fraction(START) * LB + sum((stage_change(name) for name in stages), Fraction(0))


def corners(*stages: str) -> dict[str, str]:
    """What four pads show of it then."""
    halves = {corner: round(2 * weight(*stages) * share / 100) for corner, share in SHARES.items()}
    return {corner: f"{count / 2:g}" for corner, count in halves.items()}
