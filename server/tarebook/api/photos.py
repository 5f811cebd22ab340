"""Photos on the wire: announced, sent in pieces, fetched by hash."""

from io import BytesIO
from typing import Any

from flask import Response, request, send_file, url_for

from tarebook.api.access import allowed
from tarebook.api.blueprint import Room
from tarebook.api.body import checked_id
from tarebook.api.schemas import AnnouncedSchema, AnnounceSchema, OffsetHeaderSchema, PhotoQuerySchema
from tarebook.api.services import database, device, services
from tarebook.errors import TarebookError
from tarebook.store.photos import CHUNK_BYTES, Upload

room = Room("photos", __name__, description="Photos: announced, sent in pieces, fetched by hash.")


@room.route("/photos", methods=["POST"])
@allowed("device")
@room.arguments(AnnounceSchema)
@room.response(201, AnnouncedSchema)
@room.alt_response(200, schema=AnnouncedSchema, description="The photo is here already.")
def announce(body: dict[str, Any]) -> tuple[dict[str, Any], int]:
    """Says that a photo is coming; tells where to send it, and from which byte on."""
    services().photos.check_allowance(device().garage, device().id, body["sha256"], body["size"])
    upload = services().photos.announce(device().garage, body["sha256"], body["size"], body["type"])
    if upload is None:
        return {"present": True}, 200
    url = url_for("photos.piece", name=upload.id)
    return {"present": False, "url": url, "offset": services().photos.offset(upload)}, 201


@room.route("/uploads/<name>", methods=["HEAD"])
@allowed("device")
@room.response(200, description="Upload-Offset says how many bytes are here.")
def progress(name: str) -> Response:
    """How much of an upload is here."""
    upload = _upload(name)
    return Response(headers={"Upload-Offset": str(services().photos.offset(upload))})


@room.route("/uploads/<name>", methods=["PATCH"])
@allowed("device")
@room.arguments(OffsetHeaderSchema, location="headers", unknown="exclude")
@room.doc(requestBody={"content": {"application/octet-stream": {"schema": {"type": "string", "format": "binary"}}}})
@room.response(204, description="Upload-Offset says how many bytes are here.")
def piece(headers: dict[str, Any], name: str) -> Response:
    """Adds a piece of at most 1 MiB at Upload-Offset. The last one completes the photo, verified."""
    upload = _upload(name)
    data = request.get_data(cache=False)
    if len(data) > CHUNK_BYTES:
        raise TarebookError("upload_chunk_too_large", most=CHUNK_BYTES)
    here = services().photos.append(upload, headers["upload_offset"], data, device().id)
    return Response(status=204, headers={"Upload-Offset": str(here)})


@room.route("/photos/<sha256>")
@allowed("device")
@room.arguments(PhotoQuerySchema, location="query")
@room.response(200, content_type="image/*", schema={"type": "string", "format": "binary"})
def photo(query: dict[str, Any], sha256: str) -> Response:
    """A photo, or its small picture. What a hash names never changes."""
    photos = services().photos
    with database().read() as session:
        row = photos.get(session, device().garage, checked_id(sha256, "photo_unknown"))
        kind = row.type
    small = query["size"] == "thumb"
    found = BytesIO(photos.thumb(sha256)) if small else photos.path(sha256)
    answer = send_file(found, mimetype="image/jpeg" if small else kind, etag=f"{sha256}-{query['size']}")
    answer.headers["Cache-Control"] = "private, max-age=31536000, immutable"
    return answer


def _upload(name: str) -> Upload:
    with database().read() as session:
        return services().photos.find_upload(session, device().garage, checked_id(name, "upload_unknown"))
