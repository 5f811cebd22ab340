"""The build sheet as plain text of 80 columns: what the car weighs first, then where the weight is.

Every number carries its unit. Rounding happened before this; a column of rounded rows may differ from its total in
the last place.
"""

import textwrap
from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from tarebook.core.numbers.shown import show_mass

WIDTH = 80
_LABEL = 16
_STAGE_COLUMNS = ("off", "on", "net", "hours", "money")
_JOB_COLUMNS = ("net", "hours", "money")
_STATES = {"fitted": "", "chosen": " (chosen)", "idea": " (idea)", "undone": " (undone)"}
_BASES = {"weighed": "weighed", "worked_out": "worked out", "quoted": "quoted", "guessed": "guessed"}

Sheet = dict[str, Any]
Row = tuple[str, Sequence[str]]


def as_text(sheet: Sheet) -> str:
    """The whole sheet; ends with a line end."""
    parts = (_head, _from_start, _stages, _jobs, _basis, _loose_ends, _weigh_ins, _unproven, _notes)
    return "".join(f"{line.rstrip()}\n" for part in parts for line in part(sheet))


def _head(sheet: Sheet) -> Iterator[str]:
    stand = sheet["standing"]
    title, trim = sheet["car"] or "The car", f"{sheet['trim']} trim"
    yield title + trim.rjust(WIDTH - len(title))
    yield "=" * WIDTH
    yield from _said("Weight now", _weight(stand))
    for name, label in _BESIDE_WEIGHT.items():
        if stand[name]:
            yield from _said(label, f"{stand[name]}.")
    if stand["minimum"]:
        yield from _said("Minimum", f"{stand['minimum_typed']}, {stand['class']}")
    if stand["margin_sentence"] not in _weight(stand):
        chance = _chance(stand)
        label = "Margin" if stand["margin"] else "Known so far"
        yield from _said(label, _sentences(stand["margin_sentence"], stand["in_hand_sentence"], chance))
    barred = [job["job"] for job in sheet["jobs"] if (job["state"], job["ruling"]) == ("fitted", "not_allowed")]
    if barred:
        yield from _said("Not allowed", f"Fitted, and not allowed by the class: {', '.join(barred)}.")
    if stand["rests_on"]:
        since = f"; since then: {', '.join(stand['since'])}" if stand["since"] else "; nothing changed since"
        yield from _said("Rests on", stand["rests_on"] + since)
    if stand["foretold"]:
        yield from _said("Predicted", f"{stand['foretold']} at official weigh-ins")
    if stand["gap_sentence"]:
        yield from _said("Look into this", f"{stand['gap_sentence']}, between {' and '.join(stand['gap_between'])}.")


_BESIDE_WEIGHT = {
    "since_sentence": "",
    "either_sentence": "Two answers",
    "one_only_sentence": "One weigh-in",
    "scatter_sentence": "Scatter",
}
_BEFORE = "The car before any job, without fuel, driver and ballast"
_FROM_START = {
    "corrected": "Beside the jobs, by the weigh-ins",
    "fuel": "Fuel",
    "driver": "Driver",
    "ballast": "Ballast",
}


def _from_start(sheet: Sheet) -> Iterator[str]:
    lines = sheet["standing"]["from_start"]
    if lines:
        rows = [
            (_BEFORE, lines["start"]),
            *((each["stage"] or "Without a stage", each["net"]) for each in lines["stages"]),
            *((words, lines[name]) for name, words in _FROM_START.items()),
            ("Weight now", sheet["standing"]["weight"]),
        ]
        yield from _table("From the start", ("",), [(words, (mass["shown"],)) for words, mass in rows])


def _weight(stand: Sheet) -> str:
    if stand["weight"]:
        return f"{stand['weight']['shown']}, {stand['condition']}"
    return str(stand["reason"])


def _chance(stand: Sheet) -> str | None:
    if not stand["chance_under"]:
        return None
    return f"Chance that the official scale shows under the minimum: {stand['chance_under']['shown']}"


def _stages(sheet: Sheet) -> Iterator[str]:
    rows = [
        row
        for stage in sheet["stages"]
        for state, total in stage["states"].items()
        for row in (
            (f"{stage['stage'] or 'no stage'}{_STATES[state]}", _stage_figures(total, sheet["mass_unit"])),
            *_as_read(total),
        )
    ]
    if rows:
        yield from _table("Stages", _STAGE_COLUMNS, rows)
        yield "-" * WIDTH
        hours, money = (sheet["spent"][key]["shown"] for key in ("hours", "money"))
        unsaid = "" if sheet["currency"] else " (no currency is set)"
        yield from _said("Spent", f"{hours}, money {money}; parts sold brought {sheet['brought']['shown']}{unsaid}")


def _jobs(sheet: Sheet) -> Iterator[str]:
    rows: list[Row] = []
    for stage in dict.fromkeys(job["stage"] for job in sheet["jobs"]):
        rows.append((stage or "no stage", ()))
        for job in (job for job in sheet["jobs"] if job["stage"] == stage):
            rows += [(_job_name(job), _job_figures(job)), *_as_read(job)]
    if rows:
        yield from _table("Jobs", _JOB_COLUMNS, rows)


