"""The table of moves: each with its weight, which says how often it is tried beside the others.

A move gives what it did, or None where there was nothing to do it to; then it does not count. None knows of any other.
"""

from __future__ import annotations

from collections.abc import Callable

from tests.sync.simulation.world import OLDER, Phone, World

Move = Callable[[World], str | None]
MOVES: dict[str, tuple[float, Move]] = {}
FAULTS = (
    "a phone's clock is ten years off",
    "the server ends half way",
    "the server's disk is failing",
    "the server's disk is full",
    "the server's disk is readonly",
)
MOST_PHONES = 5
RECORDS = ("job-1", "job-2", "job-3")


def move(weight: float) -> Callable[[Move], Move]:
    def named(work: Move) -> Move:
        MOVES[work.__name__.replace("_", " ")] = (weight, work)
        return work

    return named


def by_a_phone(weight: float) -> Callable[[Callable[[World, Phone], str | None]], None]:
    """A move of some phone that has a garage open; its number comes before what the move gives."""

    def named(work: Callable[[World, Phone], str | None]) -> None:
        def by_some_phone(world: World) -> str | None:
            phone = paired(world)
            done = None if phone is None else work(world, phone)
            return done if phone is None or done is None else f"{phone.number} {done}"

        MOVES[work.__name__.replace("_", " ")] = (weight, by_some_phone)

    return named


def paired(world: World) -> Phone | None:
    some = [phone for phone in world.phones if phone.open and phone.device]
    return world.chance.choice(some) if some else None


def fields(world: World) -> dict[str, object]:
    some = {"hours": ["1", "2", "3", None], "note": ["a", "b", None], "state": ["chosen", "fitted"], "name": ["Doors"]}
    chosen = world.chance.sample(sorted(some), world.chance.choice([1, 1, 2]))
    known = [name for name in chosen if not (world.is_older and name in OLDER["job"])] or ["hours"]
    return {name: world.chance.choice(some[name]) for name in known}


def record(world: World) -> str:
    """One that all know, or one of the latest: that may rest on a single creation, by who is a stranger later."""
    if world.chance.random() < 0.4:
        return world.chance.choice(RECORDS)
    world.begun += world.chance.random() < 0.3
    return f"own-{world.begun - world.chance.randrange(3)}"


def on_a_sound_disk(world: World, work: Callable[[], str | None]) -> str | None:
    """People at the home computer see that it does not work, and come back later."""
    return None if world.server.disk.how else work()
