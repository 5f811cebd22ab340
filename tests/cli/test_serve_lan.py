"""`tarebook serve --lan` as a process: what phones get, through which entrance, with which certificate."""

import os
import re
import signal
import socket
import ssl
import subprocess
from ipaddress import ip_address

import pytest

from tarebook.devices import authority, certificates
from tests.browser.serving import free_port
from tests.cli.phone_side import NAME, Phone, serving_phones
from tests.cli.process import status_of
from tests.devices.openssl import forged


@pytest.fixture(scope="module")
def served(tmp_path_factory):
    """(port for phones, what it printed, folder) of one server for the tests that only look."""
    folder = tmp_path_factory.mktemp("lan") / "garage"
    with serving_phones(folder) as (_, said, port):
        yield port, said, folder


def authority_file(folder):
    return folder / "certificates" / "authority.pem"


def phone(served, **more):
    return Phone(served[0], authority_file(served[2]), **more)


def door_of(said):
    return re.search(r"open (http://127\.0\.0\.1:\d+)/ on it", said)[1]


def home_of(said):
    return re.search(r"(http://localhost:\d+)/", said)[1]


def test_a_phone_that_trusts_the_authority_gets_app_and_api_on_one_address(served):
    with phone(served) as one:
        assert one.get("/api/v1/health")[0] == 200
        assert one.get("/api/v1/report")[0] == 401
        assert one.shown.issuer == authority.load_certificate(served[2] / "certificates").subject


def test_a_phone_that_does_not_trust_it_comes_no_further(served):
    with pytest.raises(ssl.SSLCertVerificationError):
        Phone(served[0], None)


def test_its_words_say_where_what_it_means_and_how_to_remove_it(served):
    port, said, folder = served
    mark = authority.fingerprint(authority.load_certificate(folder / "certificates"))
    assert f"Phones find the garage at https://tarebook.local:{port} — the address is permanent" in said
    assert f"Its fingerprint (SHA-256) begins {mark[:23]}." in said
    assert "about nothing else" in said
    assert "how to remove it again: tarebook authority" in said


@pytest.mark.parametrize("host", ["localhost", "127.0.0.1", "192.168.1.20", "example.org"])
def test_phones_are_answered_under_the_permanent_name_alone(served, host):
    """Any other would begin another, empty app; and nobody on the network may pass for this computer's browser."""
    with phone(served) as one:
        assert one.get("/", host)[0] == 421
        assert one.get("/api/v1/health", host)[0] == 421


def test_whether_a_browser_trusts_it_can_be_asked_under_any_host(served):
    with phone(served) as one:
        status, headers, body = one.get("/trusted", "192.168.1.20")
    assert (status, body, headers["Cross-Origin-Resource-Policy"]) == (204, b"", "cross-origin")


def test_the_way_in_for_this_computer_stays_as_it_was(served):
    home = home_of(served[1])
    assert status_of(f"{home}/api/v1/health")[0] == 200
    assert status_of(f"{home}/trusted")[0] == 404
    assert status_of(f"{home}/api/v1/health", Host="example.org")[0] == 421


def test_the_door_gives_the_certificate_and_nothing_of_the_garage(served):
    door = door_of(served[1])
    _, pem = status_of(f"{door}/tarebook-authority.pem")
    assert pem == authority_file(served[2]).read_bytes()
    assert [status_of(f"{door}{path}")[0] for path in ("/api/v1/health", "/sw.js", "/trusted")] == [404] * 3


def test_plain_http_to_the_port_for_phones_is_sent_to_https(served):
    with socket.create_connection(("127.0.0.1", served[0]), timeout=30) as plain:
        plain.sendall(f"GET /anything HTTP/1.1\r\nHost: {NAME}\r\n\r\n".encode())
        answer = plain.makefile("rb").read().decode()
    assert answer.startswith("HTTP/1.1 308 ")
    assert f"\r\nLocation: https://tarebook.local:{served[0]}/\r\n" in answer


def test_openssl_sees_tls_1_2_and_1_3_and_nothing_older(served):
    """RFC 8996."""
    spoken = {}
    for version in ("tls1_1", "tls1_2", "tls1_3"):
        asked = ["openssl", "s_client", "-connect", f"127.0.0.1:{served[0]}", f"-{version}", "-servername", NAME]
        trusting = ["-CAfile", authority_file(served[2]), "-verify_return_error", "-verify_hostname", NAME]
        spoken[version] = subprocess.run([*asked, *trusting], stdin=subprocess.DEVNULL, capture_output=True).returncode
    assert spoken == {"tls1_1": 1, "tls1_2": 0, "tls1_3": 0}


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP], ids=["Ctrl-C", "TERM", "terminal"])
def test_it_stops_cleanly_and_silently_after_phones_that_hung_up(tmp_path, number):
    with serving_phones(tmp_path / "garage") as (process, _, port):
        for _ in range(3):
            with pytest.raises(ssl.SSLCertVerificationError):
                Phone(port, None)
        socket.create_connection(("127.0.0.1", port)).close()
        process.send_signal(number)
        _, err = process.communicate(timeout=30)
        assert (process.returncode, err) == (0, "")


