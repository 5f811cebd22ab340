"""One line in the log for each request of the API: who asked, for what, how it ended and how long it took."""

import time

from flask import Flask, Response, g, request

from tarebook.api.answers import API
from tarebook.api.services import services
from tarebook.store.log import note


def watch(app: Flask) -> None:
    app.before_request(_begin)
    app.after_request(_note)


def _begin() -> None:
    g.began = time.monotonic()


def _note(answer: Response) -> Response:
    if request.path.startswith(API):
        device = g.get("device")
        note(
            services().settings.data, "request", method=request.method,
            route=request.url_rule.rule if request.url_rule else None, status=answer.status_code, code=g.get("code"),
            device=device.id if device else None, bytes_in=request.content_length or 0,
            ms=round((time.monotonic() - g.get("began", time.monotonic())) * 1000),
        )  # fmt: skip
    return answer
