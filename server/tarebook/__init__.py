"""Tarebook: the weight of a car, part by part.

`create_app` is the only door of the web server. Flask and the database are imported inside it, so that the
command line and the pure rooms (`tarebook.core`, `tarebook.journal.fold`) start fast and stand alone.
"""

from __future__ import annotations

import os
from typing import TYPE_CHECKING

# Small matrices (`core/fusion`) gain nothing by threads of their own, and on a busy machine those wait for each other.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

if TYPE_CHECKING:
    from flask import Flask

    from tarebook.settings import Settings


def create_app(settings: Settings | None = None) -> Flask:
    """The WSGI application over the settings given, or those of the environment.

    The database must have been migrated (`tarebook.store.database.prepare`); `serve` does so.
    """
    from tarebook.api.app import build

    return build(settings)
