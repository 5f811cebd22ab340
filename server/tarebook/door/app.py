"""The door page's own small application. It shares nothing with the garage's: no database, no routes, no token."""

import time
from pathlib import Path
from typing import Any

from cryptography import x509
from cryptography.hazmat.primitives import serialization
from flask import Blueprint, Flask, Response, current_app, jsonify, render_template, request
from werkzeug.exceptions import HTTPException

from tarebook.devices import authority
from tarebook.devices.origin import Origin, as_address, in_url
from tarebook.door import profile
from tarebook.errors import TarebookError
from tarebook.errors.page import page as error_page
from tarebook.network import addresses_for_phones, is_near

_LOCAL = ("localhost",)
# `connect-src` cannot name an IPv6 address; the page's only script is its own and there is nothing here to give away.
_POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self' http: https:; "
    "base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
HEADERS = {
    "Content-Security-Policy": _POLICY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "X-Frame-Options": "DENY",
    "Cache-Control": "no-store",
}
_CODES = {404: "not_found", 405: "method_not_allowed"}

pages = Blueprint("door", __name__)


def build(folder: Path, origin: Origin, port: int, addresses: tuple[str, ...] = ()) -> Flask:
    """The application for the authority in the folder; `port` is its own, `addresses` as in the settings."""
    app = Flask("tarebook.door", static_folder="files", static_url_path="/files", template_folder=".")
    app.extensions["tarebook.door"] = {"folder": folder, "origin": origin, "port": port, "addresses": addresses}
    app.register_blueprint(pages)
    app.before_request(_check_host)
    app.after_request(_add_headers)
    app.register_error_handler(TarebookError, _refuse)
    app.register_error_handler(HTTPException, _refuse_request)
    return app


def _given(name: str) -> Any:
    return current_app.extensions["tarebook.door"][name]


def _authority() -> x509.Certificate:
    """As it lies there now: it may have been made anew since the start."""
    return authority.load_certificate(_given("folder"))


def _check_host() -> None:
    """Any private address or the permanent name: the page is for phones that cannot look the name up yet.

    What is no request comes as one for nothing, with the reason beside it.
    """
    if code := request.environ.get("tarebook.unreadable"):
        raise TarebookError(code)
    host = request.host if request.host.endswith("]") else request.host.rsplit(":", 1)[0]
    name = host.strip("[]").lower()
    address = as_address(name)
    if not (is_near(address) if address else name in (_given("origin").name, *_LOCAL)):
        raise TarebookError("wrong_host")


def _add_headers(answer: Response) -> Response:
    for name, value in HEADERS.items():
        answer.headers[name] = value
    return answer


def _refuse(problem: TarebookError) -> tuple[str, int, dict[str, str]]:
    if "text/html" in request.headers.get("Accept", ""):
        return error_page(problem, "/files/door.css"), problem.status, {"Content-Type": "text/html; charset=utf-8"}
    return f"{problem.sentence} {problem.do}\n", problem.status, {"Content-Type": "text/plain; charset=utf-8"}


def _refuse_request(problem: HTTPException) -> tuple[str, int, dict[str, str]]:
    return _refuse(TarebookError(_CODES.get(problem.code or 0, "bad_request")))


@pages.get("/")
def page() -> str:
    """What to install, and whether it worked."""
    origin, mark = _given("origin"), authority.fingerprint(_authority())
    return render_template("page.html", origin=origin.url, name=origin.name, mark=mark.replace(":", " "))


@pages.get("/about.json")
def about() -> Response:
    """Where the page's check looks, and what time it is here, in milliseconds."""
    origin, own = _given("origin"), addresses_for_phones(_given("addresses"))
    return jsonify(
        name=origin.url,
        addresses=[Origin(str(address), origin.port).url for address in own],
        door=f"http://{in_url(origin.name)}:{_given('port')}",
        now=round(time.time() * 1000),
    )


@pages.get("/here")
def here() -> tuple[str, int, dict[str, str]]:
    """Nothing, for any page: that it arrives under the permanent name says that the name is found."""
    return "", 204, {"Cross-Origin-Resource-Policy": "cross-origin"}


@pages.get("/tarebook-authority.crt")
def certificate_der() -> Response:
    """The certificate as Android and others install it."""
    return _file(_authority().public_bytes(serialization.Encoding.DER), "application/x-x509-ca-cert")


@pages.get("/tarebook-authority.pem")
def certificate_pem() -> Response:
    """The certificate as text, for computers."""
    return _file(_authority().public_bytes(serialization.Encoding.PEM), "application/x-pem-file")


@pages.get("/tarebook.mobileconfig")
def mobileconfig() -> Response:
    """The certificate in a profile, as iPhones install it."""
    return _file(profile.mobileconfig(_authority(), _given("origin").name), profile.TYPE)


def _file(content: bytes, kind: str) -> Response:
    name = request.path.removeprefix("/")
    return Response(content, content_type=kind, headers={"Content-Disposition": f'attachment; filename="{name}"'})
