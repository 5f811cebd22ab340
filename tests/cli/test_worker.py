"""The worker that serves all entrances: how it ends, and what it says."""

import logging
import select
import signal
import ssl
import sys

import pytest
from gunicorn.config import Config
from gunicorn.workers.gthread import PollableMethodQueue

from tarebook.cli.worker import Worker, _is_worth_saying


def test_it_ends_at_once_without_an_exception_out_of_nowhere():
    """A signal may interrupt anything, the thread pool with its lock held too; so only a word is left for the loop."""
    worker = Worker.__new__(Worker)
    worker.tpool, worker.alive = None, True
    worker.cfg, worker.method_queue = Config(), PollableMethodQueue()
    worker.method_queue.init()
    worker.handle_quit(signal.SIGQUIT, None)
    assert (worker.alive, worker.cfg.graceful_timeout) == (False, 0)
    woken, _, _ = select.select([worker.method_queue], [], [], 0)
    assert woken == [worker.method_queue]
    worker.method_queue.close()


@pytest.mark.parametrize(
    ("problem", "is_said"),
    [(TimeoutError("timed out"), False), (ConnectionAbortedError(), False), (OSError(28, "No space"), True)],
)
def test_that_somebody_stopped_talking_is_not_worth_a_line(problem, is_said):
    try:
        raise problem
    except OSError:
        record = logging.LogRecord("gunicorn.error", logging.ERROR, "", 0, "x", None, sys.exc_info())
    assert _is_worth_saying(record) == is_said


def test_a_phone_that_does_not_trust_the_server_is_not_worth_a_line_either(capfd):
    worker = Worker.__new__(Worker)
    worker.handle_error(None, None, ("127.0.0.1", 1), ssl.SSLError(1, "[SSL: TLSV1_ALERT_UNKNOWN_CA]"))
    assert capfd.readouterr() == ("", "")
