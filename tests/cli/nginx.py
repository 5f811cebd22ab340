"""The reverse proxy of the README, run for real: its block word for word, but for ports, files and a log of its own."""

import re
import shutil
import socket
import ssl
import subprocess
import time
from contextlib import contextmanager
from dataclasses import dataclass
from http.client import HTTPSConnection
from pathlib import Path

from tarebook.devices import authority
from tests.browser.serving import free_port
from tests.cli.phone_side import serving_phones
from tests.devices.openssl import forged

ROOT = Path(__file__).parents[2]
FOUND = [path for path in (shutil.which("nginx"),) if path]
NAME = "garage.example.net"
SHOWN = re.search(r"^server \{\n.*?^\}\n", (ROOT / "README.md").read_text(encoding="utf-8"), re.MULTILINE | re.DOTALL)
AROUND = """
daemon off; master_process off; pid {folder}/pid; error_log stderr crit;
events {{ worker_connections 512; }}
http {{
    access_log off; client_body_temp_path {folder}/body; proxy_temp_path {folder}/proxy;
    fastcgi_temp_path {folder}/f; uwsgi_temp_path {folder}/u; scgi_temp_path {folder}/s;
    {server}
}}
"""


@dataclass(frozen=True)
class House:
    """A server behind nginx. `public`: the proxy's port; `trusts`: the file of its certificate's authority."""

    process: subprocess.Popen[str]
    public: int
    home: int
    trusts: Path

    def through(self, address):
        """A connection to the proxy, from an address."""
        return _Through(self, address)


class _Through(HTTPSConnection):
    def __init__(self, house, address):
        super().__init__(NAME, house.public, timeout=30)
        self._trusts, self._address = ssl.create_default_context(cafile=str(house.trusts)), address

    def connect(self):
        plain = socket.create_connection(("127.0.0.1", self.port), timeout=30, source_address=(self._address, 0))
        self.sock = self._trusts.wrap_socket(plain, server_hostname=NAME)


@contextmanager
def proxied(folder):
    """A server on `folder/garage`, behind nginx."""
    folder.mkdir(exist_ok=True)
    public = free_port()
    with serving_phones(folder / "garage", "--name", NAME, "--proxied", port=public) as (serving, said, _):
        home = int(re.search(r"http://localhost:(\d+)/", said)[1])
        held = authority.make(folder / "theirs", NAME)
        pair = str(forged(held, [NAME], folder))
        server = SHOWN[0].replace("listen 443", f"listen 127.0.0.1:{public}").replace(":8017", f":{home}")
        server = server.replace("/path/fullchain.pem", pair).replace("/path/privkey.pem", pair)
        (folder / "nginx.conf").write_text(AROUND.format(folder=folder, server=server))
        with subprocess.Popen([*FOUND, "-p", folder, "-c", folder / "nginx.conf"]) as process:
            try:
                _until_it_listens(process, public)
                yield House(serving, public, home, folder / "theirs" / "authority.pem")
            finally:
                process.kill()


def _until_it_listens(process, port):

    while process.poll() is None:
        try:
            return socket.create_connection(("127.0.0.1", port)).close()
        except ConnectionRefusedError:
            time.sleep(0.05)
    raise RuntimeError("nginx did not start")
