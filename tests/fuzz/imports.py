"""Hostile spreadsheets and app exports to the import: each bad line told, the others taken in, no fault, in time.

A file that was taken in once adds nothing the second time, and whatever came in folds to what its entries make.
"""

from __future__ import annotations

import base64
import json
from collections.abc import Iterator
from contextlib import contextmanager, redirect_stderr, redirect_stdout
from io import StringIO
from pathlib import Path
from random import Random

from tarebook.cli import take_in
from tarebook.cli.arguments import build_parser
from tarebook.errors import TarebookError
from tarebook.store.rebuild import rebuild
from tests.fuzz.api import demo
from tests.fuzz.kind import Case, limited
from tests.fuzz.mutate import TEXTS, changed, damaged, written
from tests.home import Home
from tests.machine import ROOT
from tests.photos import picture, sha

SHEETS = [(ROOT / "fixtures" / "demo" / name).read_bytes() for name in ("parts.csv", "long.csv")]
CELLS = (
    *TEXTS, " " * 30_000, '"', '""', '"' * 999, '" "', "\t" * 400, "1e5 kg", "12,5 kg", "½ lb", "= cmd|'/c'!A0",
    "@SUM(1)", "9" * 5000, "3 x", "1.5", "٣ kg", "\x00", "\x1b]0;x\x07", "(" * 3000, "a,b;c",
)  # fmt: skip
ENCODINGS = ("utf-8", "utf-8-sig", "utf-16", "utf-16-le", "latin-1", "cp1252", "utf-32")


def sheet(random: Random) -> bytes:
    """A sheet of good lines with hostile cells among them, in any encoding, whole or damaged."""
    lines = random.choice(SHEETS).decode("utf-8").splitlines()[: random.choice((3, 20, 200))]
    for _ in range(random.choice((1, 3, 10))):
        at = random.randrange(len(lines)) if random.random() < 0.2 else random.randrange(1, len(lines))
        cells = lines[at].split(",")
        cells[random.randrange(len(cells))] = random.choice(CELLS)
        lines[at] = ",".join(cells) if random.random() < 0.9 else random.choice(CELLS)
    text = random.choice(("\n", "\r\n", "\r", "\n\n")).join(lines)
    if random.random() < 0.2:
        text = text.replace(",", random.choice((";", "\t")))
    data = text.encode(random.choice(ENCODINGS), "replace")
    return damaged(random, data) if random.random() < 0.4 else data


def export(random: Random, garage: str) -> bytes:
    """An app's export with entries and photos gone wrong."""
    head = {"format": "tarebook-takeout", "version": 1, "garage": garage, "name": "G", "device": "phone-x"}
    texts = [
        json.dumps({**random.choice(demo()), "id": f"x-{random.randrange(10**9)}", "device": "home"}) for _ in range(9)
    ]
    rows = [json.dumps({"text": text, "receipt": random.choice((None, "x" * 22))}) for text in texts]
    rows.append(json.dumps({"text": written(random, changed(random, random.choice(demo())))}))
    data = picture(random.randrange(3))
    photo = {"sha256": sha(data), "size": "full", "type": "image/jpeg", "base64": base64.b64encode(data).decode()}
    rows = [written(random, changed(random, json.loads(row))) if random.random() < 0.3 else row for row in rows]
    photos = [json.dumps(photo), written(random, changed(random, photo))]
    start = json.dumps(head if random.random() < 0.9 else changed(random, head), separators=(",", ":"))
    text = (
        f'{start[:-1]},\n"entries":[\n' + ",\n".join(rows) + '\n],\n"photo_bytes":[\n' + ",\n".join(photos) + "\n]}\n"
    )
    data = text.encode("utf-8", "surrogatepass")
    return damaged(random, data) if random.random() < 0.3 else data


def taken_in(folder: Path, file: Path, strict: bool) -> tuple[str, str]:
    """What the command says, and what it says of bad lines; a refusal is its code."""
    out, bad = StringIO(), StringIO()
    with redirect_stdout(out), redirect_stderr(bad), limited():
        try:
            asked = ["import", "--yes", str(file), "--data", str(folder), *(["--strict"] if strict else [])]
            options = build_parser().parse_args(asked)
            take_in.run(options)
        except TarebookError as refused:
            return refused.code, bad.getvalue()
    return out.getvalue(), bad.getvalue()


@contextmanager
def opened(folder: Path) -> Iterator[Case]:
    home = Home(folder / "data")

    def proven() -> None:
        with home.database.write() as session:
            assert rebuild(session, home.garage).changed == 0

    def case(random: Random) -> str:
        is_export = random.random() < 0.4
        file = folder / random.choice(("parts.csv", "a\u202e.csv", "=1.json"))
        file.write_bytes(export(random, home.garage) if is_export else sheet(random))
        said, bad = taken_in(folder / "data", file, random.random() < 0.1)
        assert all(line.startswith("line ") for line in bad.splitlines()), bad[:500]
        assert not set(bad) & {"\x1b", "\0", "\x07"}, bad[:500]
        if "taken in" in said:
            again, _bad = taken_in(folder / "data", file, False)
            assert "There is nothing new in it." in again or "\n0 " in f"\n{again}", (said, again)
        if random.randrange(20) == 0:
            proven()
        return "taken in" if "taken in" in said else said

    yield case
    proven()
