"""What happens to requests and to their answers."""

from __future__ import annotations

from collections.abc import Callable

from tests.sync.simulation import wire
from tests.sync.simulation.moves.table import MOVES
from tests.sync.simulation.world import Request, World


def _of_one(weight: float, answered: bool) -> Callable[[Callable[[World, Request], None]], None]:
    """A move of some request that has its answer, or has none yet."""

    def named(work: Callable[[World, Request], None]) -> None:
        def of_some(world: World) -> str | None:
            there = [one for one in world.requests if (one.answer is not None) == answered]
            if not there:
                return None
            request = world.chance.choice(there)
            work(world, request)
            return f"{request.flight}"

        MOVES[work.__name__.replace("_", " ")] = (weight, of_some)

    return named


@_of_one(40, answered=False)
def an_exchange(world: World, request: Request) -> None:
    """Whole, as most are."""
    wire.arrive(world, request)
    wire.answered(world, request)


@_of_one(6, answered=False)
def a_request_arrives(world: World, request: Request) -> None:
    wire.arrive(world, request)


@_of_one(2, answered=False)
def a_request_arrives_twice(world: World, request: Request) -> None:
    wire.arrive(world, request)
    wire.arrive(world, request)


@_of_one(2, answered=False)
def a_request_is_cut_short(world: World, request: Request) -> None:
    """Yet reads as if it were whole, as behind a proxy that counts anew; its answer arrives."""
    wire.arrive(world, request, cut=True)
    wire.answered(world, request)


@_of_one(2, answered=False)
def a_request_is_lost(world: World, request: Request) -> None:
    wire.answered(world, request, "lost")


@_of_one(10, answered=True)
def an_answer_arrives(world: World, request: Request) -> None:
    wire.answered(world, request)


@_of_one(4, answered=True)
def an_answer_is_lost(world: World, request: Request) -> None:
    wire.answered(world, request, "lost")


@_of_one(2, answered=True)
def an_answer_is_truncated(world: World, request: Request) -> None:
    wire.answered(world, request, "truncated")


@_of_one(2, answered=True)
def an_answer_breaks_off(world: World, request: Request) -> None:
    wire.answered(world, request, "broken off")
