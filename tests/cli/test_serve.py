"""`tarebook serve` as a process: it answers, refuses in a sentence, and leaves nothing behind."""

import json
import re
import signal
from http.client import HTTPConnection

import pytest

from tarebook.settings import Settings
from tarebook.store.migrate import prepare
from tests.cli.process import run, serving, status_of

ANYWHERE = ("--port", 0, "--no-browser")


@pytest.fixture
def data(tmp_path):
    return tmp_path / "garage"


@pytest.fixture(scope="module")
def served(tmp_path_factory):
    """(port, what it printed, folder) of one server for the tests that only look."""
    folder = tmp_path_factory.mktemp("served") / "garage"
    with serving(*ANYWHERE, "--data", folder) as (_, said):
        yield port_in(said), said, folder


def found(pattern, text):
    match = re.search(pattern, text)
    assert match, text
    return match[1]


def port_in(said):
    return int(found(r"http://localhost:(\d+)/", said))


def stopped(process, number):
    """(exit code, what was said on stderr)"""
    process.send_signal(number)
    _, err = process.communicate(timeout=30)
    return process.returncode, err


def pair(port, code):
    """(status, answer) of pairing with a code, or in the demo with None."""
    connection = HTTPConnection("localhost", port, timeout=30)
    body = json.dumps({"name": "test", "code": code})
    connection.request("POST", "/api/v1/pair", body, {"Content-Type": "application/json"})
    answer = connection.getresponse()
    return answer.status, json.loads(answer.read())


def test_the_link_it_prints_pairs_once(served):
    port, said, _ = served
    code = found(r"#pair=([\w-]+)", said)
    assert [pair(port, code)[0] for _ in range(2)] == [200, 403]


def test_pair_prints_a_link_for_a_server_that_runs(served):
    port, _, folder = served
    link = run("pair", "--port", port, "--data", folder).stdout
    assert re.fullmatch(rf"http://localhost:{port}/#pair=[\w-]+\n", link)
    assert pair(port, link.strip().split("=")[1])[0] == 200


def test_nothing_but_health_and_the_app_answers_without_a_token(served):
    assert status_of(f"http://localhost:{served[0]}/api/v1/health")[0] == 200
    assert status_of(f"http://localhost:{served[0]}/api/v1/report")[0] == 401


def test_a_second_server_on_the_same_folder_is_one_sentence(served, tarebook):
    refused = tarebook("serve", *ANYWHERE, "--data", served[2])
    assert refused.code == 1
    assert refused.err == (
        f"tarebook: Another Tarebook is already serving the folder {served[2]}. "
        "Stop it, or choose another folder with --data.\n"
    )


def test_a_taken_port_is_one_sentence(served, tarebook, data):
    refused = tarebook("serve", "--port", served[0], "--no-browser", "--data", data)
    assert refused.code == 1
    assert refused.err.startswith(f"tarebook: Port {served[0]} is taken by another program.")


def test_a_folder_that_cannot_be_written_is_one_sentence(tarebook, tmp_path):
    (tmp_path / "file").write_text("in the way")
    refused = tarebook("serve", *ANYWHERE, "--data", tmp_path / "file" / "garage")
    assert (refused.code, refused.err.count("\n")) == (1, 1)
    assert "cannot be written to" in refused.err


def test_a_database_newer_than_the_program_is_one_sentence(tarebook, data):
    database = prepare(Settings(data=data))
    with database.write() as session:
        session.connection().exec_driver_sql("UPDATE alembic_version SET version_num = 'from_the_future'")
    database.close()
    refused = tarebook("serve", *ANYWHERE, "--data", data)
    assert refused.code == 1
    assert refused.err.startswith("tarebook: The database was made by a newer Tarebook.")


