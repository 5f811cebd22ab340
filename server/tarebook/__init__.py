"""Tarebook: the weight of a car, part by part.

`create_app` is the only door of the web server. Flask and the database are imported inside it, so that the
command line and the pure rooms (`tarebook.core`, `tarebook.journal.fold`) start fast and stand alone.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from flask import Flask

    from tarebook.settings import Settings


def create_app(settings: Settings | None = None) -> Flask:
    """The WSGI application over the settings given, or those of the environment.

    The database must have been migrated (`tarebook.store.database.prepare`); `serve` does so.
    """
    from tarebook.api.app import build

    return build(settings)