def _as_read(total: Sheet) -> list[Row]:
    """Below a net: what the displays come to on paper."""
    return [(f"    as read {total['as_read']}", ())] if total["as_read"] else []


def _job_name(job: Sheet) -> str:
    event = ", event only" if job["trim"] == "event" else ""
    barred = ", not allowed" if job["ruling"] == "not_allowed" else ""
    return f"  {job['job']}{event}{barred}{_STATES[job['state']]}{_photos(job)}"


def _photos(shown: Sheet) -> str:
    count = len(shown["photos"])
    return f", {count} photo{'s' * (count > 1)}" if count else ""


def _stage_figures(total: Sheet, unit: str) -> tuple[str, ...]:
    """Off and on plain, the net with its uncertainty; nothing where nothing moved."""
    plain = [show_mass(total[way]["value"], unit) if total[way]["value"] else "" for way in ("off", "on")]
    return (*plain, *_job_figures(total))


def _job_figures(total: Sheet) -> tuple[str, ...]:
    moved = total["off"]["value"] or total["on"]["value"]
    return (total["net"]["shown"] if moved else "", total["hours"]["shown"], total["money"]["shown"])


def _basis(sheet: Sheet) -> Iterator[str]:
    shares = ", ".join(f"{share:.0%} {_BASES[basis]}" for basis, share in sheet["basis"].items() if share)
    if shares or sheet["unweighed"]:
        yield from _title("How well it is known")
        yield from _said("Kilograms moved", (shares or "none yet").replace("%", " %"))
        yield from _said("Not weighed", ", ".join(sheet["unweighed"]) or "nothing of what is in or out now")
        for lesson in sheet["lessons"]:
            yield from _said(_BASES[lesson["basis"]].capitalize(), lesson["sentence"])


def _loose_ends(sheet: Sheet) -> Iterator[str]:
    if sheet["loose_ends"]:
        yield from _title("Open loose ends")
        yield from _list(f"{end['text']} ({end['job']})" for end in sheet["loose_ends"])


def _weigh_ins(sheet: Sheet) -> Iterator[str]:
    if sheet["weigh_ins"]:
        rows = [(f"{(past['at'] or 'no date')[:10]}{_kind(past)}", _weighed(past)) for past in sheet["weigh_ins"]]
        yield from _table("Weigh-ins", ("trim", "weighed", "as the class weighs"), rows)
        reasons = (f"{past['at'] or 'no date'}: {past['reason']}" for past in sheet["weigh_ins"] if past["reason"])
        yield from _list(reasons)
        told = (f"{past['at'] or 'no date'}: {past['foretold']}" for past in sheet["weigh_ins"] if past["foretold"])
        yield from _list(told)
        again = (past for past in sheet["weigh_ins"] if past["repeated"])
        yield from _list(f"{past['at'] or 'no date'}: {'; '.join(past['readings'])}" for past in again)


def _kind(past: Sheet) -> str:
    return f"  {'official' if past['official'] else 'own scales'}{_photos(past)}"


def _weighed(past: Sheet) -> tuple[str, ...]:
    shown = [past[key]["shown"] if past[key] else "not known" for key in ("total", "weight")]
    return (past["trim"], *shown)


def _unproven(sheet: Sheet) -> Iterator[str]:
    if sheet["unproven"]:
        yield from _title("Not proven who wrote it")
        yield from _list(sheet["unproven"])


def _notes(sheet: Sheet) -> Iterator[str]:
    if sheet["warnings"]:
        yield from _title("Notes")
        yield from _list(sheet["warnings"])


def _title(text: str) -> Iterator[str]:
    yield ""
    yield text.upper()
    yield "-" * WIDTH


def _table(title: str, columns: Sequence[str], rows: Sequence[Row]) -> Iterator[str]:
    """Names to the left, figures to the right, as wide as they are. A name without room stands on its own line."""
    lines: list[Row] = [(title.upper(), columns), *rows]
    widths = [max(len(cells[i]) for _, cells in lines if cells) + 2 for i in range(len(columns))]
    room = WIDTH - sum(widths)
    yield ""
    for number, (name, cells) in enumerate(lines):
        figures = "".join(cell.rjust(width) for cell, width in zip(cells, widths, strict=False))
        if cells and len(name) > room:
            yield from textwrap.wrap(name, WIDTH, subsequent_indent="    ", drop_whitespace=False)
            name = ""
        yield name.ljust(room) + figures
        if number == 0:
            yield "-" * WIDTH


def _said(label: str, text: str) -> list[str]:
    return textwrap.wrap(text, WIDTH, initial_indent=f"{label:<{_LABEL}}", subsequent_indent=" " * _LABEL)


def _list(items: Iterable[str]) -> Iterator[str]:
    for item in items:
        yield from textwrap.wrap(item, WIDTH, initial_indent="- ", subsequent_indent="  ")


def _sentences(*texts: str | None) -> str:
    return " ".join(text if text.endswith(".") else f"{text}." for text in texts if text)
