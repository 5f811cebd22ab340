"""One connection: its handshake, and each of its requests read whole, answered, and the answer sent.

The loop does all the waiting: a thread is taken for the answer alone, once the last byte of its request is here, and is
free again before the first byte of the answer leaves. Each of these has an end of its own, however busy the other
side keeps it.
"""

from __future__ import annotations

import asyncio
import contextlib
import io
import socket
import threading
from dataclasses import dataclass, field
from tempfile import SpooledTemporaryFile
from typing import IO, TYPE_CHECKING, Any, Protocol

from gunicorn.http import wsgi
from gunicorn.http.errors import LimitRequestHeaders, LimitRequestLine, ParseException
from gunicorn.http.message import Request
from gunicorn.http.unreader import IterUnreader

from tarebook.api.access import MOST_BYTES, PROXY_HEADERS
from tarebook.errors import TarebookError

if TYPE_CHECKING:
    from concurrent.futures import Executor

    from _typeshed.wsgi import WSGIApplication
    from gunicorn.config import Config

    from tarebook.cli.entrance import Entrance

# Seconds in all, not of silence. A head may be waited for as long as a browser keeps a connection for its next one.
TO_SHAKE_HANDS = 10
FOR_A_HEAD = 10
FOR_A_BODY = 60
TO_TAKE_AN_ANSWER = 60
_TO_HANG_UP = 2

HEAD_BYTES = 32 * 1024
_AT_ONCE = 64 * 1024
_IN_MEMORY = 256 * 1024  # of a body; more goes to a file
_HANDSHAKE = b"\x16"  # how every TLS connection begins (RFC 8446, 5.1)
_UNREAD = b"GET / HTTP/1.1\r\nHost: localhost\r\nAccept: text/html\r\nConnection: close\r\n\r\n"
_UNREAD_API = _UNREAD.replace(b"GET /", b"GET /api/")
_PASSED_ON = {name.upper() for name in PROXY_HEADERS}


class House(Protocol):
    """The worker, as its visits see it."""

    cfg: Config
    wsgi: WSGIApplication
    alive: bool

    def threads(self, at_home: bool) -> Executor: ...

    def handle_error(self, req: Any, client: Any, addr: Any, exc: BaseException) -> None: ...


@dataclass
class _Answer:
    """What gunicorn takes for a socket: it keeps what would be sent."""

    parts: list[bytes] = field(default_factory=list)
    ends: bool = False

    def sendall(self, data: bytes) -> None:
        self.parts.append(data)

    def gettimeout(self) -> float:
        return 0.0


class _Line(asyncio.StreamReaderProtocol):
    """Notes when the other side has hung up, for an answer that takes long."""

    def __init__(self, reader: asyncio.StreamReader, gone: threading.Event) -> None:
        super().__init__(reader)
        self._gone = gone

    def eof_received(self) -> bool | None:
        self._gone.set()
        return super().eof_received()

    def connection_lost(self, exc: Exception | None) -> None:
        self._gone.set()
        super().connection_lost(exc)


def _broken() -> bytes:
    """For when the application could not even say that it met a fault."""
    said = TarebookError("broken")
    text = f"{said.sentence} {said.do}\n".encode()
    head = f"Content-Type: text/plain; charset=utf-8\r\nContent-Length: {len(text)}\r\nConnection: close"
    return f"HTTP/1.1 500 Internal Server Error\r\n{head}\r\n\r\n".encode("ascii") + text


