"""Who may call a route. Every view says so itself; a view that says nothing answers nobody."""

from collections.abc import Callable
from ipaddress import ip_address
from typing import Any, Literal, TypeVar, cast

from flask import Flask, current_app, g, request
from flask_smorest import Blueprint

from tarebook.api.services import database, services
from tarebook.devices import tokens
from tarebook.errors import TarebookError
from tarebook.store.models import DeviceRow

Who = Literal["anyone", "device", "home"]
View = TypeVar("View", bound=Callable[..., Any])
LOCAL_NAMES = {"localhost", "127.0.0.1", "::1"}
PROXY_HEADERS = ("Forwarded", "Via", "X-Forwarded-For", "X-Forwarded-Host", "X-Real-IP")
BODY_BYTES = 2 * 1024 * 1024
MOST_BYTES = 16 * 1024 * 1024  # that any route takes: a garage of tens of thousands of records


def allowed(who: Who, body: int = BODY_BYTES) -> Callable[[View], View]:
    """Marks a view: `anyone`, a paired `device` by its token, or one at the `home` computer itself; and the most bytes
    its requests may carry."""

    def mark(view: View) -> View:
        marked: Any = view if who == "anyone" else Blueprint.doc(security=[{"token": []}])(view)
        marked.allowed = who
        marked.body = body
        return cast(View, marked)

    return mark


def allowed_of(view: object) -> Who | None:
    return getattr(view, "allowed", None)


def guard(app: Flask) -> None:
    app.before_request(_check_host)
    app.before_request(_check_access)


def _check_host() -> None:
    """A name that is not ours is a page elsewhere pointing its own name at this computer."""
    if _host_name() not in _our_names():
        raise TarebookError("wrong_host")


def _host_name() -> str:
    name = request.host.rsplit(":", 1)[0] if not request.host.endswith("]") else request.host
    return name.strip("[]").lower()


def _our_names() -> set[str]:
    """Phones are answered under the permanent name alone: under another they would begin another, empty garage."""
    settings, named = services().settings, set(services().settings.hosts)
    return named if request.environ.get("tarebook.entrance") == "lan" else LOCAL_NAMES | named | {settings.host}


def is_home() -> bool:
    """Whether the one who asks sits at this computer: a browser that opened it by a local name, and no proxy between.

    A reverse proxy on this computer speaks from a local address for everybody; it is known by the name it passes on,
    or by the headers it adds.
    """
    direct = not any(name in request.headers for name in PROXY_HEADERS)
    local = _host_name() in LOCAL_NAMES and _is_loopback(request.remote_addr or "")
    return direct and local and request.environ.get("tarebook.entrance", "home") == "home"


def caller() -> str:
    """The address of the one who asks. What a proxy says of it is believed of a trusted one alone, and so of each
    that it has it from: everybody else may write what he likes there."""
    trusted, address = services().settings.trusted_proxies, request.remote_addr or ""
    told = [one.strip() for one in ",".join(request.headers.getlist("X-Forwarded-For")).split(",")]
    while address in trusted and told and told[-1]:
        address = told.pop()
    return address


def _is_loopback(address: str) -> bool:
    try:
        return ip_address(address).is_loopback
    except ValueError:
        return False


def _check_access() -> None:
    if request.endpoint is None or request.routing_exception is not None:
        return  # answered with 404, 405 or a redirect
    view = current_app.view_functions[request.endpoint]
    if "Transfer-Encoding" in request.headers:
        raise TarebookError("length_required")
    request.max_content_length = getattr(view, "body", BODY_BYTES)
    if allowed_of(view) != "anyone":
        g.device = _device()
    if allowed_of(view) == "home" and not is_home():
        raise TarebookError("home_only")


def _device() -> DeviceRow:
    kind, _, token = request.headers.get("Authorization", "").partition(" ")
    if kind.lower() != "bearer" or not token.isascii():
        raise TarebookError("unpaired")
    with database().read() as session:
        device = tokens.who(session, token.strip())
        session.expunge(device)
    if tokens.is_due(device):
        _note_seen(device)
    return device


def _note_seen(device: DeviceRow) -> None:
    try:
        with database().write() as session:
            tokens.seen(session, device.garage, device.id)
    except TarebookError:
        current_app.logger.warning("last_seen not written")  # a full disk must not keep a phone from reading
