"""A file of separated values as numbered rows, whatever program wrote it.

UTF-8 with or without a mark, UTF-16 with one, or a Western single-byte encoding; commas, semicolons or tabs. The
header may stand under a title; columns come in any order and letter case, others are left alone. The file is read as a
stream, so its size does not matter. A quotation mark that is never closed spoils its own line, not the rest; that is
why the cells are split here and not by the csv module, which takes everything after such a mark for one cell.
"""

import codecs
import re
from collections import deque
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import cache
from io import TextIOWrapper
from pathlib import Path

from tarebook.errors import TarebookError

COLUMNS = ("part", "off", "on", "unit", "quantity", "stage", "zone", "hours", "money", "note")
SEPARATORS = (",", ";", "\t")
_MARKS = ((codecs.BOM_UTF8, "utf-8-sig"), (codecs.BOM_UTF16_LE, "utf-16"), (codecs.BOM_UTF16_BE, "utf-16"))
REPORT_COLUMNS = ("within", "basis", "job", "state", "trim")  # those of `tarebook report --format csv` alone
_HEADER_WITHIN = 20  # lines a title may take before the header
_LINES_A_CELL = 20  # a quoted cell longer than this was never meant to be quoted
_LONGEST_CELL = 1 << 16  # characters; what is quoted over several lines has fewer
_LONGEST = 1 << 20  # characters of one line; a file without line ends must not fill the memory
_HEAD = re.compile(r"(\w+)\s*(?:[(\[]([^)\]]*)[)\]])?")


@dataclass(frozen=True)
class Row:
    """One line of the sheet: its number in the file, its cells by column; `fault`, a code, when it is not readable."""

    number: int
    cells: dict[str, str]
    fault: str | None = None


@dataclass(frozen=True)
class _Header:
    """Where the columns are: name → (place, unit written in the heading or '')."""

    line: int
    separator: str
    places: dict[str, tuple[int, str]]


def rows(path: Path) -> Iterator[Row]:
    """Every line under the header that has anything in it.

    Raises `file_unreadable`, `import_no_header` and `import_column_twice`.
    """
    with _opened(path) as (text, header):
        yield from _rows(text, header)


@contextmanager
def _opened(path: Path) -> Iterator[tuple[TextIOWrapper, _Header]]:
    """A file from its first line on, and what its header says. Raises what `rows` raises."""
    try:
        encoding = _encoding(path)
        header = _header(path, encoding)
        with _open(path, encoding) as text:
            yield text, header
    except OSError as problem:
        raise TarebookError("file_unreadable", file=str(path), reason=problem.strerror or str(problem)) from problem


def with_unit(text: str, unit: str) -> str:
    """A number with a unit from elsewhere, unless it has one; ½ is a number, a dash is none."""
    is_bare = any(map(str.isnumeric, text)) and not any(map(str.isalpha, text))
    return f"{text} {unit}" if unit and is_bare else text


def is_own_report(path: Path) -> bool:
    """Whether the file is the table that Tarebook itself writes of a garage's jobs. Raises what `rows` raises."""
    with _opened(path) as (text, header):
        line = next(line for number, line in _lines(text) if number == header.line)
    return set(REPORT_COLUMNS) <= {cell.strip().casefold() for cell in _split(line, header.separator) or []}


def _rows(text: TextIOWrapper, header: _Header) -> Iterator[Row]:
    for number, cells in _records(text, header.separator):
        if number <= header.line:
            continue
        if cells is None:
            yield Row(number, {}, "line_open_quote")
        elif any(cell.strip() for cell in cells):
            found = {name: _cell(cells, place, unit) for name, (place, unit) in header.places.items()}
            yield Row(number, {name: text for name, text in found.items() if text})


def _cell(cells: list[str], place: int, unit: str) -> str:
    text = " ".join(cells[place].replace("\0", "").split()) if place < len(cells) else ""
    return with_unit(text, unit)


def _open(path: Path, encoding: str) -> TextIOWrapper:
    return path.open(encoding=encoding, newline="", errors="replace")


def _encoding(path: Path) -> str:
    """UTF-8 when the whole file is; else Western, which can read any byte."""
    with path.open("rb") as raw:
        start = raw.read(4)
        for mark, name in _MARKS:
            if start.startswith(mark):
                return name
        raw.seek(0)
        return _utf8_or_western(iter(lambda: raw.read(1 << 20), b""))


def _utf8_or_western(chunks: Iterator[bytes]) -> str:
    decoder = codecs.getincrementaldecoder("utf-8")()
    try:
        for chunk in chunks:
            decoder.decode(chunk)
        decoder.decode(b"", final=True)
    except UnicodeDecodeError:
        return "latin-1"
    return "utf-8"


def _lines(text: TextIOWrapper) -> Iterator[tuple[int, str]]:
    return enumerate(iter(lambda: text.readline(_LONGEST), ""), 1)


def _header(path: Path, encoding: str) -> _Header:
    with _open(path, encoding) as text:
        first = [line for line, _ in zip(_lines(text), range(_HEADER_WITHIN), strict=False)]
    found = [_header_in(number, line, separator) for number, line in first for separator in SEPARATORS]
    usable = [header for header in found if "part" in header.places and len(header.places) > 1]
    if not usable:
        raise TarebookError("import_no_header", file=str(path))
    return max(usable, key=lambda header: len(header.places))


def _header_in(number: int, line: str, separator: str) -> _Header:
    places: dict[str, tuple[int, str]] = {}
    for place, cell in enumerate(_split(line, separator) or []):
        head = _HEAD.fullmatch(cell.strip())
        name = head.group(1).casefold() if head else ""
        if name in places:
            raise TarebookError("import_column_twice", column=name, line=number)
        if head and name in COLUMNS:
            places[name] = (place, (head.group(2) or "").strip())
    return _Header(number, separator, places)


def _records(text: TextIOWrapper, separator: str) -> Iterator[tuple[int, list[str] | None]]:
    """(number of its first line, cells) for every record; None for a quotation mark never closed."""
    lines = _lines(text)
    back: deque[tuple[int, str]] = deque()  # lines read ahead in vain and given back
    while (first := back.popleft() if back else next(lines, None)) is not None:
        taken = [first]
        cells = _split(first[1], separator)
        text_so_far = first[1]
        while cells is None and len(taken) < _LINES_A_CELL and len(text_so_far) < _LONGEST_CELL:
            if (more := back.popleft() if back else next(lines, None)) is None:
                break
            taken.append(more)
            text_so_far += more[1]
            if '"' in more[1]:
                cells = _split(text_so_far, separator)
        if cells is None:
            back.extendleft(reversed(taken[1:]))
        yield first[0], cells


def _split(record: str, separator: str) -> list[str] | None:
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
