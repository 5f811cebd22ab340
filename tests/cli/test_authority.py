"""`tarebook authority`: what phones are asked to install, and another one in its place."""

import pytest

from tarebook.devices import authority
from tarebook.settings import Settings
from tarebook.store import garages, house
from tarebook.store.migrate import prepare


@pytest.fixture
def folder(tmp_path):
    """The folder of the certificates of a garage whose name is chosen."""
    settings = Settings(data=tmp_path / "data")
    database = prepare(settings)
    with database.write() as session:
        garages.open_or_create(session)
        house.keep_origin(session, "https://garage.local:9443")
    database.close()
    return settings.certificates


def mark(folder):
    return authority.fingerprint(authority.load(folder).certificate)


def test_it_shows_what_may_be_vouched_for_the_fingerprint_and_how_to_remove_it(tarebook, folder):
    authority.make(folder, "garage.local")
    out = tarebook("authority").out
    assert "it may vouch for   garage.local, and private addresses" in out
    assert mark(folder) in out
    assert str(folder / "authority-key.pem") in out
    assert "To remove it from an iPhone" in out
    assert "To remove it from an Android phone" in out


def test_a_new_one_takes_its_place_and_is_for_the_kept_name(tarebook, folder):
    authority.make(folder, "tarebook.local")
    before = mark(folder)
    ended = tarebook("authority", "--new")
    assert "Install it on every phone." in ended.out
    assert mark(folder) != before
    assert mark(folder) in ended.out
    assert authority.load(folder).names == ["garage.local"]


def test_where_there_is_none_it_says_what_makes_one(tarebook, folder):
    ended = tarebook("authority")
    assert (ended.code, ended.out) == (1, "")
    assert (
        ended.err
        == f"tarebook: No authority has been made in {folder} yet. tarebook serve --lan makes one when it needs it.\n"
    )


def test_its_key_is_never_printed(tarebook, folder):
    authority.make(folder, "garage.local")
    key = (folder / "authority-key.pem").read_text().splitlines()[1]
    out = tarebook("authority").out + tarebook("authority", "--new").out
    assert key not in out
    assert "PRIVATE KEY" not in out
