"""The wire between phones and server: every request and every answer is in the scheduler's hand."""

from __future__ import annotations

import base64
import json

from tests.sync.simulation.world import Request, World

_REFUSED = (401, 403)


def arrive(world: World, request: Request, cut: bool = False) -> None:
    """The request reaches the server, which answers; the answer is on its way now. `cut`: half of its body does."""
    data = None if request.body is None else request.body.encode()
    if request.method == "PATCH":
        data = base64.b64decode(request.body or "")
    if cut and data:
        data = data[: len(data) // 2]
    disk = world.server.disk
    before = world.counted
    request.answer = world.server.request(request.method, request.path, request.headers, data)
    status, _headers, body = request.answer
    world.trace(f"  {request.method} {request.path} {status} {body}")
    _check(world, request, status, body, disk.struck)
    if disk.struck:
        world.count("the server ends half way" if disk.how == "crash" else f"the server's disk is {disk.how}")
    if disk.how == "crash" and disk.struck:
        world.server.restart()
    world.watch_server()
    request.counted = request.counted | (world.counted - before) if request.method == "POST" else world.counted


def _check(world: World, request: Request, status: int, body: str, struck: bool) -> None:
    token = request.headers.get("Authorization", "").removeprefix("Bearer ")
    if token in world.revoked:
        world.must(status in _REFUSED, f"a phone taken off the list got {status} for {request.method} {request.path}")
    if status >= 500:
        expected = struck and (status != 500 or world.server.disk.how == "crash")
        world.must(expected, f"{status} without a fault: {request.method} {request.path} {body}")
    if request.path.startswith("/api/v1/pair") and status == 200:
        found = json.loads(body)
        world.tokens[found["token"]] = found["device"]


def answered(world: World, request: Request, how: str = "whole") -> None:
    """The answer reaches the phone, whole or not."""
    world.requests.remove(request)
    status, headers, body = request.answer or (0, {}, "")
    told: str | None = body
    if how == "truncated":
        told = body[: len(body) // 2]
    if how == "broken off":
        told = None
    if how == "lost":
        status = 0
    answer = {"status": status, "headers": headers, "body": told}
    arrived = world.ask("answer", flight=request.flight, phone=request.phone, **answer)["value"]
    if arrived and how == "whole" and status == 200 and "/sync/" in request.path:
        world.truth.hear(json.loads(body), request.counted)
    if request.path.startswith("/api/v1/pair"):
        world.learn(world.phones[request.phone])


def deliver_all(world: World) -> None:
    """A network without faults: everything arrives, until nobody asks any more."""
    while world.requests:
        request = world.requests[0]
        if request.answer is None:
            arrive(world, request)
        answered(world, request)
