"""What the vectors of core/ledger (with net, running and compare) run in Python."""

from typing import Any

from tarebook.core.garage.garage import read_garage
from tarebook.core.ledger.as_read import jobs_as_read
from tarebook.core.ledger.compare import compare
from tarebook.core.ledger.ledger import ledger
from tests.plain import plain


def _as_read(given: dict[str, Any]) -> str | None:
    garage = read_garage(given)
    return jobs_as_read(garage, ledger(garage), ["j"])


CLAIMS = {
    "ledger.ledger": lambda given: plain(ledger(read_garage(given))),
    "compare.compare": lambda given: plain(compare(read_garage(given), given["part"], given.get("instead_of"))),
    "ledger.as_read": _as_read,
}
