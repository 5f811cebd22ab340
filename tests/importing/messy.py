"""Twelve messy spreadsheets of our own invention, each with its truth: the fate of every line, and what it adds up to.

Nothing here comes from the product: the truth is what the sheet was written from. Pounds and ounces are those of NIST
Handbook 44, Appendix C: 1 lb is 0.45359237 kg, and 16 oz are 1 lb.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable
from dataclasses import dataclass, field
from fractions import Fraction
from random import Random

KG = {
    "kg": Fraction(1),
    "g": Fraction(1, 1000),
    "lb": Fraction(45359237, 100_000_000),
    "oz": Fraction(45359237, 1_600_000_000),
}
_NAMES = ("Träger", "Halter", "Lüfter", "Cover", "Hook", "Clip", "Bracket", "Rail", "Tray", "Lamp", "Hose", "Mat")
_BAD = ("TBD", "heavy", "12 psi", "-3", "see below", "?", "1e3 kg", "0x3 kg")


@dataclass
class Messy:
    """A sheet being written. `fates`: the numbers of its lines by fate. `kg`: what came off, all pieces counted;
    `column`: the sum of its column of masses, by unit."""

    name: str
    encoding: str
    separator: str = ","
    decimal: str = "."
    end: str = "\n"
    lines: list[str] = field(default_factory=list)
    fates: dict[str, set[int]] = field(default_factory=lambda: defaultdict(set))
    kg: Fraction = Fraction(0)
    column: dict[str, Fraction] = field(default_factory=lambda: defaultdict(Fraction))
    section: dict[str, Fraction] = field(default_factory=lambda: defaultdict(Fraction))
    parts: list[tuple[int, list[str], int, str, Fraction, int]] = field(default_factory=list)
    """(line, cells, place of the mass, its unit, kg a piece, pieces) of each part, for what corrects them."""
    unknown: str = ""  # headings of columns that nobody knows

    def put(self, fate: str, *cells: str, lines: int = 1) -> int:
        """One line with these cells; gives its number."""
        number = sum(line.count(self.end) + 1 for line in self.lines) + 1
        self.lines.append(self.separator.join(map(self._quoted, cells)))
        self.fates[fate].add(number)
        self.fates["continued"] |= set(range(number + 1, number + lines))
        return number

    def part(self, cells: list[str], place: int, size: Fraction, unit: str, count: int = 1) -> None:
        """A line with a part whose mass, `size` of `unit` a piece, stands in the cell `place`."""
        number = self.put("taken", *cells)
        self.parts.append((number, cells, place, unit, size * KG[unit], count))
        self.kg += count * size * KG[unit]
        self.column[unit] += size
        self.section[unit] += size

    def number(self, size: Fraction, places: int) -> str:
        """The number with so many decimals and this sheet's mark before them."""
        whole, rest = divmod(int(size * 10**places), 10**places)
        return f"{whole}{self.decimal}{rest:0{places}}" if places else str(whole)

    def told(self) -> str:
        """The column's sum, spelled with all its digits."""
        return " + ".join(f"{digits(size)} {unit}" for unit, size in sorted(self.column.items()) if size)

    def encoded(self) -> bytes:
        marks = {"utf-16-le+": b"\xff\xfe", "utf-16-be+": b"\xfe\xff", "utf-8+": b"\xef\xbb\xbf"}
        text = "".join(line + self.end for line in self.lines)
        return marks.get(self.encoding, b"") + text.encode(self.encoding.rstrip("+"))

    def corrected(self) -> tuple[bytes, Fraction, set[int]]:
        """The sheet with the masses of two of its lines exchanged, what it then adds up to, and the two lines."""
        first, one, at, unit, kg, count = self.parts[0]
        second, two, _at, _unit, other, pieces = next(
            each for each in self.parts[1:] if each[3] == unit and each[4] != kg
        )
        raw = Messy(self.name, self.encoding, self.separator, self.decimal, self.end, list(self.lines))
        for cells, mass in ((one, two[at]), (two, one[at])):
            old = self.separator.join(map(self._quoted, cells))
            new = self.separator.join(map(self._quoted, [*cells[:at], mass, *cells[at + 1 :]]))
            raw.lines[raw.lines.index(old)] = new
        return raw.encoded(), self.kg + (other - kg) * (count - pieces), {first, second}

    def _quoted(self, cell: str) -> str:
        needs = any(mark in cell for mark in (self.separator, '"', self.end))
        return '"' + cell.replace('"', '""') + '"' if needs else cell


