"""Every move there is. Importing a module of these puts its moves into the table."""

from tests.sync.simulation.moves import home, network, pairing, people, phones
from tests.sync.simulation.moves.table import FAULTS, MOVES

__all__ = ["KINDS", "MOVES", "home", "network", "pairing", "people", "phones"]

KINDS = (*MOVES, *FAULTS)
"""Everything that is counted."""
