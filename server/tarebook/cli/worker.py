"""gunicorn's worker process for `serve`: one loop that waits for everybody, and threads that only ever answer.

gunicorn's own threaded worker gives a thread to each reader, so as many silent strangers as there are threads stop it.
Here each connection is a `Visit` in the loop, wrapped in TLS or not by the port it came to. Home has threads of its
own. Who comes once too often, or last into a full house, makes place by the one who has kept it waiting longest.
"""

from __future__ import annotations

import asyncio
import contextlib
import os
import signal
import socket
from collections.abc import Callable
from concurrent.futures import Executor, ThreadPoolExecutor
from functools import partial
from ipaddress import ip_address
from types import FrameType
from typing import TYPE_CHECKING, Any

from gunicorn.workers.base import Worker as Process

from tarebook.cli.visit import Visit
from tarebook.devices.tries import source_of
from tarebook.network import is_neighbour

if TYPE_CHECKING:
    from tarebook.cli.entrance import Entrance

SECONDS_TO_FINISH = 5  # for requests under way when it is stopped
HOME_THREADS = 4
# Connections at once: by one entrance, and of those by one caller. A browser opens six.
MOST, MOST_EACH = 256, 32


class Worker(Process):
    def init_process(self) -> None:
        self._entrances: dict[int, Entrance] = {entrance.port: entrance for entrance in self.app.entrances}
        self._has_refused = False
        self._visits: dict[Visit, asyncio.Task[None]] = {}
        self._home, self._others = ThreadPoolExecutor(HOME_THREADS), ThreadPoolExecutor(self.cfg.threads)
        # Here alone: the parent has to wait for what is tidied up afterwards, too.
        self.cfg.set("graceful_timeout", SECONDS_TO_FINISH)
        super().init_process()

    def threads(self, at_home: bool) -> Executor:
        return self._home if at_home else self._others

    def handle_quit(self, sig: int, frame: FrameType | None) -> None:
        """Ends without waiting for requests. gunicorn's own leaves by an exception from within the signal, which what
        it interrupts may swallow or never live to see."""
        self.cfg.set("graceful_timeout", 0)
        self.handle_exit(sig, frame)

    def run(self) -> None:
        asyncio.run(self._serve())
        for pool in (self._home, self._others):
            pool.shutdown(wait=False, cancel_futures=True)

    async def _serve(self) -> None:
        ended = asyncio.Event()
        self._heed_signals(ended)
        listening = [asyncio.create_task(self._listen(listener.sock)) for listener in self.sockets]
        while self.alive and self.ppid == os.getppid():
            self.notify()
            with contextlib.suppress(TimeoutError):
                await asyncio.wait_for(ended.wait(), 1)
        for task in listening:
            task.cancel()
        await self._finish()

    def _heed_signals(self, ended: asyncio.Event) -> None:
        def end(handler: Callable[[int, None], None], number: int) -> None:
            handler(number, None)
            ended.set()

        ends = {signal.SIGTERM: self.handle_exit, signal.SIGINT: self.handle_quit, signal.SIGQUIT: self.handle_quit}
        for number, handler in ends.items():
            asyncio.get_running_loop().add_signal_handler(number, end, handler, number)

    async def _listen(self, listener: socket.socket) -> None:
        loop = asyncio.get_running_loop()
        listener.setblocking(False)
        entrance = self._entrances[listener.getsockname()[1]]
        while True:
            try:
                client, address = await loop.sock_accept(listener)
            except ConnectionError:
                continue
            except OSError as problem:
                self.log.warning("no further connection can be taken: %s", problem)
                await asyncio.sleep(1)
                continue
            if not is_neighbour(ip_address(address[0].partition("%")[0])):
                client.close()
                self._refuse_once(address[0])
                continue
            self._make_place(entrance, address)
            visit = Visit(self, entrance, client, address)
            task = self._visits[visit] = asyncio.create_task(visit.run())
            task.add_done_callback(partial(self._over, visit))

    def _refuse_once(self, address: str) -> None:
        """Said of the first alone: whoever scans the internet comes often."""
        if not self._has_refused:
            self._has_refused = True
            self.log.warning("%s is not in this network and is not answered, nor is any other from outside", address)

    def _over(self, visit: Visit, task: asyncio.Task[None]) -> None:
        del self._visits[visit]
        if not task.cancelled() and (problem := task.exception()):
            self.log.error("a connection ended by a fault", exc_info=problem)

    def _make_place(self, entrance: Entrance, address: Any) -> None:
        """The proxy of this computer speaks for many, from a local address and to the home port."""
        here = [visit for visit in self._visits if visit.entrance is entrance]
        same = [visit for visit in here if source_of(visit.address[0]) == source_of(address[0])]
        for visits, most in ((here, MOST), (same, MOST if entrance.kind == "home" else MOST_EACH)):
            if len(visits) >= most:
                longest = next((visit for visit in visits if not visit.is_busy), visits[0])
                self._visits[longest].cancel()

    async def _finish(self) -> None:
        """Lets what is being answered be answered, within the time there is for that."""
        for visit, task in self._visits.items():
            if not visit.is_busy:
                task.cancel()
        if self._visits and self.cfg.graceful_timeout:
            await asyncio.wait(list(self._visits.values()), timeout=self.cfg.graceful_timeout)
