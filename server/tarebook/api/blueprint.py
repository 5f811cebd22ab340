"""The blueprint all rooms of the API use: strict reading, one prefix."""

from typing import Any

from flask_smorest import Blueprint

from tarebook.api.answers import API
from tarebook.api.body import StrictParser


class Room(Blueprint):
    """A group of routes under `/api/v1`."""

    ARGUMENTS_PARSER = StrictParser()

    def __init__(self, name: str, module: str, **kwargs: Any) -> None:
        super().__init__(name, module, url_prefix=API, **kwargs)
