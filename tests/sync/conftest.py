"""One PostgreSQL for all tests of this folder that want it."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from tests.sync import postgres


@pytest.fixture(scope="session")
def address() -> Iterator[str]:
    """The SQLAlchemy address of an empty database."""
    with postgres.running() as running:
        yield running
