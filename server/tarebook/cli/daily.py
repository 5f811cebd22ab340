"""The backups that serving makes: a process of its own, so that no phone waits while one is folded again.

It ends when its standard input does, and so with the server, however that ends. A thread watches it: when it dies, or
says nothing for hours, there is another one a minute later.
"""

import os
import select
import subprocess
import sys
import threading

from tarebook.settings import Settings
from tarebook.store.log import note

_SECONDS_TO_FINISH = 5
_AGAIN_AFTER_SECONDS = 60.0
_SILENT_SECONDS = 6 * 3600.0
"""It speaks every ten minutes, but for the time a backup takes."""


class DailyBackups:
    """`tarebook backup --daily`, for as long as the server serves."""

    def __init__(self, settings: Settings) -> None:
        self._settings = settings
        self._process: subprocess.Popen[bytes] | None = None
        self._over = threading.Event()
        self._thread = threading.Thread(target=self._watch, name="daily backups", daemon=True)

    def start(self) -> None:
        self._thread.start()

    def stop(self) -> None:
        """Ends it, and a backup that is under way too; does nothing in a process where it was not started."""
        if not self._thread.is_alive():
            return
        self._over.set()
        if self._process is not None:
            self._process.terminate()
        self._thread.join(_SECONDS_TO_FINISH)
        if self._process is not None:
            self._process.kill()

    def _watch(self) -> None:
        while not self._over.is_set():
            try:
                self._run_once()
            except OSError as problem:  # no memory or no handles for another process, for now
                print(f"tarebook backup: {problem.strerror}", file=sys.stderr, flush=True)
            if not self._over.is_set():
                note(self._settings.data, "backups ended", again_in=_AGAIN_AFTER_SECONDS)
            self._over.wait(_AGAIN_AFTER_SECONDS)

    def _run_once(self) -> None:
        command = [sys.executable, "-m", "tarebook", "backup", "--daily", "--data", str(self._settings.data)]
        # In a session of its own, Ctrl-C reaches it by way of `stop` alone.
        with subprocess.Popen(
            command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, start_new_session=True
        ) as self._process:
            if self._over.is_set():
                self._process.terminate()
            assert self._process.stdout
            while select.select([self._process.stdout], [], [], _SILENT_SECONDS)[0]:
                if not os.read(self._process.stdout.fileno(), 4096):
                    return  # leaving the block waits for its end
            self._process.kill()
