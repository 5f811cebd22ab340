"""The build sheet of one car, as text, JSON or CSV: what `tarebook report` prints, in a process that can be ended."""

import json
from typing import Any

from flask import Response
from marshmallow import Schema, fields, validate

from tarebook.api.access import allowed
from tarebook.api.blueprint import Room
from tarebook.api.body import Line
from tarebook.api.calc.routes import computed
from tarebook.api.services import database, device
from tarebook.garage.records import all_records, unproven
from tarebook.journal.state import to_json
from tarebook.papers.report import FORMATS

room = Room("report", __name__, description="The build sheet.")


class ReportQuerySchema(Schema):
    """`car`: name or id, needed when the garage has several."""

    format = fields.String(load_default="text", validate=validate.OneOf(list(FORMATS)))
    trim = fields.String(load_default="event", validate=validate.OneOf(["event", "road"]))
    car = Line(120, load_default=None)


@room.route("/report")
@allowed("device")
@room.arguments(ReportQuerySchema, location="query")
@room.response(200, content_type="text/plain", schema={"type": "string"})
@room.alt_response(200, content_type="application/json", schema={"type": "object"}, success=True)
@room.alt_response(200, content_type="text/csv", schema={"type": "string"}, success=True)
def build_sheet(query: dict[str, Any]) -> Response:
    """What the car weighs now and where the weight is."""
    with database().read() as session:
        records, by_others = all_records(session, device().garage), unproven(session, device().garage)
    asked = to_json([records, query["format"], query["car"], query["trim"], by_others])
    return Response(json.loads(computed("report", asked.encode("ascii"))), mimetype=FORMATS[query["format"]])
