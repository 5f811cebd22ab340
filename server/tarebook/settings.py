"""The settings table: every setting once, with its default, how it is read, and what it is for.

A setting comes from the environment as `TAREBOOK_<NAME>` (the database also from `DATABASE_URL`, the name
hosting services use). A value that cannot be read stops the program with a sentence; there is no silent default. What
has no reader is no variable's to set.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping
from dataclasses import Field, dataclass, field, fields
from ipaddress import ip_address
from pathlib import Path
from typing import Any

from tarebook.errors import TarebookError


def _text(raw: str) -> str:
    return raw.strip()


def _path(raw: str) -> Path:
    if not raw.strip():
        raise ValueError("a folder is expected")
    return Path(raw).expanduser()


def _path_or_none(raw: str) -> Path | None:
    return _path(raw) if raw.strip() else None


def _names(raw: str) -> tuple[str, ...]:
    return tuple(name.strip().lower() for name in raw.split(",") if name.strip())


def _addresses(raw: str) -> tuple[str, ...]:
    from tarebook.network import is_near

    given = _names(raw)
    if not all(is_near(ip_address(one)) for one in given):
        raise ValueError("private addresses are expected")
    return given


def _whole(least: int, most: int) -> Callable[[str], int]:
    def parse(raw: str) -> int:
        number = int(raw)
        if not least <= number <= most:
            raise ValueError(f"a whole number from {least} to {most} is expected")
        return number

    return parse


def _user_folder() -> Path:
    from platformdirs import user_data_path

    return user_data_path("tarebook", appauthor=False)


def _as(parse: Callable[[str], Any], purpose: str) -> dict[str, Any]:
    return {"parse": parse, "help": purpose}


# fmt: off
@dataclass(frozen=True)
class Settings:
    """One field a setting. Make it with `read()`, or by keyword in tests."""

    data: Path = field(default_factory=_user_folder, metadata=_as(
        _path, "Folder of the database and the photos."))
    database_url: str = field(default="", metadata=_as(
        _text, "Database; empty: SQLite in the data folder. postgresql+psycopg://… for a club."))
    backup_folder: Path | None = field(default=None, metadata=_as(
        _path_or_none, "Folder of the daily backups, best on another disk; empty: backups in the data folder."))
    host: str = field(default="127.0.0.1", metadata=_as(_text, "Address to listen on."))
    port: int = field(default=8017, metadata=_as(_whole(0, 65535), "Port to listen on; 0 takes any free one."))
    hosts: tuple[str, ...] = field(default=(), metadata=_as(
        _names, "Host names answered to besides localhost, separated by commas."))
    lan_addresses: tuple[str, ...] = field(default=(), metadata=_as(
        _addresses, "Private addresses phones reach this computer by, separated by commas; empty: those it has."))
    trusted_proxies: tuple[str, ...] = field(default=(), metadata=_as(
        _names, "Addresses of reverse proxies whose X-Forwarded-For is believed, separated by commas."))
    demo: bool = field(default=False, metadata={
        "help": "A throw-away garage, by `serve --demo` alone: the local address pairs by itself."})
    threads: int = field(default=8, metadata=_as(_whole(1, 64), "Requests answered at once."))
    calc_seconds: int = field(default=10, metadata=_as(
        _whole(1, 3600), "Longest computation done for one request, in seconds."))
    device_entries: int = field(default=100_000, metadata=_as(
        _whole(1, 10**9), "Most new entries taken in from one device in a day."))
    device_photo_bytes: int = field(default=10_000_000_000, metadata=_as(
        _whole(1, 10**15), "Most bytes of photos taken in from one device."))
    photo_bytes: int = field(default=2_000_000, metadata=_as(
        _whole(1, 50_000_000), "Largest photo taken in, in bytes."))
    reserve_bytes: int = field(default=50_000_000, metadata=_as(
        _whole(0, 10**12), "Room on the disk kept for weighings, in bytes: with less, photos and daily backups wait."))
    photo_pixels: int = field(default=40_000_000, metadata=_as(
        _whole(1, 200_000_000), "Most pixels of a photo that is opened."))
    static_app: Path = field(default_factory=lambda: Path(__file__).parent / "static_app", metadata=_as(
        _path, "Folder of the built app."))
# fmt: on

    @classmethod
    def read(cls, environment: Mapping[str, str] | None = None, **given: Any) -> Settings:
        """Settings from the environment; `given` (the command line's options) win. Raises `bad_setting`."""
        env = os.environ if environment is None else environment
        found = {row.name: _value(row, env) for row in fields(cls) if _raw(row, env) is not None}
        return cls(**{**found, **given})

    def __post_init__(self) -> None:
        # Flask takes a relative path from its own folder, and a program may change its own.
        for row in fields(self):
            if isinstance(folder := getattr(self, row.name), Path):
                object.__setattr__(self, row.name, folder.absolute())

    @property
    def database(self) -> str:
        """The SQLAlchemy address of the database."""
        return self.database_url or f"sqlite:///{self.data / 'tarebook.sqlite3'}"

    @property
    def photos(self) -> Path:
        return self.data / "photos"

    @property
    def certificates(self) -> Path:
        return self.data / "certificates"

    @property
    def backups(self) -> Path:
        return self.backup_folder or self.data / "backups"


def environment_name(name: str) -> str:
    return "DATABASE_URL" if name == "database_url" else f"TAREBOOK_{name.upper()}"


def _raw(row: Field[Any], env: Mapping[str, str]) -> str | None:
    return env.get(environment_name(row.name)) if "parse" in row.metadata else None


def _value(row: Field[Any], env: Mapping[str, str]) -> Any:
    raw = _raw(row, env) or ""
    try:
        return row.metadata["parse"](raw)
    except ValueError as problem:
        raise TarebookError("bad_setting", name=environment_name(row.name), value=raw, reason=str(problem)) from problem
