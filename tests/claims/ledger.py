"""What the vectors of core/ledger (with net, running and compare) run in Python."""

from typing import Any

from tarebook.core.garage.garage import read_garage
from tarebook.core.ledger.compare import compare
from tarebook.core.ledger.ledger import ledger
from tarebook.core.ledger.net import Effort, MassTotal, Total
from tarebook.core.numbers.uncertain import Uncertain
from tests.plain import plain


def _brief(result: Any) -> Any:
    """Value and u instead of every source; what nothing was put into is left out."""
    if isinstance(result, Uncertain):
        return {"value": result.value, "u": result.u}
    if isinstance(result, MassTotal):
        ways = {way: _brief(getattr(result, way)) for way in ("net", "off", "on")}
        return {**ways, "lines": result.lines} if result.lines else {}
    if isinstance(result, Effort):
        return plain(result) if result.jobs else {}
    if isinstance(result, Total):
        return plain({**_brief(result.mass), **_brief(result.effort)})
    return plain({key: _brief(value) for key, value in result.items()} if isinstance(result, dict) else result)


def _ledger(given: dict[str, Any]) -> Any:
    found = ledger(read_garage(given))
    return plain(
        {
            "trim": found.trim,
            "in_car": found.in_car,
            "now": _brief(found.now),
            "sources": found.now.mass.net.sources,
            "jobs": {key: _brief(net.total) for key, net in found.jobs.items()},
            "by_stage": [{"stage": of.stage, "states": _brief(of.states)} for of in found.by_stage],
            "by_state": _brief(found.by_state),
            "by_trim": _brief(found.by_trim),
            "by_zone": [{"zone": of.zone, "mass": _brief(of.mass)} for of in found.by_zone],
            "unsprung": _brief(found.unsprung),
            "rotating": _brief(found.rotating),
            "cumulative": found.cumulative,
            "shares": found.shares,
            "unweighed": found.unweighed,
            "spent": _brief(found.spent),
            "brought": found.brought,
            "warnings": found.warnings,
        }
    )


def _lines(given: dict[str, Any]) -> Any:
    return plain([line for net in ledger(read_garage(given)).jobs.values() for line in net.lines])


def _compare(given: dict[str, Any]) -> Any:
    found = compare(read_garage(given), given["part"], given.get("instead_of"))
    return plain(
        {
            "part": found.part,
            "instead_of": found.instead_of,
            "count": found.count,
            "difference": found.difference,
            "whole": found.whole,
            "warnings": found.warnings,
        }
    )


CLAIMS = {"ledger.ledger": _ledger, "ledger.lines": _lines, "compare.compare": _compare}