def digits(size: Fraction) -> str:
    """A number that ends, with all its digits."""
    places = next(places for places in range(30) if (size * 10**places).denominator == 1)
    whole, rest = divmod(int(size * 10**places), 10**places)
    return f"{whole}.{rest:0{places}}" if places else str(whole)


def _name(chance: Random, number: int) -> str:
    return f"{chance.choice(_NAMES)} {number}"


def plain(chance: Random) -> Messy:
    """Commas and points, a unit column, dashes of every length for what is not there."""
    sheet = Messy("plain.csv", "utf-8", unknown="Colour")
    sheet.put("heading", "Part", "Off", "On", "Unit", "Stage", "Colour")
    for n in range(30):
        unit = chance.choice(("kg", "lb", "oz", "g"))
        size = Fraction(chance.randrange(1, 9_999_999), 1000)
        if unit in ("kg", "lb"):
            size /= 100
        places = 5 if unit in ("kg", "lb") else 3
        sheet.part(
            [_name(chance, n), sheet.number(size, places), chance.choice("-–—"), unit, "Strip", "red"], 1, size, unit
        )
        if n % 10 == 0:
            sheet.put("nothing", f"Spare {n}", chance.choice(("-", "–", "—", "0", "0.00")), "0", unit)
    sheet.put("bad", "Glove box", chance.choice(_BAD), "", "kg")
    return sheet


def semicolons(chance: Random) -> Messy:
    """A western file with semicolons and decimal commas, pieces, and a total of the column."""
    sheet = Messy("semicolons.csv", "cp1252", ";", ",", "\r\n", unknown="Supplier")
    sheet.put("heading", "Item", "Weight (kg)", "Qty", "Notes", "Supplier")
    for n in range(40):
        size, count = Fraction(chance.randrange(1, 60_000), 1000), chance.choice((1, 1, 2, 4))
        name = _name(chance, n)
        sheet.part([name, sheet.number(size, 3), str(count), "½ rostig – später", "Shop"], 1, size, "kg", count)
    sheet.part(["Anker", "13,85", "1", "", ""], 1, Fraction(1385, 100), "kg")
    sheet.put("total", "Total", sheet.number(sheet.column["kg"], 3), "", "", "")
    return sheet


def little_endian(chance: Random) -> Messy:
    """What a spreadsheet saves as "Unicode text": tabs and UTF-16."""
    sheet = Messy("little.txt", "utf-16-le+", "\t", ".", "\r\n")
    sheet.put("heading", "Description", "Weight, lb", "Pieces", "Location", "Comments")
    for n in range(25):
        size, count = Fraction(chance.randrange(1, 30_00), 100), chance.choice((1, 2, 3))
        place = chance.choice(("boot", "Trunk", ""))
        sheet.part([_name(chance, n), sheet.number(size, 2), f"{count}", place, "ü"], 1, size, "lb", count)
    sheet.put("bad", "Washer", "5 lb", "some", "", "")
    return sheet


def bars(chance: Random) -> Messy:
    """Bars between cells, ounces in fractions, also those of a phone's keyboard."""
    sheet = Messy("bars.csv", "utf-8+", "|")
    sheet.put("heading", "Name", "Came off (oz)", "Remarks")
    signs = {"½": Fraction(1, 2), "¼": Fraction(1, 4), "¾": Fraction(3, 4), "⅜": Fraction(3, 8), "⅞": Fraction(7, 8)}
    for n in range(24):
        sign = chance.choice(list(signs))
        whole = chance.randrange(0, 40)
        sheet.part([_name(chance, n), f"{whole or ''}{sign}", ""], 1, whole + signs[sign], "oz")
        eighths = chance.randrange(1, 8)
        text = f"{whole} {eighths}/8" if whole else f"{eighths}/8"
        sheet.part([f"Screw {n}", text, 'with 3/8" thread'], 1, whole + Fraction(eighths, 8), "oz")
    return sheet


