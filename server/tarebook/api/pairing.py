"""From a one-time code to a token."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

from flask import request

from tarebook.api.access import LOCAL_NAMES, allowed
from tarebook.api.blueprint import Room
from tarebook.api.schemas import PairedSchema, PairSchema
from tarebook.api.services import services
from tarebook.devices import pairing
from tarebook.devices.pairing import Paired
from tarebook.errors import TarebookError
from tarebook.store import garages

room = Room("pairing", __name__, description="From a one-time code to a token.")


@room.route("/pair", methods=["POST"])
@allowed("anyone")
@room.arguments(PairSchema)
@room.response(200, PairedSchema)
def pair(body: dict[str, Any]) -> dict[str, Any]:
    """Makes a device. The token is told this once."""
    paired = _in_demo(body) if body["code"] is None else _by_code(body)
    return {**asdict(paired), "demo": services().settings.demo}


def _by_code(body: dict[str, Any]) -> Paired:
    tries = services().tries
    tries.check()
    try:
        with services().database.write() as session:
            return pairing.redeem(session, body["code"], body["name"], body["device"])
    except TarebookError as refusal:
        if refusal.code == "pair_code_wrong":
            tries.fail()
        raise


def _in_demo(body: dict[str, Any]) -> Paired:
    """In the demo, whoever is at this computer is in: nothing there is anybody's."""
    if not services().settings.demo or request.remote_addr not in LOCAL_NAMES:
        raise TarebookError("pair_code_wrong")
    with services().database.write() as session:
        return pairing.admit(session, garages.open_or_create(session).id, body["name"], body["device"])
