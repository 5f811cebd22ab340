"""A sentence beside a number, as every answer carries it."""

from __future__ import annotations

from marshmallow import Schema, fields

from tarebook.api.calc.numbers import Json
from tarebook.core.standing.sentences import Said


class SaidSchema(Schema):
    code = fields.String(required=True)
    text = fields.String(required=True)


def write_said(said: Said) -> Json:
    return {"code": said.code, "text": said.text}
