"""The app itself: built files, the same for everybody, without a token."""

from flask import Blueprint, Response, send_from_directory
from werkzeug.exceptions import NotFound
from werkzeug.routing import PathConverter

from tarebook.api.access import allowed
from tarebook.api.services import services
from tarebook.errors import TarebookError

files = Blueprint("app_files", __name__)


class FileConverter(PathConverter):
    """Any path but the API's, so that an unfit method there is answered as such."""

    regex = r"(?!api(?:/|\Z))[^/].*?"


@files.route("/")
@allowed("anyone")
def index() -> Response:
    """The page. All screens are behind its hash."""
    try:
        return _file("index.html")
    except NotFound as problem:
        raise TarebookError("app_missing") from problem


@files.route("/<file:name>")
@allowed("anyone")
def file(name: str) -> Response:
    return _file(name)


def _file(name: str) -> Response:
    """Files under assets/ are named by their content; every other is asked for again each time."""
    answer = send_from_directory(services().settings.static_app, name, etag=True)
    forever = name.startswith("assets/")
    answer.headers["Cache-Control"] = "public, max-age=31536000, immutable" if forever else "no-cache"
    return answer
