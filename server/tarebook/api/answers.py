"""One handler for whatever goes wrong, and the headers every answer bears."""

import re

from flask import Flask, Response, current_app, g, jsonify, request
from werkzeug.exceptions import HTTPException, MethodNotAllowed

from tarebook.api.services import services
from tarebook.errors import TarebookError
from tarebook.errors.page import page

API = "/api/v1"
_CODES = {404: "not_found", 405: "method_not_allowed", 413: "too_large", 415: "unsupported_type"}

# The app loads its own files and nothing else; photos are shown from blob: addresses.
POLICY = "; ".join(
    f"{what} {where}"
    for what, where in {
        "default-src": "'none'",
        "script-src": "'self'",
        "style-src": "'self'",
        "img-src": "'self' blob: data:",
        "font-src": "'self'",
        "connect-src": "'self'",
        "manifest-src": "'self'",
        "worker-src": "'self'",
        "base-uri": "'none'",
        "form-action": "'none'",
        "frame-ancestors": "'none'",
    }.items()
)
HEADERS = {
    "Content-Security-Policy": POLICY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(self), geolocation=(), microphone=(), payment=(), usb=()",
    "X-Frame-Options": "DENY",
}


def handle(app: Flask) -> None:
    app.before_request(_refuse_unreadable)
    app.register_error_handler(Exception, _answer)
    app.register_error_handler(HTTPException, _answer)
    app.after_request(_add_headers)


def _refuse_unreadable() -> None:
    """What is no request comes as one for nothing, with the reason beside it (`cli/visit.py`)."""
    if code := request.environ.get("tarebook.unreadable"):
        raise TarebookError(code)


def _answer(problem: Exception) -> Response:
    error = _as_refusal(problem)
    g.code = error.code
    answer = Response(page(error, _style())) if _is_for_eyes() else jsonify(error.body())
    answer.status_code = problem.code or 500 if isinstance(problem, HTTPException) else error.status
    if isinstance(problem, MethodNotAllowed):
        answer.headers["Allow"] = ", ".join(sorted(problem.valid_methods or ()))
    if "seconds" in error.data:
        answer.headers["Retry-After"] = str(error.data["seconds"])
    if error.status == 401:
        answer.headers["WWW-Authenticate"] = "Bearer"
    return answer


def _is_for_eyes() -> bool:
    """Whether a browser opens this as a page: it then asks for HTML by name."""
    return "text/html" in request.headers.get("Accept", "") and not request.path.startswith("/api/")


def _style() -> str:
    """The app's own, whose name its build makes."""
    index = services().settings.static_app / "index.html"
    found = re.search(r'href="(/assets/[^"]+\.css)"', index.read_text("utf-8")) if index.is_file() else None
    return found[1] if found else ""


def _as_refusal(problem: Exception) -> TarebookError:
    if isinstance(problem, TarebookError):
        return problem
    if isinstance(problem, HTTPException):
        return TarebookError(_CODES.get(problem.code or 500, "bad_request"))
    current_app.logger.error("unforeseen: %s %s", request.method, request.path, exc_info=problem)
    return TarebookError("broken")


def _add_headers(answer: Response) -> Response:
    for name, value in HEADERS.items():
        answer.headers.setdefault(name, value)
    if request.path.startswith(API):
        answer.headers.setdefault("Cache-Control", "no-store")
    return answer
