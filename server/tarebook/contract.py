"""Writes what the phone shares with the server: `webapp/src/generated/`.

The error table, the kinds of record, the units, the sentences, and the types of the routes a phone asks. Run
`python -m tarebook.contract` after changing any of them, and commit what it wrote; `--check` writes nothing
and fails when a file is stale. It works on a checkout only; an installed Tarebook has no need of it.
"""

import json
import sys
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from tarebook.contract_kinds import fields_ts, kinds_ts, records_py
from tarebook.errors import ERRORS

WEBAPP = Path(__file__).resolve().parents[2] / "webapp"
GENERATED = WEBAPP / "src" / "generated"
RECORDS = "../../../server/tarebook/core/generated/records.py"
HEADER = "// Written by `python -m tarebook.contract`. Do not edit.\n"


def _json(value: Any) -> str:
    return json.dumps(value, indent=2, ensure_ascii=False)


def _table(name: str, rows: Mapping[str, object]) -> str:
    """A constant table, a row a line."""
    lines = "".join(f"  {code}: {json.dumps(row, ensure_ascii=False)},\n" for code, row in rows.items())
    return f"export const {name} = {{\n{lines}}} as const;\n"


def errors_ts(told: str, name: str) -> str:
    """The rows told by one part of the phone, as `[sentence, do]`."""
    return _table(name, {code: (row.sentence, row.do) for code, row in ERRORS.items() if row.told == told})


def units_ts() -> str:
    from tarebook.core.numbers.quantity import unit_table

    return f"""{HEADER}
export type Kind = "mass" | "length" | "volume";
/** `ratio`: one unit in SI, numerator and denominator. `words`: how people write it. */
export type Unit = {{
  ratio: readonly [string, string];
  label: string;
  places: number;
  most_places: number;
  metric: boolean;
  words: readonly string[];
}};
export type Dimension = {{
  si: string;
  example: string;
  most: readonly [number, string];
  asked: readonly string[];
  smaller: Readonly<Record<string, string>>;
  unclear: Readonly<Record<string, readonly string[]>>;
  units: Readonly<Record<string, Unit>>;
}};

export const DIMENSIONS: Readonly<Record<Kind, Dimension>> = {_json(unit_table())};
"""


def sentences() -> Iterator[tuple[str, str]]:
    """What rooms of the core are told in, a file each: not every screen needs every one."""
    from tarebook.core.causes.cause_words import CAUSE_SENTENCES
    from tarebook.core.fuel_run.fuel_words import FUEL_SENTENCES
    from tarebook.core.fusion.fusion_words import FUSION_SENTENCES
    from tarebook.core.standing.sentences import SENTENCES
    from tarebook.core.weighing.lesson_words import LESSON_SENTENCES
    from tarebook.core.weighing.worked_out import WORKED_OUT_SENTENCES

    yield "sentences.ts", f"{HEADER}\n{_table('SENTENCES', SENTENCES)}"
    yield "causeSentences.ts", f"{HEADER}\n{_table('CAUSE_SENTENCES', CAUSE_SENTENCES)}"
    yield "fuelSentences.ts", f"{HEADER}\n{_table('FUEL_SENTENCES', FUEL_SENTENCES)}"
    yield "fusionSentences.ts", f"{HEADER}\n{_table('FUSION_SENTENCES', FUSION_SENTENCES)}"
    yield "lessonSentences.ts", f"{HEADER}\n{_table('LESSON_SENTENCES', LESSON_SENTENCES)}"
    yield "workedOutSentences.ts", f"{HEADER}\n{_table('WORKED_OUT_SENTENCES', WORKED_OUT_SENTENCES)}"


def slips_ts() -> str:
    from tarebook.core.causes import priors

    tables = ("PRIORS", "FACTORS", "RATES", "SPREADS", "RANGES")
    numbers = ("SAME_PART", "ALIKE")
    lists = ("UNSPECIFIC", "SOMEBODY")
    rows = "\n".join(_table(name, getattr(priors, name)) for name in tables)
    rest = "".join(f"export const {name} = {_json(getattr(priors, name))};\n" for name in numbers)
    both = "".join(f"export const {name} = {json.dumps(getattr(priors, name))} as const;\n" for name in lists)
    return f"{HEADER}\n{rows}\n{rest}{both}"


def routes() -> str:
    from tarebook.api.app import openapi_document
    from tarebook.api.typescript import routes_ts

    return f"{HEADER}\n{routes_ts(openapi_document())}"


def everything() -> Iterator[tuple[str, str]]:
    """(file name, content) of every generated file; those that need least come first."""
    yield "errors.ts", f"{HEADER}\n{errors_ts('first', 'ERRORS')}"
    yield "laterErrors.ts", f"{HEADER}\n{errors_ts('later', 'LATER_ERRORS')}"
    yield "kinds.ts", HEADER + kinds_ts()
    yield "fields.ts", HEADER + fields_ts()
    yield RECORDS, records_py()
    yield "units.ts", units_ts()
    yield from sentences()
    yield "slipPriors.ts", slips_ts()
    yield "routes.ts", routes()


def stale() -> list[str]:
    """Names of the generated files that differ from what would be written now."""
    return [name for name, text in everything() if _read(GENERATED / name) != text]


def _read(path: Path) -> str:
    return path.read_text(encoding="utf-8") if path.exists() else ""


def main(arguments: list[str]) -> int:
    if arguments == ["--check"]:
        old = stale()
        print(f"stale: {', '.join(old)}; run python -m tarebook.contract" if old else "generated files are up to date")
        return 1 if old else 0
    GENERATED.mkdir(parents=True, exist_ok=True)
    for name, text in everything():
        (GENERATED / name).write_text(text, encoding="utf-8")
        print(f"wrote {name}")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
