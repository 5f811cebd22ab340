"""A home server for all tests of a module."""

import pytest

from tests.home import Home


@pytest.fixture(scope="module")
def lasting_home(tmp_path_factory: pytest.TempPathFactory) -> Home:
    """One for all tests of a module, whatever was asked of it before."""
    return Home(tmp_path_factory.mktemp("home"))


@pytest.fixture(scope="module")
def headers(lasting_home: Home) -> dict[str, str]:
    """Of a device that is paired there."""
    return lasting_home.pair().headers
