"""`POST /api/v1/calc/NAME`: one documented route for each computation, which a process of its own does."""

from collections.abc import Callable
from typing import Any

from flask import Response, request

from tarebook.api.access import MOST_BYTES, allowed
from tarebook.api.blueprint import Room
from tarebook.api.body import StrictParser
from tarebook.api.calc import CALCULATIONS, apart
from tarebook.api.calc.calculation import Calculation
from tarebook.api.services import services


class _Unread(StrictParser):
    """Leaves the body to the process that computes: reading it is part of what may take long."""

    def parse(self, *_args: Any, **_kwargs: Any) -> bytes:
        self.check_type(request)
        return request.get_data()


class _CalcRoom(Room):
    ARGUMENTS_PARSER = _Unread()


_ABOUT = "Any computation on JSON: a garage in, numbers with their uncertainty out."
room = _CalcRoom("calc", __name__, description=_ABOUT)


def _mount(calculation: Calculation) -> None:
    @room.route(f"/calc/{calculation.name}", methods=["POST"], endpoint=calculation.name)
    @allowed("device", MOST_BYTES)
    @room.arguments(calculation.given)
    @room.response(200, calculation.answer)
    @room.doc(summary=calculation.about)
    def answer(payload: bytes) -> Response:
        return Response(computed(calculation.name, payload), mimetype="application/json")


def computed(name: str, payload: bytes) -> bytes:
    """What `apart.compute` answers within the seconds of the settings, for as long as whoever asks is there."""
    return apart.compute(name, payload, services().settings.calc_seconds, _has_gone())


def _has_gone() -> Callable[[], bool]:
    gone = request.environ.get("tarebook.gone")
    return gone.is_set if gone else lambda: False


for _calculation in CALCULATIONS.values():
    _mount(_calculation)
