"""`tarebook authority`: what phones are asked to install, how it moves, and another one in its place."""

import sys

import pytest
from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.serialization import pkcs12

from tarebook.devices import authority
from tarebook.settings import Settings
from tarebook.store import garages, house
from tarebook.store.migrate import prepare
from tests.devices.openssl import openssl


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


SECRET = "four words and a number 7"


@pytest.fixture
def secret(tmp_path):
    file = tmp_path / "secret.txt"
    file.write_text(f"{SECRET}\n")
    return file


def test_it_moves_to_a_new_computer_under_a_passphrase_and_phones_need_nothing(tarebook, folder, secret, tmp_path):
    authority.make(folder, "garage.local")
    saved, new = tmp_path / "authority.p12", tmp_path / "new"
    ended = tarebook("authority", "--save", saved, "--passphrase", secret)
    assert (ended.code, ended.err) == (0, "")
    assert saved.stat().st_mode & 0o777 == 0o600
    ended = tarebook("authority", "--take", saved, "--passphrase", secret, "--data", new)
    assert (ended.code, mark(new / "certificates")) == (0, mark(folder))
    assert mark(folder) in ended.out
    assert (new / "certificates" / "authority-key.pem").stat().st_mode & 0o777 == 0o600


def test_the_file_is_what_openssl_reads_under_the_passphrase_and_under_no_other(tarebook, folder, secret, tmp_path):
    """PKCS#12 (RFC 7292), read by the openssl program."""
    held = authority.make(folder, "garage.local")
    saved = tmp_path / "authority.p12"
    tarebook("authority", "--save", saved, "--passphrase", secret)
    code, said = openssl("pkcs12", "-in", saved, "-nodes", "-passin", f"pass:{SECRET}")
    assert code == 0
    assert authority.private_pem(held.key).decode().splitlines()[1] in said
    assert openssl("pkcs12", "-in", saved, "-nodes", "-passin", "pass:another")[0] != 0
    assert b"PRIVATE KEY" not in saved.read_bytes()


def test_a_wrong_passphrase_or_another_file_changes_nothing(tarebook, folder, secret, tmp_path):
    authority.make(folder, "garage.local")
    saved = tmp_path / "authority.p12"
    tarebook("authority", "--save", saved, "--passphrase", secret)
    before = mark(folder)
    (tmp_path / "other.txt").write_text("some other passphrase")
    (tmp_path / "notes.txt").write_text("not an authority")
    stranger = ec.generate_private_key(ec.SECP256R1())
    (tmp_path / "plain.p12").write_bytes(
        pkcs12.serialize_key_and_certificates(
            b"x", stranger, None, None, serialization.BestAvailableEncryption(SECRET.encode())
        )
    )
    for file, passphrase in ((saved, "other.txt"), ("notes.txt", secret), ("plain.p12", secret)):
        ended = tarebook("authority", "--take", tmp_path / file, "--passphrase", tmp_path / passphrase)
        assert (ended.code, ended.out) == (1, "")
        assert "Nothing was changed" in ended.err
    assert mark(folder) == before


def test_in_a_terminal_the_passphrase_is_asked_for_twice(tarebook, folder, tmp_path, monkeypatch):
    authority.make(folder, "garage.local")
    typed = [SECRET, SECRET, SECRET, "another slip of the hand", SECRET]
    monkeypatch.setattr(sys.stdin, "isatty", lambda: True, raising=False)
    monkeypatch.setattr("getpass.getpass", lambda _question: typed.pop(0))
    saved = tmp_path / "authority.p12"
    assert tarebook("authority", "--save", saved).code == 0
    ended = tarebook("authority", "--save", tmp_path / "second.p12")
    assert (ended.code, (tmp_path / "second.p12").exists()) == (1, False)
    assert "two passphrases" in ended.err
    assert tarebook("authority", "--take", saved, "--data", tmp_path / "new").code == 0


@pytest.mark.parametrize(("given", "words"), [(None, "--passphrase FILE"), ("short", "at least 12")])
def test_without_a_passphrase_that_is_worth_one_nothing_is_saved(tarebook, folder, tmp_path, given, words):
    authority.make(folder, "garage.local")
    (tmp_path / "secret.txt").write_text(given or "")
    said = ("--passphrase", tmp_path / "secret.txt") if given else ()
    ended = tarebook("authority", "--save", tmp_path / "authority.p12", *said)
    assert (ended.code, ended.out, (tmp_path / "authority.p12").exists()) == (1, "", False)
    assert words in ended.err
