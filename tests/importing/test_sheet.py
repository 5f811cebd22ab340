"""A file of separated values becomes numbered rows, whatever program wrote it."""

import codecs
import contextlib
import time

import pytest

from tarebook.errors import TarebookError
from tarebook.importing.line import LineError, read_line
from tarebook.importing.sheet import read_sheet

HEADER = "part,off,unit\n"


def told(path):
    """What stands under the header: (number, its fault or its cells) of each line that is not empty."""
    found = [row for row in read_sheet(path).rows() if not row.heading]
    return [(row.number, row.fault or row.cells) for row in found if row.fault or row.words]


@pytest.fixture
def read(tmp_path):
    def read_back(content):
        path = tmp_path / "parts.csv"
        path.write_bytes(content if isinstance(content, bytes) else content.encode())
        return told(path)

    return read_back


def test_a_plain_file_gives_one_row_a_line(read):
    assert read(HEADER + "Jack,7,lb\nHook,4.3,lb\n") == [
        (2, {"part": "Jack", "off": "7", "unit": "lb"}),
        (3, {"part": "Hook", "off": "4.3", "unit": "lb"}),
    ]


@pytest.mark.parametrize("separator", [",", ";", "\t", "|"])
def test_every_usual_separator_is_found_by_itself(read, separator):
    assert read(f"part{separator}off\nJack{separator}7 lb\n") == [(2, {"part": "Jack", "off": "7 lb"})]


@pytest.mark.parametrize(
    "raw",
    [
        "part,off\nHäkchen,7 lb\n".encode(),
        codecs.BOM_UTF8 + "part,off\nHäkchen,7 lb\n".encode(),
        "part,off\nHäkchen,7 lb\n".encode("cp1252"),
        codecs.BOM_UTF16_LE + "part\toff\nHäkchen\t7 lb\n".encode("utf-16-le"),
        codecs.BOM_UTF16_BE + "part\toff\nHäkchen\t7 lb\n".encode("utf-16-be"),
        "part\toff\nHäkchen\t7 lb\n".encode("utf-16-le"),
        "part\toff\nHäkchen\t7 lb\n".encode("utf-16-be"),
    ],
    ids=["utf-8", "utf-8 with mark", "western", "little", "big", "little without a mark", "big without a mark"],
)
def test_every_usual_encoding_is_found_by_itself(read, raw):
    assert read(raw) == [(2, {"part": "Häkchen", "off": "7 lb"})]


def test_columns_come_in_any_order_and_letter_case_and_strange_ones_are_left_alone(read):
    assert read("Unit,COLOUR,Off,Part\nlb,red,7,Jack\n") == [(2, {"part": "Jack", "off": "7", "unit": "lb"})]


def test_a_unit_in_the_heading_goes_to_bare_numbers_of_its_column(read):
    assert read("part,off (lb)\nJack,7\nHook,30 oz\nClip,½\nMat,.5\nCap,-\n") == [
        (2, {"part": "Jack", "off": "7 lb"}),
        (3, {"part": "Hook", "off": "30 oz"}),
        (4, {"part": "Clip", "off": "½ lb"}),
        (5, {"part": "Mat", "off": ".5 lb"}),
        (6, {"part": "Cap", "off": "-"}),
    ]


def test_a_title_above_the_header_is_passed_over(read):
    assert read("My car\n\npart,off\nJack,7 lb\n") == [(4, {"part": "Jack", "off": "7 lb"})]


def test_empty_lines_are_not_rows(read):
    assert [number for number, _ in read(HEADER + "\n,,\nJack,7,lb\n \n")] == [4]


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_line_ends_of_every_system_count_alike(read, end):
    assert [number for number, _ in read(end.join(["part,off", "Jack,7 lb", "Hook,2 lb", ""]))] == [2, 3]


def test_a_quoted_cell_may_hold_separators_line_ends_and_marks(read):
    assert read('part,off\n"Hook, ""steel""\nlong",7 lb\nJack,1 lb\n') == [
        (2, {"part": 'Hook, "steel" long', "off": "7 lb"}),
        (4, {"part": "Jack", "off": "1 lb"}),
    ]


def test_an_inch_sign_inside_a_cell_is_just_a_sign(read):
    assert read('part,off\nPipe 3/8" long,7 lb\n') == [(2, {"part": 'Pipe 3/8" long', "off": "7 lb"})]


def test_a_mark_never_closed_spoils_its_own_line_only(read):
    lines = [f"Part {n},1 lb" for n in range(40)]
    got = read('part,off\n"Jack,7 lb\n' + "\n".join(lines))
    assert got[0] == (2, "line_open_quote")
    assert [number for number, _ in got[1:]] == list(range(3, 43))


def test_a_mark_closed_by_the_next_quoted_line_swallows_nothing(read):
    got = read('part,off\n"Jack,7 lb\nHook,1 lb\n"Seat, rear",2 lb\n')
    assert got == [
        (2, "line_open_quote"),
        (3, {"part": "Hook", "off": "1 lb"}),
        (4, {"part": "Seat, rear", "off": "2 lb"}),
    ]


def test_a_file_without_columns_is_refused(read):
    with pytest.raises(TarebookError) as refused:
        read("this is not\na sheet\n")
    assert refused.value.code == "import_no_header"


def test_a_column_named_twice_is_refused(read):
    with pytest.raises(TarebookError) as refused:
        read("part,off,off\n")
    assert (refused.value.code, refused.value.data) == ("import_column_twice", {"column": "off", "line": 1})


def test_a_missing_file_is_refused(tmp_path):
    with pytest.raises(TarebookError) as refused:
        read_sheet(tmp_path / "none.csv")
    assert refused.value.code == "file_unreadable"


def test_a_picture_is_refused_like_any_file_without_columns(read):
    with pytest.raises(TarebookError) as refused:
        read(bytes(range(256)) * 500)
    assert refused.value.code == "import_no_header"


ALL_COLUMNS = "part,off,on,unit,quantity,stage,zone,hours,money,note\n"


@pytest.mark.parametrize(
    "text",
    [
        f"part,off,a{' ' * 50_000}x\na,1 kg\n",
        f"part,off ( {' ' * 50_000}x,on\na,1 kg\n",
        ALL_COLUMNS + '"abc\n' * 10_000,
        ALL_COLUMNS + f"a,{'0' * 50_000}x\n",
        ALL_COLUMNS + f"a,{' ' * 50_000}x,1\n",
        ALL_COLUMNS + ('"' + "x" * 50_000 + "\n") * 40,
    ],
    ids=["spaces in the header", "an open bracket", "open quotes", "zeros", "spaces", "long lines with open quotes"],
)
def test_nothing_in_a_sheet_takes_long(tmp_path, text):
    (tmp_path / "sheet.csv").write_text(text, encoding="utf-8")
    begun = time.process_time()
    with contextlib.suppress(TarebookError):
        for row in read_sheet(tmp_path / "sheet.csv").rows():
            with contextlib.suppress(LineError):
                read_line(row)
    assert time.process_time() - begun < 5