def test_the_second_start_keeps_name_port_and_authority(tmp_path):
    with serving_phones(tmp_path / "garage") as (_, first, port):
        mark = authority_file(tmp_path / "garage").read_bytes()
    with serving_phones(tmp_path / "garage", port=port) as (_, second, _):
        assert authority_file(tmp_path / "garage").read_bytes() == mark
    assert ["A certificate authority was made" in words for words in (first, second)] == [True, False]


# Certificates that change while it runs.


@pytest.fixture
def own(tmp_path):
    """Links to a pair of the user's own, under an authority of their own; and how to put another in its place."""
    held = authority.make(tmp_path / "theirs", NAME)

    def place(folder):
        (tmp_path / folder).mkdir()
        file = forged(held, [NAME], tmp_path / folder)
        for link in (tmp_path / "cert.pem", tmp_path / "key.pem"):
            link.with_suffix(".next").symlink_to(file)
            os.replace(link.with_suffix(".next"), link)
        return certificates.read(certificates.Pair(file, file)).serial_number

    return tmp_path, place


def own_options(folder):
    return "--cert", folder / "cert.pem", "--key", folder / "key.pem"


def test_a_renewed_certificate_of_the_users_own_is_used_without_a_restart(own):
    folder, place = own
    first = place("first")
    trusts = folder / "theirs" / "authority.pem"
    with serving_phones(folder / "garage", *own_options(folder)) as (process, said, port):
        with Phone(port, trusts) as early:
            second = place("second")
            with Phone(port, trusts) as late:
                assert (early.shown.serial_number, late.shown.serial_number) == (first, second)
                assert late.get("/api/v1/health")[0] == 200
            assert early.get("/api/v1/health")[0] == 200, "a connection that was open goes on"
        assert process.poll() is None
    assert f"The certificate is {folder / 'cert.pem'}; when it is renewed" in said
    assert not (folder / "garage" / "certificates").exists(), "no authority is made beside it"


def test_a_key_that_does_not_fit_is_told_once_and_the_old_pair_goes_on(own):
    folder, place = own
    first = place("first")
    other = authority.make(folder / "other", NAME)
    with serving_phones(folder / "garage", *own_options(folder)) as (process, _, port):
        os.replace(forged(other, [NAME], folder), folder / "key.pem")
        shown = []
        for _ in range(2):
            with Phone(port, folder / "theirs" / "authority.pem") as one:
                shown.append(one.shown.serial_number)
        process.send_signal(signal.SIGINT)
        _, err = process.communicate(timeout=30)
    assert shown == [first, first]
    assert err.count("does not belong to the certificate") == err.count("\n") == 1


def test_a_certificate_made_for_other_addresses_is_used_without_a_restart(tmp_path):
    with serving_phones(tmp_path / "garage") as (_, _, port):
        folder = tmp_path / "garage" / "certificates"
        with Phone(port, folder / "authority.pem") as one:
            before = one.shown
        certificates.renew(folder, authority.load(folder), NAME, [ip_address("127.0.0.1"), ip_address("10.9.8.7")])
        with Phone(port, folder / "authority.pem") as one:
            assert one.shown != before
            assert certificates.names_in(one.shown) == [NAME, "127.0.0.1", "10.9.8.7"]


def test_behind_a_reverse_proxy_only_the_name_is_added(tmp_path):
    port = free_port()
    options = ("--name", "garage.example.net", "--proxied")
    with serving_phones(tmp_path / "garage", *options, port=port) as (_, said, _):
        home = home_of(said)
        assert status_of(f"{home}/api/v1/health", Host="garage.example.net")[0] == 200
        assert status_of(f"{home}/api/v1/health", Host="other.example.net")[0] == 421
        with pytest.raises(ConnectionRefusedError):
            socket.create_connection(("127.0.0.1", port))
    assert f"https://garage.example.net:{port}" in said
    assert "Your router or your DNS has to lead garage.example.net here" in said
    assert not (tmp_path / "garage" / "certificates").exists()
