"""What the vectors of core/garage run in Python."""

from tarebook.core.garage.garage import read_garage
from tests.plain import plain

CLAIMS = {"garage.read_garage": lambda given: plain(read_garage(given))}