def test_a_file_that_is_no_database_is_one_sentence_and_stays_as_it_was(tarebook, data):
    data.mkdir()
    (data / "tarebook.sqlite3").write_bytes(b"something else entirely" * 100)
    refused = tarebook("serve", *ANYWHERE, "--data", data)
    assert (refused.code, refused.err.count("\n")) == (1, 1)
    assert (data / "tarebook.sqlite3").read_bytes().startswith(b"something else")


@pytest.mark.parametrize("host", ["0.0.0.0", "192.168.1.5", "example.org", "::"])
def test_it_listens_to_this_computer_only(tarebook, data, host):
    refused = tarebook("serve", "--host", host, "--no-browser", "--data", data)
    assert refused.code == 1
    assert refused.err.startswith(f"tarebook: Plain HTTP is for this computer only, so not on {host}.")
    assert "tarebook serve --lan" in refused.err


def test_an_unusable_setting_is_one_sentence(tarebook, monkeypatch):
    monkeypatch.setenv("TAREBOOK_THREADS", "many")
    refused = tarebook("serve", *ANYWHERE)
    assert refused.code == 1
    assert refused.err.startswith("tarebook: The setting TAREBOOK_THREADS is many")


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP], ids=["Ctrl-C", "TERM", "terminal"])
def test_it_stops_cleanly_and_writes_nothing_into_the_home_folder(data, tmp_path, number):
    home = tmp_path / "home"
    home.mkdir()
    with serving(*ANYWHERE, "--data", data, HOME=str(home)) as (process, _):
        assert stopped(process, number) == (0, "")
    assert list(home.iterdir()) == []


SLOW_TO_BEGIN = """
import time
from gunicorn.workers.base import Worker

begin = Worker.init_process

def late(self):
    time.sleep(1)
    begin(self)

Worker.init_process = late
"""


def test_it_stops_at_once_while_its_worker_still_begins(data, tmp_path):
    (tmp_path / "sitecustomize.py").write_text(SLOW_TO_BEGIN)
    with serving(*ANYWHERE, "--data", data, PYTHONPATH=str(tmp_path)) as (process, _):
        assert stopped(process, signal.SIGINT) == (0, "")


def test_a_killed_server_leaves_no_lock(data):
    with serving(*ANYWHERE, "--data", data) as (process, _):
        process.kill()
        process.wait()
    with serving(*ANYWHERE, "--data", data) as (_, said):
        assert status_of(f"http://localhost:{port_in(said)}/api/v1/health")[0] == 200


def test_the_demo_pairs_by_itself_and_is_thrown_away(tmp_path):
    folders = {"TMPDIR": str(tmp_path), "TAREBOOK_DATA": str(tmp_path / "own")}
    with serving("--demo", *ANYWHERE, **folders) as (process, said):
        token = pair(port_in(said), None)[1]["token"]
        _, text = status_of(f"http://localhost:{port_in(said)}/api/v1/report", Authorization=f"Bearer {token}")
        assert "3.1 ± 0.8 kg more is in the car than written down" in text.decode()
        assert list(tmp_path.glob("tarebook-demo-*"))
        assert stopped(process, signal.SIGINT) == (0, "")
    assert list(tmp_path.iterdir()) == []


def test_a_variable_left_set_makes_no_demo_of_a_real_garage(data):
    with serving(*ANYWHERE, "--data", data, TAREBOOK_DEMO="1") as (_, said):
        assert f"Your garage is at http://localhost:{port_in(said)}/" in said
        assert pair(port_in(said), None)[0] == 403


def test_the_browser_opens_the_link_when_there_is_a_screen(data, tmp_path):
    opened = tmp_path / "opened"
    browser = tmp_path / "browser"
    browser.write_text(f'#!/bin/sh\necho "$1" > {opened}\n')
    browser.chmod(0o755)
    with serving("--port", 0, "--data", data, DISPLAY=":0", BROWSER=f"{browser} %s") as (process, said):
        stopped(process, signal.SIGINT)
    assert "#pair=" in said
    assert opened.read_text().strip() in said
