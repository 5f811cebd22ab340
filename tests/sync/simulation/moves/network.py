"""What happens to requests and to their answers."""

from __future__ import annotations

from tests.sync.simulation import wire
from tests.sync.simulation.moves.table import move
from tests.sync.simulation.world import World


@move(40)
def an_exchange(world: World) -> str | None:
    """Whole, as most are."""
    asked = [one for one in world.requests if one.answer is None]
    if not asked:
        return None
    request = world.chance.choice(asked)
    wire.arrive(world, request)
    wire.answered(world, request)
    return f"{request.flight}"


@move(6)
def a_request_arrives(world: World) -> str | None:
    asked = [one for one in world.requests if one.answer is None]
    if not asked:
        return None
    request = world.chance.choice(asked)
    wire.arrive(world, request)
    return f"{request.flight}"


@move(2)
def a_request_arrives_twice(world: World) -> str | None:
    asked = [one for one in world.requests if one.answer is None]
    if not asked:
        return None
    request = world.chance.choice(asked)
    wire.arrive(world, request)
    wire.arrive(world, request)
    return f"{request.flight}"


@move(2)
def a_request_is_lost(world: World) -> str | None:
    asked = [one for one in world.requests if one.answer is None]
    if not asked:
        return None
    request = world.chance.choice(asked)
    wire.answered(world, request, "lost")
    return f"{request.flight}"


def _answered(world: World, how: str) -> str | None:
    there = [one for one in world.requests if one.answer is not None]
    if not there:
        return None
    request = world.chance.choice(there)
    wire.answered(world, request, how)
    return f"{request.flight}"


@move(10)
def an_answer_arrives(world: World) -> str | None:
    return _answered(world, "whole")


@move(4)
def an_answer_is_lost(world: World) -> str | None:
    return _answered(world, "lost")


@move(2)
def an_answer_is_truncated(world: World) -> str | None:
    return _answered(world, "truncated")


@move(2)
def an_answer_breaks_off(world: World) -> str | None:
    return _answered(world, "broken off")