class Visit:
    """`is_busy`: a whole request has come, and its answer has not left."""

    def __init__(self, house: House, entrance: Entrance, client: socket.socket, address: Any) -> None:
        self.entrance, self.address = entrance, address
        self.is_busy = False
        self._house, self._socket, self._server = house, client, client.getsockname()
        self._gone = threading.Event()

    async def run(self) -> None:
        """To its end, which is a deadline, the last answer, or that the other side hangs up."""
        with contextlib.suppress(OSError, EOFError):
            if self.entrance.tls and not await self._begins_well():
                return
            reader, writer = await self._opened()
            try:
                while await self._one_request(reader, writer):
                    pass
                await self._hang_up(reader, writer)
            finally:
                writer.transport.abort()

    async def _begins_well(self) -> bool:
        """Whether TLS is spoken. From then on the socket is the connection's own to close."""
        with contextlib.ExitStack() as ours:
            ours.callback(self._socket.close)
            async with asyncio.timeout(TO_SHAKE_HANDS):
                if not await self._speaks_tls():
                    await self._point_to_https()
                    return False
            ours.pop_all()
        return True

    async def _speaks_tls(self) -> bool:
        """Waits for the first byte and leaves it there."""
        loop, is_here = asyncio.get_running_loop(), asyncio.Event()
        loop.add_reader(self._socket, is_here.set)
        try:
            await is_here.wait()
        finally:
            loop.remove_reader(self._socket)
        return self._socket.recv(1, socket.MSG_PEEK) in (_HANDSHAKE, b"")

    async def _point_to_https(self) -> None:
        """For whoever typed the name without https://."""
        answer = f"HTTP/1.1 308 Permanent Redirect\r\nLocation: {self.entrance.address}/\r\nContent-Length: 0\r\n"
        loop = asyncio.get_running_loop()
        await loop.sock_sendall(self._socket, f"{answer}Connection: close\r\n\r\n".encode("ascii"))
        self._socket.shutdown(socket.SHUT_WR)
        while await loop.sock_recv(self._socket, _AT_ONCE):
            pass

    async def _opened(self) -> tuple[asyncio.StreamReader, asyncio.StreamWriter]:
        loop, reader = asyncio.get_running_loop(), asyncio.StreamReader(HEAD_BYTES)
        tls = self.entrance.tls
        transport, line = await loop.connect_accepted_socket(
            lambda: _Line(reader, self._gone),
            self._socket,
            ssl=tls.context() if tls else None,
            ssl_handshake_timeout=TO_SHAKE_HANDS if tls else None,
            ssl_shutdown_timeout=_TO_HANG_UP if tls else None,
        )
        transport.set_write_buffer_limits(0)  # so that what is sent is taken before the next request is read
        return reader, asyncio.StreamWriter(transport, line, reader, loop)

    async def _one_request(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> bool:
        """Reads and answers one request; whether another may follow."""
        answer = _Answer()
        try:
            async with asyncio.timeout(FOR_A_HEAD):
                head = await reader.readuntil(b"\r\n\r\n")
            request = self._read(head)
        except asyncio.LimitOverrunError:
            await self._refuse("head_too_large", await reader.read(HEAD_BYTES), answer)
        except (LimitRequestLine, LimitRequestHeaders):
            await self._refuse("head_too_large", head, answer)
        except ParseException:
            await self._refuse("bad_request", head, answer)
        else:
            await self._answer(request, answer, reader, writer)
        writer.write(b"".join(answer.parts))
        async with asyncio.timeout(TO_TAKE_AN_ANSWER):
            await writer.drain()
        self.is_busy = False
        return not answer.ends

    def _read(self, head: bytes) -> Request:
        return Request(self._house.cfg, IterUnreader([head]), self.address)

    async def _refuse(self, code: str, head: bytes, answer: _Answer) -> None:
        """Has the application say why, as if it had been asked for nothing: so it sounds and looks as all it says."""
        self.is_busy = True
        line = head.partition(b"\r\n")[0]
        instead = _UNREAD_API if b"/api/" in line else _UNREAD
        request = self._read(instead)
        await self._in_thread(self._house.threads(False), request, io.BytesIO(), answer, code)

    async def _in_thread(self, pool: Executor, *asked: Any) -> None:
        await asyncio.get_running_loop().run_in_executor(pool, self._ask, *asked)

    async def _answer(
        self, request: Request, answer: _Answer, reader: asyncio.StreamReader, writer: asyncio.StreamWriter
    ) -> None:
        headers = dict(request.headers)
        length = None if "TRANSFER-ENCODING" in headers else int(headers.get("CONTENT-LENGTH", "0"))
        with SpooledTemporaryFile(_IN_MEMORY) as body:
            if length is None or length > MOST_BYTES:
                request.force_close()  # the application refuses it unread
            elif length:
                await self._read_body(request, length, body, reader, writer)
            self.is_busy = True
            request._expected_100_continue = False  # said, or never to be
            pool = self._house.threads(self.entrance.kind == "home" and not _PASSED_ON & headers.keys())
            await self._in_thread(pool, request, body, answer)

    async def _read_body(
        self, request: Request, length: int, body: IO[bytes], reader: asyncio.StreamReader, writer: asyncio.StreamWriter
    ) -> None:
        if request._expected_100_continue:
            writer.write(b"HTTP/1.1 100 Continue\r\n\r\n")
        async with asyncio.timeout(FOR_A_BODY):
            while left := length - body.tell():
                part = await reader.read(min(left, _AT_ONCE))
                if not part:
                    raise EOFError
                body.write(part)
        body.seek(0)

    def _ask(self, request: Request, body: IO[bytes], answer: _Answer, unreadable: str = "") -> None:
        """In a thread: what the application answers. `unreadable`: the code of why this is no request of theirs."""
        try:
            response, environ = wsgi.create(request, answer, self.address, self._server, self._house.cfg)
            environ |= {"wsgi.input": body, "wsgi.multithread": True, "tarebook.gone": self._gone}
            environ["tarebook.unreadable"] = unreadable
            if unreadable or not self._house.alive:
                response.force_close()
            said = self._house.wsgi(environ, response.start_response)
            try:
                for part in said:
                    response.write(part)
                response.close()
            finally:
                if hasattr(said, "close"):
                    said.close()
            answer.ends = response.should_close()
        except Exception as problem:
            self._house.handle_error(request, _Answer(), self.address, problem)  # it writes that down
            answer.parts, answer.ends = [_broken()], True

    async def _hang_up(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        """Hears the other side out for a moment: hanging up on unread bytes would lose it the answer."""
        async with asyncio.timeout(_TO_HANG_UP):
            if not writer.can_write_eof():  # TLS says its own goodbye
                writer.close()
                return await writer.wait_closed()
            writer.write_eof()
            while await reader.read(_AT_ONCE):
                pass
