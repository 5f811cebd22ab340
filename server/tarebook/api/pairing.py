"""From a one-time code to a token, and the yes that a phone needs in between."""

import logging
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import asdict
from typing import Any

from flask import Response, jsonify

from tarebook.api.access import allowed, caller, is_home
from tarebook.api.blueprint import Room
from tarebook.api.body import checked_id
from tarebook.api.schemas import InvitationSchema, JoinsSchema, PairedSchema, PairSchema, WaitingSchema, WaitSchema
from tarebook.api.services import database, device, services
from tarebook.devices import joining, pairing, qr
from tarebook.devices.pairing import Paired
from tarebook.errors import TarebookError
from tarebook.store import garages, house

room = Room("pairing", __name__, description="From a one-time code to a token.")
log = logging.getLogger("tarebook.pairing")


@room.route("/pair", methods=["POST"])
@allowed("anyone")
@room.arguments(PairSchema)
@room.response(200, PairedSchema)
@room.alt_response(202, schema=WaitingSchema, success=True, description="The code is right. Wait for a yes at home.")
def pair(body: dict[str, Any]) -> Response:
    """Makes a device, or lets it wait for a yes on the home computer. The token is told once."""
    with _logged():
        return _told(_in_demo(body) if body["code"] is None else _counted(body))


@room.route("/pair/wait", methods=["POST"])
@allowed("anyone")
@room.arguments(WaitSchema)
@room.response(200, PairedSchema)
@room.alt_response(202, schema=WaitingSchema, success=True, description="Nobody has said yes or no yet.")
def wait(body: dict[str, Any]) -> Response:
    """Asks whether somebody has said yes. The token is told once."""
    with _logged():
        return _told(_collected(body["join"]))


@room.route("/pair/invitations", methods=["POST"])
@allowed("home")
@room.response(201, InvitationSchema)
def invite() -> dict[str, Any]:
    """A fresh invitation for a phone: a link, its QR, and a short code for typing."""
    with database().write() as session:
        origin = house.origin(session)
        if origin is None:
            raise TarebookError("no_phone_address")
        made = pairing.invite(session, device().garage)
    link = f"{origin}/#pair={made.full}"
    return {"id": made.id, "link": link, "code": made.short, "svg": qr.as_svg(link), "seconds": made.seconds}


@room.route("/pair/joins")
@allowed("home")
@room.response(200, JoinsSchema)
def joins() -> dict[str, Any]:
    """The phones that wait for a yes."""
    with database().read() as session:
        return {"joins": [asdict(each) for each in joining.waiting(session, device().garage)]}


@room.route("/pair/joins/<name>/confirm", methods=["POST"])
@allowed("home")
@room.response(200, JoinsSchema)
def confirm(name: str) -> dict[str, Any]:
    """Says yes to a phone that waits; it then gets its token."""
    return _decided(name, yes=True)


@room.route("/pair/joins/<name>/refuse", methods=["POST"])
@allowed("home")
@room.response(200, JoinsSchema)
def refuse(name: str) -> dict[str, Any]:
    """Says no. Its code is used up all the same."""
    return _decided(name, yes=False)


def _decided(name: str, yes: bool) -> dict[str, Any]:
    with database().write() as session:
        joining.decide(session, device().garage, checked_id(name, "join_unknown"), yes)
        return {"joins": [asdict(each) for each in joining.waiting(session, device().garage)]}


def _told(found: Paired | joining.Asked | joining.Waiting) -> Response:
    if isinstance(found, Paired):
        return jsonify({**asdict(found), "demo": services().settings.demo})
    join = {"join": found.join} if isinstance(found, joining.Asked) else {}
    answer = jsonify({**join, "words": found.words, "seconds": found.seconds})
    answer.status_code = 202
    return answer


@contextmanager
def _logged() -> Iterator[None]:
    """Says in the log who was refused, where no code may stand."""
    try:
        yield
    except TarebookError as refusal:
        log.warning("pairing refused to %s: %s", caller(), refusal.code)
        raise


def _counted(body: dict[str, Any]) -> Paired | joining.Asked:
    """Hears one try, unless too many failed of those that may be guesses."""
    if is_home() or _is_full(body["code"]):
        return _by_code(body)
    tries, address = services().tries, caller()
    tries.check(address)
    try:
        return _by_code(body)
    except TarebookError as refusal:
        if refusal.code == "pair_code_wrong":
            tries.fail(address)
        raise


def _is_full(code: str) -> bool:
    with database().read() as session:
        return pairing.is_full(session, code)


def _by_code(body: dict[str, Any]) -> Paired | joining.Asked:
    with database().write() as session:
        return pairing.redeem(session, body["code"], body["name"], body["device"], here=is_home())


def _collected(join: str) -> Paired | joining.Waiting:
    with database().read() as session:  # a phone asks often, and a stranger may: neither holds up who writes
        if waits := joining.still_waiting(session, join):
            return waits
    with database().write() as session:
        return pairing.collect(session, join)


def _in_demo(body: dict[str, Any]) -> Paired:
    """In the demo, whoever is at this computer is in: nothing there is anybody's."""
    if not services().settings.demo or not is_home():
        raise TarebookError("pair_code_wrong")
    with database().write() as session:
        return pairing.admit(session, garages.open_or_create(session).id, body["name"], body["device"])
