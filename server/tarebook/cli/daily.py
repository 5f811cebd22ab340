"""The backups that serving makes: a process of its own, so that no phone waits while one is folded again.

It ends when its standard input does, and so with the server, however that ends.
"""

import subprocess
import sys

from tarebook.settings import Settings

_SECONDS_TO_FINISH = 5


class DailyBackups:
    """`tarebook backup --daily`, for as long as the server serves."""

    def __init__(self, settings: Settings) -> None:
        self._data = str(settings.data)
        self._process: subprocess.Popen[bytes] | None = None

    def start(self) -> None:
        command = [sys.executable, "-m", "tarebook", "backup", "--daily", "--data", self._data]
        # In a session of its own, Ctrl-C reaches it by way of `stop` alone.
        self._process = subprocess.Popen(
            command, stdin=subprocess.PIPE, stdout=subprocess.DEVNULL, start_new_session=True
        )

    def stop(self) -> None:
        """Ends it, and a backup that is under way too; does nothing in a process where it was not started."""
        if self._process is None:
            return
        try:
            self._process.terminate()
            self._process.wait(_SECONDS_TO_FINISH)
        except subprocess.TimeoutExpired:
            self._process.kill()