def big_endian(chance: Random) -> Messy:
    """UTF-16 the other way round, grams with decimal commas."""
    sheet = Messy("big.txt", "utf-16-be+", ";", ",")
    sheet.put("heading", "Component", "g", "count", "phase")
    for n in range(25):
        size = Fraction(chance.randrange(1, 99_999), 10)
        sheet.part([_name(chance, n), sheet.number(size, 1), "1", "One"], 1, size, "g")
    sheet.put("nothing", "Grommet", "0,0", "1", "One")
    return sheet


def quoted_commas(chance: Random) -> Messy:
    """Commas between cells and before decimals."""
    sheet = Messy("quoted.csv", "utf-8", ",", ",")
    sheet.put("heading", "Part", "Weight (lbs)", "Price", "Cost")
    for n in range(25):
        size = Fraction(chance.randrange(1, 5_000), 100)
        sheet.part([_name(chance, n), sheet.number(size, 2), "12,50", "3"], 1, size, "lb")
    sheet.put("bad", "Beam", "1.250", "", "")  # in a file of decimal commas it may be a thousand
    return sheet


def unmarked(chance: Random) -> Messy:
    """UTF-16 without a mark."""
    sheet = Messy("unmarked.txt", "utf-16-le", "\t", ".", "\r\n", unknown="Where from")
    sheet.put("heading", "Part", "Mass (g)", "Zone", "Where from")
    for n in range(25):
        size = Fraction(chance.randrange(1, 9_000))
        sheet.part([_name(chance, n), str(size), "floor", "x"], 1, size, "g")
    return sheet


def below_one(chance: Random) -> Messy:
    """Masses below one in every unit, however they are written, and pounds with ounces."""
    sheet = Messy("below.csv", "utf-8")
    sheet.put("heading", "Part", "Off", "Hours")
    written = [
        ("0.823 kg", "0.823", "kg"), ("0.5kg", "0.5", "kg"), (".25 kg", "0.25", "kg"), ("½ oz", "0.5", "oz"),
        ("3/8 lb", "0.375", "lb"), (".5 lb", "0.5", "lb"), ("0.050 kg", "0.05", "kg"), ("0.4 g", "0.4", "g"),
        ("0.125oz", "0.125", "oz"), ("¾ lb", "0.75", "lb"), ("0 1/2 oz", "0.5", "oz"), ("0.9 lbs.", "0.9", "lb"),
        ("0.07 Pounds", "0.07", "lb"), ("1/16 oz", "0.0625", "oz"), ("0.001 kg", "0.001", "kg"),
    ]  # fmt: skip
    for n, (text, size, unit) in enumerate(written):
        sheet.part([f"Small thing {n}", text, ""], 1, Fraction(size), unit)
    for n in range(10):
        pounds, ounces = chance.randrange(0, 20), Fraction(chance.randrange(1, 160), 10)
        sheet.put("taken", f"Mixed {n}", f"{pounds} lb {digits(ounces)} oz", "1.5")
        sheet.kg += pounds * KG["lb"] + ounces * KG["oz"]
        sheet.column["lb"] += pounds
        sheet.column["oz"] += ounces
    for text in _BAD[:4]:
        sheet.put("bad", f"Doubt {text}", text, "2")
    return sheet


