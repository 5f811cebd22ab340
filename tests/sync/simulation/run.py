"""One world: steps by chance, the invariant after each, and in the end a quiet in which all must agree."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from tarebook.devices import pairing
from tarebook.garage.records import all_records, set_aside
from tarebook.journal import state
from tarebook.store.models import RecordRow
from tarebook.store.rebuild import refold
from tests.sync.replicas import folded
from tests.sync.simulation import moves, wire
from tests.sync.simulation.world import FoundError, Phone, World

STEPS = 150
ROUNDS = 12


@dataclass
class Run:
    """What came of one world. `found`: what does not hold, or None."""

    seed: int
    steps: int
    hash: str
    found: str | None
    counts: Counter[str] = field(default_factory=Counter)


def run(seed: int, steps: int = STEPS, tell: Callable[[str], None] | None = None) -> Run:
    """One world from its seed to its quiet."""
    counts: Counter[str] = Counter()
    world = World(seed, counts, tell)
    found = None
    try:
        for _ in range(2):
            world.new_phone()
        while world.steps < steps:
            step(world)
        quieten(world)
        check(world)
    except FoundError as problem:
        found = str(problem)
        world.trace(found)
    finally:
        world.close()
    return Run(seed, world.steps, world.hash.hexdigest(), found, counts)


def step(world: World) -> None:
    world.steps += 1
    names = list(moves.MOVES)
    weights = [weight for weight, _work in moves.MOVES.values()]
    done = None
    while done is None:
        (name,) = world.chance.choices(names, weights)
        world.trace(f"{world.steps} {name}")
        done = moves.MOVES[name][1](world)
    world.count(name)
    world.trace(f"{world.steps} {name}: {done}")
    world.watch_server()


def quieten(world: World) -> None:
    """The disk is well, the network is whole, whoever was taken off the list is paired again, and time goes by."""
    world.trace("quiet")
    world.clock.off = 0.0
    world.server.restart()
    if moves.home.upgrade(world) is not None:
        world.count("an upgrade")
    for phone in world.phones:
        if not phone.open:
            world.open(phone)
    calm = 0
    for _ in range(ROUNDS):
        world.passes(3700)
        wire.deliver_all(world)
        world.watch_server()
        trouble = [phone for phone in world.phones if not _is_calm(world, phone)]
        calm = 0 if trouble else calm + 1
        if calm == 2:
            return
        for phone in trouble:
            _pair_where_needed(world, phone)
    raise FoundError(f"no quiet: {[(phone.number, world.mood(phone)) for phone in trouble]}")


def _is_calm(world: World, phone: Phone) -> bool:
    seen = world.mood(phone)
    return seen["state"] == "ready" and seen["trouble"] is None and seen["waiting"] == 0


def _pair_where_needed(world: World, phone: Phone) -> None:
    if any(other.disk == phone.disk for other in world.phones if other is not phone):
        world.kill(phone)  # another tab may have been paired since
        world.open(phone)
        wire.deliver_all(world)
    seen = world.mood(phone)
    if seen["state"] == "unpaired" or seen["trouble"] in ("unpaired", "revoked"):
        with world.server.database.write() as session:
            code = pairing.invite(session, world.server.garage, here=True).full
        world.app(phone, "join", code)
        wire.deliver_all(world)


def check(world: World) -> None:
    """Everything called saved is in the journal, whatever was accepted counts, and all replicas are equal."""
    texts = {row[0].decode() for row in world.server.rows("select text from entry")}
    lost = [text for text in world.truth.saved if text not in texts]
    world.must(not lost, f"something called saved is gone: {lost[:2]}")
    with world.server.database.read() as session:
        garage = world.server.garage
        again = folded(refold(session, garage))
        aside = {row["id"]: row["reason"] for row in set_aside(session, garage)}
        rows = session.query(RecordRow).filter(RecordRow.garage == garage).all()
        tables = {"records": {row.id: (row.kind, row.state) for row in rows}, "aside": aside}
        shown = {row.id: _shown(row) for row in rows}
        records = all_records(session, garage, deleted=True)
    world.must(tables == again, "the tables are not what the journal folds to")
    for phone in world.phones:
        seen = world.look(phone)
        differ = {
            name for name in shown.keys() | seen["records"].keys() if shown.get(name) != seen["records"].get(name)
        }
        one = next(iter(sorted(differ)), "")
        world.must(not differ, f"phone {phone.number} differs: {shown.get(one)} {seen['records'].get(one)}")
        world.must(seen["aside"] == aside, f"phone {phone.number} has set aside {seen['aside']}, the server {aside}")
    figures = {rec["id"]: rec for some in records.values() for rec in some}
    missing, buried = world.truth.missing(figures, aside), world.truth.buried(figures, aside)
    world.must(not buried, f"a deletion beats work it had not seen: {'; '.join(buried[:3])}")
    reasons = {aside.get(line.split()[0]) for line in missing} - {None}
    world.must(not missing, f"an accepted edit is missing from the figures {sorted(reasons)}: {'; '.join(missing[:3])}")
    invalid = world.truth.wrongly_invalid(aside)
    world.must(not invalid, f"set aside as invalid for good: {invalid[:3]}")
    known = {row[0] for row in world.server.rows("select sha256 from photo")}
    wanted = {rec["sha256"] for rec in records["photos"]}
    world.must(wanted <= known, "a photo is gone")


def _shown(row: RecordRow) -> dict[str, Any]:
    record = state.load(row.kind, row.state)
    sides = {name: [head.value for head in heads] for name, heads in record.conflicts.items()}
    values = json.loads(row.standing)
    kept = {"kind": row.kind, "values": values, "conflicts": sides, "heads": sorted(record.heads)}
    return {**kept, "deleted": record.deleted}
