"""One handler for whatever goes wrong, and the headers every answer bears."""

from flask import Flask, Response, current_app, g, jsonify, request
from werkzeug.exceptions import HTTPException, MethodNotAllowed
from werkzeug.routing import RequestRedirect

from tarebook.errors import TarebookError

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
    app.register_error_handler(Exception, _answer)
    app.register_error_handler(HTTPException, _answer)
    app.after_request(_add_headers)


def _answer(problem: Exception) -> Response:
    if isinstance(problem, RequestRedirect):
        return problem.get_response()  # type: ignore[return-value]
    error = _as_refusal(problem)
    g.code = error.code
    answer = jsonify(error.body())
    answer.status_code = problem.code or 500 if isinstance(problem, HTTPException) else error.status
    if isinstance(problem, MethodNotAllowed):
        answer.headers["Allow"] = ", ".join(sorted(problem.valid_methods or ()))
    if "seconds" in error.data:
        answer.headers["Retry-After"] = str(error.data["seconds"])
    if error.status == 401:
        answer.headers["WWW-Authenticate"] = "Bearer"
    return answer


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
