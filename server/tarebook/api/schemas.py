"""The contract of the routes: what goes in and what comes out. Written to `webapp/src/generated/api.ts`."""

from typing import Any

from marshmallow import Schema, ValidationError, fields, validate, validates_schema

from tarebook.api.body import LARGEST, Hash, Id, Line, whole
from tarebook.errors import TarebookError
from tarebook.garage.feed import PAGE_ENTRIES
from tarebook.garage.intake import BATCH_ENTRIES

PHOTO_TYPES = ("image/jpeg", "image/png", "image/webp")


class DescribedSchema(Schema):
    code = fields.String(required=True)
    sentence = fields.String(required=True)
    do = fields.String(required=True)
    data = fields.Dict(required=True)


class ErrorSchema(Schema):
    """Every answer that is not a success."""

    error = fields.Nested(DescribedSchema, required=True)


class HealthSchema(Schema):
    """Enough for a phone to know that the server is there and whether it speaks the same language."""

    ok = fields.Boolean(required=True)
    version = fields.String(required=True)
    proto = fields.Integer(required=True)
    schema = fields.Integer(required=True)
    demo = fields.Boolean(required=True)


class PairSchema(Schema):
    """`code`: null only in the demo. `device`: the name this app had for its device before, if any."""

    code = Line(200, required=True, allow_none=True)
    name = Line(80, load_default="")
    device = Id(load_default=None, allow_none=True)


class PairedSchema(Schema):
    token = fields.String(required=True)
    device = fields.String(required=True)
    garage = fields.String(required=True)
    name = fields.String(required=True)
    demo = fields.Boolean(required=True)


class WaitSchema(Schema):
    """`join`: the secret the phone was told when its code was right."""

    join = Line(200, required=True)


class WaitingSchema(Schema):
    """`words`: what the phone shows, to be compared at the home computer. `join`: only in the first answer."""

    join = fields.String()
    words = fields.List(fields.String(), required=True)
    seconds = fields.Integer(required=True)


class InvitationSchema(Schema):
    """`link` is in the QR, drawn in `svg`; `code` is the short one, for typing. Either uses the invitation up."""

    id = fields.String(required=True)
    link = fields.String(required=True)
    code = fields.String(required=True)
    svg = fields.String(required=True)
    seconds = fields.Integer(required=True)


class JoinSchema(Schema):
    id = fields.String(required=True)
    name = fields.String(required=True)
    words = fields.List(fields.String(), required=True)
    seconds = fields.Integer(required=True)


class JoinsSchema(Schema):
    joins = fields.List(fields.Nested(JoinSchema), required=True)


class ProofSchema(Schema):
    """A receipt as it came with the entry: one that proves nothing is none. `sent_by`: as it came, if it did."""

    receipt = fields.String(required=True)
    sent_by = fields.String()


class PushSchema(Schema):
    """Each entry: one entry's exact JSON text. `epoch`: as last heard; empty from a phone that never heard one.

    `receipts`: left out, or for each entry the one that came with it, or null.
    """

    proto = whole(0, required=True)
    schema = whole(0, required=True)
    garage = Id(required=True)
    epoch = Line(80, required=True)
    entries = fields.List(fields.String(), required=True, validate=validate.Length(max=BATCH_ENTRIES))
    receipts = fields.List(fields.Nested(ProofSchema, allow_none=True))

    @validates_schema
    def _as_many(self, data: dict[str, Any], **_more: Any) -> None:
        if "receipts" in data and len(data["receipts"]) != len(data["entries"]):
            raise ValidationError("As many as there are entries.", "receipts")


class _ToldSchema(Schema):
    receipt = fields.String(metadata={"description": "Only of an accepted entry. Shown when it is sent again."})
    sent_by = fields.String(metadata={"description": "Only where it is not the device inside the entry."})


class PushResultSchema(_ToldSchema):
    id = fields.String(required=True)
    state = fields.String(required=True, validate=validate.OneOf(["accepted", "repeated", "set_aside", "id_reuse"]))
    number = fields.Integer(required=True)
    why = fields.String(required=True, allow_none=True)


class ConflictSchema(Schema):
    record = fields.String(required=True)
    fields_ = fields.List(fields.String(), required=True, data_key="fields")


class _MarkSchema(Schema):
    epoch = fields.String(required=True)
    head = fields.Integer(required=True)
    durable = fields.Integer(required=True, allow_none=True)


class PushedSchema(_MarkSchema):
    results = fields.List(fields.Nested(PushResultSchema), required=True)
    conflicts = fields.List(fields.Nested(ConflictSchema), required=True)


class PullSchema(Schema):
    """The cursor: epoch, number of the last entry held, and in `since_id` the mark that came with it.

    `since` 0 is the beginning, and needs neither.
    """

    epoch = fields.String(load_default="", validate=validate.Length(max=80))
    since = fields.Integer(load_default=0, validate=validate.Range(min=0, max=LARGEST))
    since_id = fields.String(load_default="", validate=validate.Length(max=80))
    limit = fields.Integer(load_default=PAGE_ENTRIES, validate=validate.Range(min=1, max=PAGE_ENTRIES))


class PulledEntrySchema(_ToldSchema):
    number = fields.Integer(required=True)
    text = fields.String(required=True)
    aside = fields.String(required=True, allow_none=True)
    id = fields.String(metadata={"description": "Only where the journal had to name the text itself."})


class PulledSchema(_MarkSchema):
    entries = fields.List(fields.Nested(PulledEntrySchema), required=True)
    mark = fields.String(required=True, metadata={"description": "Sent back as since_id with the next pull."})
    more = fields.Boolean(required=True)
    proven = fields.String(
        required=True, allow_none=True, metadata={"description": "When a backup was last proven; null: none was yet."}
    )
    devices = fields.Dict(
        keys=fields.String(), values=fields.String(), required=True,
        metadata={"description": "What people call the garage's devices, those taken off the list too, by their ids."},
    )  # fmt: skip


def _no_heic(kind: str) -> None:
    """Phones take such pictures, so whoever announces one hears how to make it a JPEG."""
    if kind.startswith(("image/heic", "image/heif")):
        raise TarebookError("photo_heic")


class AnnounceSchema(Schema):
    sha256 = Hash(required=True)
    size = whole(1, required=True)
    type = fields.String(required=True, validate=[_no_heic, validate.OneOf(PHOTO_TYPES)])


class AnnouncedSchema(Schema):
    """`present`: nothing to send. Else where to send it, and from which byte on."""

    present = fields.Boolean(required=True)
    url = fields.String()
    offset = fields.Integer()


class PhotoQuerySchema(Schema):
    size = fields.String(load_default="full", validate=validate.OneOf(["thumb", "full"]))


class OffsetHeaderSchema(Schema):
    upload_offset = fields.Integer(required=True, data_key="Upload-Offset", validate=validate.Range(min=0, max=LARGEST))


class DeviceSchema(Schema):
    id = fields.String(required=True)
    name = fields.String(required=True)
    paired_at = fields.String(required=True)
    last_seen = fields.String(required=True)
    revoked_at = fields.String(required=True, allow_none=True)
    this = fields.Boolean(required=True)


class RenameSchema(Schema):
    name = Line(80, required=True)


class DevicesSchema(Schema):
    """`home`: whether the one who asks is at the home computer, where phones are let in."""

    home = fields.Boolean(required=True)
    devices = fields.List(fields.Nested(DeviceSchema), required=True)
