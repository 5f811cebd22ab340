"""Every route × (no token, revoked, of another garage, at home, on lan, proxied): what the code's own marks answer.

`python -m tests.api.access_table` prints it. A route that is added appears here by itself. The door page is an
application of its own, at an entrance of its own: it knows no token and gives everybody the same.
"""

from __future__ import annotations

import sys
from pathlib import Path

from flask import Flask
from werkzeug.routing import Rule

from tarebook import create_app
from tarebook.api.access import Who, allowed_of
from tarebook.devices.origin import Origin
from tarebook.door import app as door
from tarebook.settings import Settings

STATES = ("none", "revoked", "other garage", "home", "lan", "proxied")
APP = create_app(Settings(data=Path("unused")))
ORIGIN = Origin("tarebook.local", 8443)
Routes = dict[str, tuple[Rule, str]]


def _routes(app: Flask, where: str = "") -> Routes:
    return {
        f"{method} {where}{rule.rule}": (rule, method)
        for rule in app.url_map.iter_rules()
        for method in (rule.methods or set()) - {"OPTIONS"}
    }


ROUTES = _routes(APP)
DOOR = _routes(door.build(Path("unused"), ORIGIN, 8080), "door:")


def who_may(route: str) -> Who | None:
    if route in DOOR:
        return "anyone"
    return allowed_of(APP.view_functions[str(ROUTES[route][0].endpoint)])


def expected(route: str, state: str) -> str:
    """`answered`, or the code it is refused with; "404": the other garage has nothing of that name."""
    who = who_may(route)
    if who == "anyone":
        return "answered"
    if state in ("none", "revoked"):
        return {"none": "unpaired", "revoked": "revoked"}[state]
    if who == "home" and state in ("lan", "proxied"):
        return "home_only"
    return "404" if state == "other garage" and ROUTES[route][0].arguments else "answered"


def table() -> str:
    lines: list[tuple[str, ...]] = [("route", "may call", *STATES)]
    lines += [
        (route, str(who_may(route)), *(expected(route, state) for state in STATES)) for route in sorted(ROUTES | DOOR)
    ]
    widths = [max(map(len, column)) for column in zip(*lines, strict=True)]
    return "\n".join("  ".join(map(str.ljust, line, widths)).rstrip() for line in lines)


if __name__ == "__main__":
    sys.stdout.write(f"{table()}\n")
