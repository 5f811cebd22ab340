"""The journal on the wire: phones push entries and pull those of others."""

from dataclasses import asdict
from typing import Any

from flask import Response, jsonify

from tarebook.api.access import allowed
from tarebook.api.blueprint import Room
from tarebook.api.schemas import PulledSchema, PullSchema, PushedSchema, PushSchema
from tarebook.api.services import database, device, services
from tarebook.api.system import PROTO
from tarebook.devices import tokens
from tarebook.errors import TarebookError
from tarebook.garage import author, feed, intake
from tarebook.garage.intake import BATCH_BYTES
from tarebook.garage.receipts import Proof
from tarebook.store import garages, house

room = Room("sync", __name__, description="The journal: push and pull.")


@room.route("/sync/push", methods=["POST"])
@allowed("device")
@room.arguments(PushSchema)
@room.response(200, PushedSchema)
def push(body: dict[str, Any]) -> Response:
    """Takes entries in. Repeating a push is harmless; one bad entry never keeps another out."""
    if body["proto"] != PROTO:
        raise TarebookError("protocol", proto=PROTO)
    if sum(len(text.encode("utf-8", "replace")) for text in body["entries"]) > BATCH_BYTES:
        raise TarebookError("too_large", most=BATCH_BYTES)
    if body["garage"] != device().garage:
        raise TarebookError("other_garage", garage=device().garage)
    services().allowance.check(device().garage, device().id)
    with database().write() as session:
        garage = garages.get(session, device().garage, lock=True)
        if body["epoch"]:
            feed.check_epoch(garage, body["epoch"])
        shown = [proof and Proof(**proof) for proof in body.get("receipts", ())]
        pushed = author.receive(session, garage.id, device().id, body["entries"], shown)
        mark = {"epoch": garage.epoch, "head": pushed.head, "durable": garage.durable}
    new = sum(result.state in ("accepted", "set_aside") for result in pushed.results)
    services().allowance.count(device().garage, device().id, new)
    results = [_written(result) for result in pushed.results]
    return jsonify({**mark, "results": results, "conflicts": pushed.conflicts})


def _written(result: intake.Result) -> dict[str, Any]:
    written = asdict(result)
    return {**written.pop("told"), **written}


@room.route("/sync/pull")
@allowed("device")
@room.arguments(PullSchema, location="query")
@room.response(200, PulledSchema)
def pull(query: dict[str, Any]) -> Response:
    """The entries after a cursor, in order. `rewound` says that the cursor is of a journal that is no more."""
    with database().read() as session:
        garage = garages.get(session, device().garage)
        page = feed.pull(session, garage, query["epoch"], query["since"], query["since_id"], query["limit"])
        proven = house.proven_at(session)
        names = {row.id: row.name for row in tokens.listing(session, garage.id)}
    return jsonify({**asdict(page), "proven": proven, "devices": names})
