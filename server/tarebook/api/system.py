"""Whether the server is there, and the document of what it offers."""

from typing import Any

from flask import Response, current_app, jsonify

from tarebook.api.access import allowed
from tarebook.api.blueprint import Room
from tarebook.api.schemas import HealthSchema
from tarebook.api.services import services
from tarebook.journal.kinds import SCHEMA
from tarebook.version import __version__

PROTO = 1
"""The wire's version. Raised only when an app of another version could not be understood at all."""

room = Room("system", __name__, description="Health, and this document.")


@room.route("/health")
@allowed("anyone")
@room.response(200, HealthSchema)
def health() -> dict[str, Any]:
    """Is the server there?"""
    demo = services().settings.demo
    return {"ok": True, "version": __version__, "proto": PROTO, "schema": SCHEMA, "demo": demo}


@room.route("/openapi.json")
@allowed("device")
@room.response(200)
def openapi() -> Response:
    """This document."""
    return jsonify(current_app.extensions["tarebook_api"].spec.to_dict())
