"""`POST /api/v1/calc/NAME`: the computations on the web, one documented route each."""

from flask import Response, jsonify

from tarebook.api.access import MOST_BYTES, allowed
from tarebook.api.blueprint import Room
from tarebook.api.calc import CALCULATIONS
from tarebook.api.calc.calculation import Calculation
from tarebook.api.calc.numbers import Given

room = Room("calc", __name__, description="Any computation on JSON: a garage in, numbers with their uncertainty out.")


def _mount(calculation: Calculation) -> None:
    @room.route(f"/calc/{calculation.name}", methods=["POST"], endpoint=calculation.name)
    @allowed("device", MOST_BYTES)
    @room.arguments(calculation.given)
    @room.response(200, calculation.answer)
    @room.doc(summary=calculation.about)
    def answer(given: Given) -> Response:
        return jsonify(calculation.answer_to(given))


for _calculation in CALCULATIONS.values():
    _mount(_calculation)
