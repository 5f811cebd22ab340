"""A file's text as records of cells, whatever program wrote it.

UTF-8 with or without a mark, UTF-16 of either order with or without one, or else Windows' Western encoding, which reads
any byte. The file is read as a stream, so its size does not matter. A quotation mark that is never closed spoils its
own line, not the rest; that is why the cells are split here and not by the csv module, which takes everything after
such a mark for one cell.
"""

import codecs
import re
from collections import deque
from collections.abc import Iterator
from functools import cache
from io import TextIOWrapper
from itertools import chain
from pathlib import Path

SEPARATORS = (",", ";", "\t", "|")
ENCODINGS = {"utf-8": "UTF-8", "utf-8-sig": "UTF-8", "cp1252": "Western (Windows-1252)"}
"""What people call them; every other one is UTF-16."""
_MARKS = ((codecs.BOM_UTF8, "utf-8-sig"), (codecs.BOM_UTF16_LE, "utf-16"), (codecs.BOM_UTF16_BE, "utf-16"))
_LINES_A_CELL = 20  # a quoted cell longer than this was never meant to be quoted
_LONGEST_CELL = 1 << 16  # characters; what is quoted over several lines has fewer
_LONGEST = 1 << 20  # characters of one line; a file without line ends must not fill the memory
_SAMPLE = 4096  # bytes in which UTF-16 without a mark shows itself

Record = tuple[int, int, list[str] | None]
"""The number of its first line, how many lines it takes, and its cells; None for a quotation mark never closed."""


def encoding_of(path: Path) -> str:
    """By the mark at its beginning or by every second byte being zero; UTF-8 when all of it is; else Western."""
    with path.open("rb") as raw:
        sample = raw.read(_SAMPLE)
        for mark, name in _MARKS:
            if sample.startswith(mark):
                return name
        return _unmarked_utf16(sample) or _utf8_or_western(chain([sample], iter(lambda: raw.read(1 << 20), b"")))


def opened(path: Path, encoding: str) -> TextIOWrapper:
    return path.open(encoding=encoding, newline="", errors="replace")


def numbered_lines(text: TextIOWrapper) -> Iterator[tuple[int, str]]:
    return enumerate(iter(lambda: text.readline(_LONGEST), ""), 1)


def _unmarked_utf16(sample: bytes) -> str | None:
    """Western letters have their zero byte last in one order and first in the other; other files have hardly any."""
    first, last = sample[::2].count(0), sample[1::2].count(0)
    if 4 * max(first, last) < len(sample) or 10 * min(first, last) > max(first, last):
        return None
    return "utf-16-le" if last > first else "utf-16-be"


def _utf8_or_western(chunks: Iterator[bytes]) -> str:
    decoder = codecs.getincrementaldecoder("utf-8")()
    try:
        for chunk in chunks:
            decoder.decode(chunk)
        decoder.decode(b"", final=True)
    except UnicodeDecodeError:
        return "cp1252"
    return "utf-8"


def records(text: TextIOWrapper, separator: str) -> Iterator[Record]:
    lines = numbered_lines(text)
    back: deque[tuple[int, str]] = deque()  # lines read ahead in vain and given back
    while (first := back.popleft() if back else next(lines, None)) is not None:
        taken = [first]
        cells = split(first[1], separator)
        text_so_far = first[1]
        while cells is None and len(taken) < _LINES_A_CELL and len(text_so_far) < _LONGEST_CELL:
            if (more := back.popleft() if back else next(lines, None)) is None:
                break
            taken.append(more)
            text_so_far += more[1]
            if '"' in more[1]:
                cells = split(text_so_far, separator)
        if cells is None:
            back.extendleft(reversed(taken[1:]))
        yield first[0], len(taken) if cells is not None else 1, cells


def split(record: str, separator: str) -> list[str] | None:
    """The cells of one record, or None while a quotation mark is still open.

    A mark inside a cell that did not begin with one is an inch sign and stays. Words after a closing mark are kept on
    one line; over several lines they mean that the mark had swallowed the beginning of another line.
    """
    body = record.rstrip("\r\n")
    cells, at = [], 0
    while at <= len(body):
        found = _cell_pattern(separator).match(body, at)
        if found is None or (found["rest"] and "\n" in body):
            return None
        cells.append(_unquoted(found))
        at = found.end() + 1
    return cells


def _unquoted(found: re.Match[str]) -> str:
    if found["quoted"] is None:
        return found["plain"]
    return found["quoted"].replace('""', '"') + found["rest"]


@cache
def _cell_pattern(separator: str) -> re.Pattern[str]:
    other = f"[^{re.escape(separator)}]"
    return re.compile(f' *"(?P<quoted>(?:[^"]|"")*)"(?!")(?P<rest>{other}*)|(?P<plain>(?! *"){other}*)')
