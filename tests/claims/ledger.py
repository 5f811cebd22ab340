"""What the vectors of core/ledger (with net, running and compare) run in Python."""

from tarebook.core.garage.garage import read_garage
from tarebook.core.ledger.compare import compare
from tarebook.core.ledger.ledger import ledger
from tests.plain import plain

CLAIMS = {
    "ledger.ledger": lambda given: plain(ledger(read_garage(given))),
    "compare.compare": lambda given: plain(compare(read_garage(given), given["part"], given.get("instead_of"))),
}
