"""Every route with valid requests gone wrong: no fault, no hang, the journal as its entries make it in both languages.

What is pushed is the demo's own entries, each changed in one to three places. What the OpenAPI document says of a route
is asked by Schemathesis (`tests/api/every_case.py`), here from a seed of each case.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path
from random import Random
from typing import Any
from urllib.parse import quote

from hypothesis import HealthCheck, Phase, given, seed, settings

from tarebook.api.app import openapi_document
from tarebook.demo.scenario import records
from tarebook.errors import ERRORS
from tarebook.garage.records import plural
from tarebook.journal.fold import Fold
from tarebook.journal.kinds import KINDS
from tarebook.store.rebuild import rebuild
from tests.api.documented import answers_as_documented, operations
from tests.fuzz.kind import Case, limited
from tests.fuzz.mutate import TEXTS, changed, damaged, written
from tests.home import Device, Home
from tests.journal.plainly import plainly
from tests.machine import ROOT
from tests.photos import picture, sha
from tests.typescript import unlike

MOST_ENTRIES = 1500
CHECK_ONE_IN = 40
CALC = ROOT / "fixtures" / "demo" / "calc"
WORDS = ("since", "limit", "epoch", "size", "format", "car", "x")
HEADERS = (
    "Content-Type",
    "Authorization",
    "Upload-Offset",
    "Host",
    "Range",
    "If-None-Match",
    "Accept",
    "X-Forwarded-For",
)
NO_LINE = {ord(mark): None for mark in "\r\n\0"}
DOCUMENT = operations(openapi_document())


@cache
def demo() -> list[dict[str, Any]]:
    """Entries of the demo's records, without who wrote them."""
    known = [(kind, record) for kind in KINDS for record in records()[plural(kind)]]
    return [
        {
            "id": f"d-{number}", "device": "", "writer": "w", "n": number, "kind": kind, "record": record["id"],
            "set": {name: value for name, value in record.items() if name != "id"}, "base": [], "photos": [],
            "made_at": "2026-05-02T10:00:00Z", "schema": 1,
        }
        for number, (kind, record) in enumerate(known, 1)
    ]  # fmt: skip


class Garage:
    """A home computer with one phone, and what it has said it took."""

    def __init__(self, folder: Path) -> None:
        self.home = Home(folder)
        self.phone: Device = self.home.pair()
        self.taken: dict[int, str] = {}
        self.ids: list[str] = []

    def text(self, random: Random) -> str:
        """An entry: of a record of the demo or on top of what was sent before, whole or gone wrong."""
        entry = {**random.choice(demo()), "device": self.phone.id}
        entry["id"] = random.choice(self.ids) if self.ids and random.random() < 0.05 else f"f-{random.randrange(10**9)}"
        if self.ids and random.random() < 0.6:
            entry["base"] = random.sample(self.ids, min(len(self.ids), random.choice((1, 1, 2))))
        self.ids = [*self.ids[-30:], entry["id"]]
        return json.dumps(entry) if random.random() < 0.2 else written(random, changed(random, entry))

    def push(self, random: Random) -> str:
        texts = [self.text(random) for _ in range(random.choice((1, 3, 8)))]
        answer = sound(self.phone.push(*texts))
        if answer.status_code != 200:
            return f"push {answer.status_code}"
        results = answer.json["results"]
        assert len(results) == len(texts)
        for text, result in zip(texts, results, strict=True):
            kept = text.encode("utf-16", "surrogatepass").decode("utf-16", "replace")
            assert self.taken.setdefault(result["number"], kept) == kept, result
        if random.randrange(CHECK_ONE_IN) == 0:
            self.check()
            return "push, journal proven"
        return "push"

    def check(self) -> None:
        """All that was answered is there byte for byte, and the fold is what the entries make, in both languages."""
        rows: list[dict[str, Any]] = []
        told: dict[str, Any] = {"epoch": "", "mark": "", "more": True}
        while told["more"]:
            told = self.phone.pull(told["epoch"], len(rows), told["mark"]).json
            rows += told["entries"]
        here = {row["number"]: row["text"] for row in rows}
        assert {number: here.get(number) for number in self.taken} == self.taken
        with self.home.database.write() as session:
            assert rebuild(session, self.phone.garage).changed == 0
        fold = Fold()
        for row in rows:
            fold.add(row["number"], row["text"], row["aside"])
        lines = [{name: row[name] for name in ("number", "text", "aside")} for row in rows]
        assert unlike([({"function": "journal.fold", "in": lines}, plainly(fold))]) == []


