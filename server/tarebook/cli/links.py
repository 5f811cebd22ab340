"""Addresses a person opens. Always `localhost`: 127.0.0.1 would be another origin with another phone database."""

from tarebook.cli.garage import OpenGarage
from tarebook.devices import pairing


def address(port: int) -> str:
    return f"http://localhost:{port}/"


def pairing_link(garage: OpenGarage, port: int) -> str:
    """A link that works once. The code stands after the #, so that it reaches no server log."""
    with garage.database.write() as session:
        return f"{address(port)}#pair={pairing.new_code(session, garage.id)}"