def sections(chance: Random) -> Messy:
    """Titles, section headings of every kind, subtotals, a total of all pieces, lines that only divide."""
    sheet = Messy("sections.csv", "cp1252", ",", ".", "\r\n")
    sheet.put("heading", "Our car, what came out of it", "", "", "")
    sheet.put("nothing", "", "", "", "")
    sheet.put("heading", "Item", "Qty", "Weight (kg)", "Comments")
    pieces = Fraction(0)
    for title in ("INTERIOR", "Underneath:", "--- Front ---", "== Rest =="):
        sheet.put("heading", title, "", "", "")
        sheet.section.clear()
        for n in range(8):
            size, count = Fraction(chance.randrange(1, 9_999), 1000), chance.choice((1, 2, 6))
            pieces += size * count
            sheet.part([f"{title.strip('=- :')} part {n}", str(count), sheet.number(size, 3), ""], 2, size, "kg", count)
        sheet.put("total", f"Sub-total {title}", "", sheet.number(sheet.section["kg"], 3), "")
        sheet.put("nothing", "-----", "-----", "-----", "-----")
    sheet.put("heading", "Item", "Qty", "Weight (kg)", "Comments")
    sheet.put("nothing", "Ashtray", "1", "", "not there")
    sheet.put("total", "", "", sheet.number(pieces, 3), "")
    sheet.put("total", "GRAND TOTAL:", "", sheet.number(sheet.column["kg"], 3), "")
    return sheet


def known_how(chance: Random) -> Messy:
    """What was weighed and what was guessed, on which scale and when."""
    sheet = Messy("how.csv", "utf-8", ";", ",")
    sheet.put("heading", "Part", "Weight (kg)", "Basis", "Scale", "Date")
    for n in range(24):
        size = Fraction(chance.randrange(1, 9_999), 100)
        basis, scale = chance.choice((("weighed", "Kitchen"), ("w", ""), ("guess", ""), ("brochure", ""), ("", "hook")))
        sheet.part([_name(chance, n), sheet.number(size, 2), basis, scale, f"{n % 28 + 1}.9.2026"], 1, size, "kg")
    return sheet


def long(chance: Random) -> Messy:
    """Three thousand lines."""
    sheet = Messy("long.csv", "cp1252", ";", ",", "\r\n", unknown="Teil Nr")
    sheet.put("heading", "Teil Nr", "Part", "Weight (g)", "Pcs", "Location")
    while len(sheet.lines) < 3000:
        n = len(sheet.lines)
        kind = chance.random()
        if kind < 0.005:
            sheet.put("heading", "", f"ABSCHNITT {n}", "", "", "")
        elif kind < 0.01:
            sheet.put("bad", str(n), f"Part {n}", chance.choice(_BAD), "1", "")
        elif kind < 0.02:
            sheet.put("nothing", str(n), f"Part {n}", chance.choice(("", "-", "0", "0,0")), "1", "")
        else:
            size, count = Fraction(chance.randrange(1, 99_999), 100), chance.choice((1, 1, 1, 2, 8))
            cells = [str(n), _name(chance, n), sheet.number(size, 2), str(count), "Front"]
            sheet.part(cells, 2, size, "g", count)
    return sheet


def old_ends(chance: Random) -> Messy:
    """Line ends of an old computer, cells over several lines, a title and the header again."""
    sheet = Messy("ends.csv", "utf-8", ",", ".", "\r")
    sheet.put("heading", "WEIGHTS")
    header = ["Thing", "Weight removed (lb)", "Notes", "Comments"]
    sheet.put("heading", *header)
    for n in range(20):
        size = Fraction(chance.randrange(1, 4_000), 100)
        sheet.part([_name(chance, n), sheet.number(size, 2), "a", "b"], 1, size, "lb")
        if n % 7 == 6:
            sheet.put("heading", *header)
    sheet.column["lb"] += 2
    sheet.kg += 2 * KG["lb"]
    sheet.put("taken", "Carpet", "2", "cut\rinto\rthree", "", lines=3)
    sheet.put("bad", "", "7", "", "")
    return sheet


ALL: tuple[Callable[[Random], Messy], ...] = (
    plain, semicolons, little_endian, bars, big_endian, quoted_commas, unmarked, below_one, sections, known_how, long,
    old_ends,
)  # fmt: skip
