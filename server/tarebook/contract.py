"""Writes what the phone shares with the server: `webapp/src/generated/`.

The error table, the kinds of record, the units, the OpenAPI document and the types made from it. Run
`python -m tarebook.contract` after changing any of them, and commit what it wrote; `--check` writes nothing
and fails when a file is stale. It works on a checkout only; an installed Tarebook has no need of it.
"""

from __future__ import annotations

import json
import subprocess
import sys
import tempfile
from collections.abc import Iterator, Mapping
from dataclasses import asdict
from pathlib import Path
from typing import Any

from tarebook.error_row import ErrorRow
from tarebook.error_table import ONLY_AT_HOME
from tarebook.error_table_balance import BALANCE
from tarebook.error_table_beside import BESIDE
from tarebook.error_table_fuel import FUEL
from tarebook.error_table_stock import STOCK
from tarebook.errors import ERRORS
from tarebook.journal import kinds

WEBAPP = Path(__file__).resolve().parents[2] / "webapp"
GENERATED = WEBAPP / "src" / "generated"
HEADER = "// Written by `python -m tarebook.contract`. Do not edit.\n"


def _json(value: Any) -> str:
    return json.dumps(value, indent=2, ensure_ascii=False)


# What only screens opened later tell comes with the rooms of the core that say it, and with `parts/Warnings`.
LATER = {**BALANCE, **BESIDE, **STOCK, **FUEL}


def later_errors_ts() -> str:
    return f"""{HEADER}
import {{ addErrors }} from "./errors";

export const LATER_ERRORS = {_rows(LATER)} as const;

addErrors(LATER_ERRORS);
"""


def _rows(rows: Mapping[str, ErrorRow]) -> str:
    return _json({code: {"sentence": row.sentence, "do": row.do} for code, row in rows.items()})


def errors_ts() -> str:
    rows = {code: row for code, row in ERRORS.items() if code not in ONLY_AT_HOME and code not in LATER}
    return f"""{HEADER}
import type {{ LATER_ERRORS }} from "./laterErrors";

export const ERRORS = {_rows(rows)} as const;

type Row = {{ readonly sentence: string; readonly do: string }};
const known: Record<string, Row> = {{ ...ERRORS }};

/** Takes in rows that come with what tells them: the first screen does without. */
export function addErrors(rows: Readonly<Record<string, Row>>): void {{
  Object.assign(known, rows);
}}

export type ErrorCode = keyof typeof ERRORS | keyof typeof LATER_ERRORS;
export type ErrorData = Record<string, unknown>;
export type Described = {{ code: ErrorCode; sentence: string; do: string; data: ErrorData }};

function fill(text: string, data: ErrorData): string {{
  return text.replace(/\\{{(\\w+)\\}}/g, (whole, name: string) => (name in data ? String(data[name]) : whole));
}}

/** The error as every answer of the server carries it. */
export function describe(code: ErrorCode, data: ErrorData = {{}}): Described {{
  const row = known[code] as Row;
  return {{ code, sentence: fill(row.sentence, data), do: fill(row.do, data), data }};
}}

export class AppError extends Error {{
  readonly code: ErrorCode;
  readonly data: ErrorData;
  readonly sentence: string;
  readonly do: string;

  constructor(code: ErrorCode, data: ErrorData = {{}}, described = describe(code, data)) {{
    super(described.sentence);
    this.name = "AppError";
    this.code = code;
    this.data = data;
    this.sentence = described.sentence;
    this.do = described.do;
  }}

  /** Reads `{{"error": {{code, sentence, do, data}}}}`, an answer of the server; null when it is something else. */
  static fromBody(body: unknown): AppError | null {{
    const error = (body as {{ error?: Partial<Described> }} | null)?.error;
    if (typeof error?.code !== "string") return null;
    const {{ code, data = {{}} }} = error;
    if (Object.hasOwn(known, code)) return new AppError(code, data);
    // A code this app has no row for brings its own words.
    return typeof error.sentence === "string" ? new AppError(code, data, {{ do: "", ...error }} as Described) : null;
  }}
}}
"""


def kinds_ts() -> str:
    table = {
        name: {"fact": kind.fact, "fields": {key: asdict(spec) for key, spec in kind.fields.items()}}
        for name, kind in kinds.KINDS.items()
    }
    lists = {"MASS_UNITS": kinds.MASS_UNITS, "ZONES": kinds.ZONES, "HAZARDS": kinds.HAZARDS}
    constants = "\n".join(f"export const {name} = {_json(list(items))} as const;" for name, items in lists.items())
    return f"""{HEADER}
export type FieldType =
  | "text" | "mass" | "length" | "volume" | "money" | "hours" | "fraction" | "count" | "flag" | "choice"
  | "choices" | "ref" | "refs" | "moment" | "hash" | "integer";
export type Field = {{ type: FieldType; of: readonly string[]; most: number; required: boolean }};
export type Kind = {{ fact: boolean; fields: Readonly<Record<string, Field>> }};

export const SCHEMA = {kinds.SCHEMA};
{constants}

export const KINDS: Readonly<Record<string, Kind>> = {_json(table)};
"""


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


def sentences_ts() -> str:
    from tarebook.core.standing.sentences import SENTENCES

    return f"""{HEADER}
/** What a standing is told in; `{{name}}` in a sentence is filled by core/standing/sentences. */
export const SENTENCES = {_json(SENTENCES)} as const;
"""


def fusion_sentences_ts() -> str:
    from tarebook.core.fusion.fusion_words import FUSION_SENTENCES

    return f"""{HEADER}
/** What does not fit among the weigh-ins is told in; `{{name}}` in a sentence is filled by core/fusion/fusionWords. */
export const FUSION_SENTENCES = {_json(FUSION_SENTENCES)} as const;
"""


def fuel_sentences_ts() -> str:
    from tarebook.core.fuel_run.fuel_words import FUEL_SENTENCES

    return f"""{HEADER}
/** What a run on fuel is told in; `{{name}}` in a sentence is filled by core/fuelRun/fuelWords. */
export const FUEL_SENTENCES = {_json(FUEL_SENTENCES)} as const;
"""


def openapi_json() -> str:
    from tarebook.api.app import openapi_document

    return _json(openapi_document()) + "\n"


def api_ts(document: str) -> str:
    """The document's types, by openapi-typescript (a development dependency of webapp)."""
    program = WEBAPP / "node_modules" / ".bin" / "openapi-typescript"
    with tempfile.TemporaryDirectory() as folder:
        source, target = Path(folder) / "openapi.json", Path(folder) / "api.ts"
        source.write_text(document, encoding="utf-8")
        command = [str(program), str(source), "-o", str(target), "--default-non-nullable=false"]
        subprocess.run(command, check=True, stdout=subprocess.DEVNULL, cwd=WEBAPP)
        return HEADER + target.read_text(encoding="utf-8")


def everything() -> Iterator[tuple[str, str]]:
    """(file name, content) of every generated file; those that need least come first."""
    yield "errors.ts", errors_ts()
    yield "laterErrors.ts", later_errors_ts()
    yield "kinds.ts", kinds_ts()
    yield "units.ts", units_ts()
    yield "sentences.ts", sentences_ts()
    yield "fuelSentences.ts", fuel_sentences_ts()
    yield "fusionSentences.ts", fusion_sentences_ts()
    document = openapi_json()
    yield "openapi.json", document
    yield "api.ts", api_ts(document)


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
