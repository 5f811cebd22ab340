"""What is looked after while phones are served."""

import threading
from ipaddress import ip_address

import pytest

from tarebook.devices import authority
from tarebook.devices.certificates import SERVER, names_in, own_pair, read
from tarebook.devices.keeper import Keeper
from tarebook.devices.origin import Origin

NAME = "tarebook.local"
FIRST, SECOND = ip_address("192.168.1.20"), ip_address("192.168.1.21")


class Spoken:
    """Stands in for the network: notes what was announced."""

    def __init__(self):
        self.told: list[object] = []
        self.is_closed = False

    def tell(self, addresses):
        self.told.append(list(addresses))
        return f"announced {len(self.told)}"

    def close(self):
        self.is_closed = True


@pytest.fixture
def house(tmp_path):
    """(keeper, the addresses it finds, what it said, what was announced)"""
    authority.make(tmp_path, NAME)
    addresses, spoken = [FIRST], Spoken()
    said: list[str] = []
    return Keeper(Origin(NAME, 8443), tmp_path, spoken, lambda: list(addresses), said.append), addresses, said, spoken


def names(folder):
    return names_in(read(own_pair(folder)))


def test_the_first_look_makes_a_certificate_and_announces(house, tmp_path):
    keeper, _, said, spoken = house
    keeper.look()
    assert names(tmp_path) == [NAME, str(FIRST)]
    assert spoken.told == [[FIRST]]
    assert said == ["A new certificate was made for phones: there is none that can be used.", "announced 1"]


def test_nothing_new_is_neither_made_nor_said(house, tmp_path):
    keeper, _, said, spoken = house
    keeper.look()
    before, count = (tmp_path / SERVER).read_bytes(), len(said)
    keeper.look()
    assert ((tmp_path / SERVER).read_bytes(), len(said), len(spoken.told)) == (before, count, 1)


def test_a_changed_address_gets_a_certificate_and_an_announcement(house, tmp_path):
    keeper, addresses, said, spoken = house
    keeper.look()
    addresses[:] = [SECOND]
    keeper.look()
    assert names(tmp_path) == [NAME, str(SECOND)]
    assert spoken.told == [[FIRST], [SECOND]]
    assert "A new certificate was made for phones: this computer's addresses have changed." in said


def test_between_networks_everything_stays_as_it_was(house, tmp_path):
    keeper, addresses, _, spoken = house
    keeper.look()
    addresses.clear()
    keeper.look()
    assert names(tmp_path) == [NAME, str(FIRST)]
    assert spoken.told == [[FIRST]]


def test_a_new_authority_signs_a_new_certificate(house, tmp_path):
    keeper, _, said, _ = house
    keeper.look()
    held = authority.make(tmp_path, NAME)
    keeper.look()
    read(own_pair(tmp_path)).verify_directly_issued_by(held.certificate)
    assert said[-1] == "A new certificate was made for phones: there is another authority."


def test_a_trouble_that_lasts_is_said_once(house, tmp_path):
    keeper, _, said, _ = house
    keeper.look()
    (tmp_path / "authority-key.pem").chmod(0o644)
    for _ in range(3):
        keeper.look()
    assert len([line for line in said if "can be read by others" in line]) == 1


def test_with_a_certificate_of_the_users_own_none_is_made(tmp_path):
    spoken = Spoken()
    Keeper(Origin(NAME, 8443), None, spoken, lambda: [FIRST], print).look()
    assert list(tmp_path.iterdir()) == []
    assert spoken.told == [[FIRST]]


def test_it_looks_by_itself_until_it_is_stopped(house):
    keeper, _, _, spoken = house
    looked = threading.Event()

    def tell(_addresses):
        looked.set()
        return "announced"

    spoken.tell = tell
    keeper.start()
    assert looked.wait(20)
    keeper.stop()
    assert spoken.is_closed


def test_where_it_was_not_started_stopping_does_nothing(house):
    keeper, _, _, spoken = house
    keeper.stop()
    assert not spoken.is_closed