def sound(answer: Any) -> Any:
    """Every answer to a mutated request: no fault; a refusal is a row of the error table."""
    if answer.status_code >= 400:
        told = (answer.get_json(silent=True) or {}).get("error")
        assert told, (answer.status_code, answer.data[:200])
        assert told["code"] in ERRORS.keys() - {"broken"}, told
        assert answer.status_code < 500, told
    return answer


def examples(garage: Garage) -> dict[tuple[str, str], Any]:
    """(method, path) → a valid body, bytes, or None; of every route but push, and none that would end the phone."""
    data = picture(1)
    announced = {"sha256": sha(data), "size": len(data), "type": "image/jpeg"}
    pull = "/sync/pull?epoch=&since=0&since_id=&limit=10"
    calc = {("POST", f"/calc/{path.stem}"): json.loads(path.read_text()) for path in sorted(CALC.glob("*.json"))}
    return {
        ("GET", "/health"): None, ("GET", "/openapi.json"): None, ("GET", pull): None, ("GET", "/devices"): None,
        ("GET", "/report"): None, ("GET", "/pair/joins"): None, ("GET", f"/photos/{sha(data)}?size=thumb"): None,
        ("POST", "/pair"): {"code": "12345678", "name": "phone", "device": None}, ("POST", "/photos"): announced,
        ("POST", "/pair/wait"): {"join": "a-secret"}, ("POST", "/pair/invitations"): {},
        ("POST", "/pair/joins/j-1/confirm"): {}, ("POST", "/pair/joins/j-1/refuse"): {},
        ("POST", f"/devices/{garage.phone.id}/rename"): {"name": "Mine"}, ("POST", "/devices/d-1/revoke"): {},
        ("HEAD", "/uploads/u-1"): None, ("PATCH", "/uploads/u-1"): data, **calc,
        ("POST", "/sync/push"): {
            "proto": 1, "schema": 1, "garage": garage.phone.garage, "epoch": "", "entries": [json.dumps(demo()[0])],
        },
    }  # fmt: skip


def ask(random: Random, garage: Garage) -> str:
    """One request of any route, with its body, its address, its headers or its method gone wrong."""
    (method, path), body = random.choice(list(examples(garage).items()))
    wrong = random.randrange(10)
    headers = {"Content-Type": "application/json", "Upload-Offset": "0"}
    if wrong == 0:
        path = "/" + quote(damaged(random, path.encode()), safe="/?&=%")
    elif wrong == 1:
        path += (
            "&" if "?" in path else "?"
        ) + f"{random.choice(WORDS)}={quote(random.choice(TEXTS)[:3000], errors='replace')}"
    elif wrong == 2:
        headers[random.choice(HEADERS)] = (
            random.choice(TEXTS)[:3000].translate(NO_LINE).encode("latin-1", "replace").decode("latin-1")
        )
    elif wrong == 3:
        method = random.choice(("GET", "POST", "PUT", "DELETE", "PATCH", "HEAD", "OPTIONS", "TRACE"))
    data = body if isinstance(body, bytes | None) else written(random, changed(random, body))
    if isinstance(data, str):
        data = data.encode("utf-8", "surrogatepass")
    if data is not None and random.random() < 0.2:
        data = damaged(random, data)
    answer = garage.phone.ask(method, "/api/v1" + path, headers, data=data)
    if method != "HEAD":  # whose answer has no words
        sound(answer)
    assert answer.status_code < 500
    return f"asked {answer.status_code // 100}xx"


def documented(random: Random, garage: Garage) -> str:
    """A few of Schemathesis' own requests of one operation."""
    operation = random.choice([found.ok() for found in DOCUMENT.get_all_operations()])

    @seed(random.randrange(2**32))
    @settings(
        max_examples=10, database=None, deadline=None, phases=[Phase.generate], suppress_health_check=list(HealthCheck)
    )
    @given(case=operation.as_strategy())
    def holds(case: Any) -> None:
        answers_as_documented(case, garage.home, garage.phone.headers)

    holds()
    return "documented"


@contextmanager
def opened(folder: Path) -> Iterator[Case]:
    """A home computer, and another when its journal has grown long."""
    garages = [Garage(folder / "1")]

    def case(random: Random) -> str:
        if len(garages[-1].taken) > MOST_ENTRIES:
            garages[-1].check()
            garages.append(Garage(folder / str(len(garages) + 1)))
        garage = garages[-1]
        with limited():
            if random.random() < 0.5:
                return garage.push(random)
            if random.random() < 0.95:
                return ask(random, garage)
        return documented(random, garage)

    yield case
    garages[-1].check()
