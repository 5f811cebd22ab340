/**
 * Reads a garage: lists of plain records by plural kind in, typed and cross-referenced records out.
 *
 * This is where data stops being text. What it takes is what `calc` and the export speak: `{"parts": [{"id", ...}],
 * ...}` with the fields of `journal/kinds`, and `car` and `trim` beside the lists. Nothing in such data can throw: a
 * value that cannot be read, a reference that leads nowhere or a record without its essentials becomes a warning, and
 * as little as possible is left out. Records are taken in order of id, so the order of the lists never matters.
 */

import type { ErrorCode } from "../../errors";
import { type Field, KINDS } from "../../journal/kinds";
import { QuantityError } from "../numbers/quantity";
import { corrected } from "./corrections";
import { Misfit, readField } from "./fieldValues";
import { order } from "./order";
import { type Garage, type Warned, warned } from "./records";

/** The fields of each kind that the core reads, in the order of the kinds: a required reference leads to one before it. */
const WANTED: Readonly<Record<string, readonly string[]>> = Object.fromEntries(
  Object.entries(KINDS)
    .filter(([, kind]) => !kind.kept)
    .map(([name, { fields }]) => [name, Object.keys(fields).filter((field) => !fields[field]!.kept)]),
);

type Row = { id: string } & Record<string, unknown>;
type Rows = Map<string, Row>;
type Given = Readonly<Record<string, unknown>>;

// Taken off the lists people choose from, yet what was weighed stays weighed.
export const OUTLIVES_DELETION: ReadonlySet<string> = new Set(["driver", "scale"]);
const NOT_FIELDS = new Set(["id", "deleted", "conflicts"]);

/** The typed garage. `given`: lists by plural kind, optionally `car` (an id) and `trim` ("road", "event"). */
export function readGarage(given: Given): Garage {
  const reader = new Reader(isObject(given) ? given : {});
  for (const kind of Object.keys(WANTED)) reader.readKind(kind);
  for (const kind of Object.keys(WANTED)) reader.resolve(kind);
  return reader.garage();
}

/**
 * Collects rows and warnings; `rows` holds the values read, `gone` the ids of deleted records, both by kind.
 *
 * `newer`, by kind: any record of a corrected fact → the one of them that counts.
 */
class Reader {
  readonly #given: Given;
  readonly #warnings: Warned[] = [];
  readonly #rows = new Map<string, Rows>();
  readonly #gone = new Map<string, Set<string>>();
  readonly #newer = new Map<string, Map<string, string>>();
  readonly #retired = new Set<string>();
  readonly #unread = new Set<string>(); // "kind id field" of what a warning was given of

  constructor(given: Given) {
    this.#given = given;
  }

  #warn(code: ErrorCode, data: Record<string, unknown>): void {
    this.#warnings.push(warned(code, data));
  }

  #of(kind: string): Rows {
    return this.#rows.get(kind) ?? new Map();
  }

  // Step 1: every value of every record.

  readKind(kind: string): void {
    const rows: Rows = new Map();
    const gone = new Set<string>();
    const older = new Map<string, string>();
    for (const record of this.#listed(kind)) {
      if (rows.has(record.id) || gone.has(record.id)) {
        this.#warn("duplicate_record", { list: `${kind}s`, id: record.id });
      } else if (record.deleted === true && !OUTLIVES_DELETION.has(kind)) {
        gone.add(record.id);
        if (KINDS[kind]?.fact && isId(record.replaces)) older.set(record.id, record.replaces);
      } else {
        rows.set(record.id, this.#row(kind, record, older));
        if (record.deleted === true) this.#retired.add(record.id);
      }
    }
    const newer = this.#newerOf(kind, older, rows);
    for (const [id, row] of rows) {
      if ((newer.get(id) ?? id) !== id || !this.#complete(kind, row)) rows.delete(id);
    }
    this.#rows.set(kind, rows);
    this.#gone.set(kind, gone);
    this.#newer.set(kind, newer);
  }

  #newerOf(kind: string, older: ReadonlyMap<string, string>, rows: Rows): Map<string, string> {
    const newer = new Map<string, string>();
    for (const { all, rivals, counts } of corrected(older, rows)) {
      const ref = rivals.slice(0, -1).join(", ");
      if (ref) this.#warn("corrected_apart", { list: `${kind}s`, id: counts, ref });
      for (const each of all) newer.set(each, counts);
    }
    return newer;
  }

  /** The records of a kind that have an id, in its order. */
  #listed(kind: string): Row[] {
    const given = this.#given[`${kind}s`];
    if (given === undefined || given === null) return [];
    if (!Array.isArray(given)) {
      this.#warn("unreadable_list", { list: `${kind}s` });
      return [];
    }
    const good: Row[] = [];
    given.forEach((record: unknown, position) => {
      if (isObject(record) && isId(record.id)) good.push(record as Row);
      else this.#warn("unreadable_record", { list: `${kind}s`, position });
    });
    return good.sort((a, b) => order(a.id, b.id));
  }

  #row(kind: string, record: Row, older: Map<string, string>): Row {
    const known = fieldsOf(kind);
    const unit = this.#ownUnit(kind, record);
    const row: Row = { ...(EMPTY[kind] as Row), id: record.id };
    for (const name of WANTED[kind] ?? []) {
      if ((record[name] ?? null) === null) continue;
      row[name] = this.#value(kind, record, name, known[name] as Field, unit);
    }
    if (record.replaces !== undefined && KINDS[kind]?.fact) {
      const old = this.#value(kind, record, "replaces", known.replaces as Field, unit);
      if (old !== null) older.set(record.id, old as string);
    }
    this.#nameUnknown(kind, record, known);
    return row;
  }

  #nameUnknown(kind: string, record: Row, known: Readonly<Record<string, Field>>): void {
    const unknown: string[] = [];
    for (const name in record) if (!Object.hasOwn(known, name) && !NOT_FIELDS.has(name)) unknown.push(name);
    unknown.sort();
    for (const field of unknown) this.#warn("unknown_field", { list: `${kind}s`, id: record.id, field });
  }

  #value(kind: string, record: Row, field: string, spec: Field, unit: string | null): unknown {
    const value = record[field];
    if (value === undefined || value === null) return null;
    try {
      return readField(spec, value, unit);
    } catch (error) {
      const where = { list: `${kind}s`, id: record.id, field };
      if (error instanceof QuantityError) this.#warn(error.code, { ...error.data, ...where });
      else if (error instanceof Misfit) this.#warn("unreadable_field", where);
      else throw error;
      this.#unread.add(`${kind} ${record.id} ${field}`);
      return null;
    }
  }

  /** The unit a bare number was typed in: the scale's own, where the record is or names a scale. */
  #ownUnit(kind: string, record: Row): string | null {
    const scale = record.scale;
    const own = kind === "scale" ? record : typeof scale === "string" ? this.#rows.get("scale")?.get(scale) : undefined;
    return typeof own?.unit === "string" ? own.unit : null;
  }

  /** False without a field the record means nothing without (a name is not one); with a warning if it has none. */
  #complete(kind: string, row: Row): boolean {
    const lacking = (REQUIRED[kind] ?? []).filter((field) => row[field] === null);
    const silent = lacking.filter((field) => !this.#unread.has(`${kind} ${row.id} ${field}`));
    for (const field of silent) this.#warn("missing_field", { list: `${kind}s`, id: row.id, field });
    return lacking.length === 0;
  }

  // Step 2: references.

  resolve(kind: string): void {
    const known = fieldsOf(kind);
    const specs = (WANTED[kind] ?? []).map((name) => [name, known[name] as Field] as const);
    const references = specs.filter(([, spec]) => spec.type === "ref" || spec.type === "refs");
    const rows = this.#of(kind);
    for (const row of [...rows.values()]) {
      if (!this.#resolved(kind, row, references)) rows.delete(row.id);
    }
  }

  /** Takes out what leads nowhere; false when the record cannot do without it. */
  #resolved(kind: string, row: Row, references: readonly (readonly [string, Field])[]): boolean {
    let whole = true;
    for (const [name, spec] of references) {
      const to = row[name];
      if (to === null) continue;
      if (spec.type === "refs") {
        row[name] = (to as string[]).filter((one) => this.#leads(kind, row, name, spec, one));
        continue;
      }
      row[name] = this.#newest(spec, to as string);
      if (!this.#leads(kind, row, name, spec, row[name] as string)) {
        row[name] = null;
        whole = whole && !spec.required;
      }
    }
    return whole;
  }

  /** Where a reference leads today: to that record of a corrected fact which counts. */
  #newest(spec: Field, to: string): string {
    return spec.of!.map((target) => this.#newer.get(target)?.get(to)).find((newest) => newest !== undefined) ?? to;
  }

  #leads(kind: string, row: Row, field: string, spec: Field, ref: string): boolean {
    if (spec.of!.some((target) => this.#rows.get(target)?.has(ref))) return true;
    const deleted = spec.of!.some((target) => this.#gone.get(target)?.has(ref));
    this.#warn(deleted ? "dangling_deleted" : "dangling", { list: `${kind}s`, id: row.id, field, ref });
    return false;
  }

  // Step 3: the typed garage.

  garage(): Garage {
    const car = this.#car();
    for (const kind of ["stage", "job", "weigh_in", "ballast_place", "class_sheet"]) {
      this.#keep(kind, (row) => row.car === null || row.car === car);
    }
    for (const kind of ["job_part", "loose_end"]) this.#keep(kind, (row) => this.#of("job").has(row.job as string));
    this.#keep("lift", (row) => this.#of("weigh_in").has(row.weigh_in as string));
    const byKind = Object.fromEntries([...this.#rows].map(([kind, rows]) => [`${kind}s`, rows]));
    const read = {
      ...byKind,
      car: car === null ? null : this.#of("car").get(car),
      trim: this.#trim(),
      retired: this.#retired,
      weighings_of: grouped(this.#of("weighing"), "of"),
      checks_of: grouped(this.#of("scale_check"), "scale"),
      parts_of: grouped(this.#of("job_part"), "job"),
      holes_of: grouped(this.#of("sheet_hole"), "sheet"),
      repeats_of: grouped(this.#of("repeat"), "of"),
      omissions_of: grouped(this.#of("omission"), "of"),
      warnings: this.#warnings,
    };
    return read as unknown as Garage;
  }

  #keep(kind: string, wanted: (row: Row) => boolean): void {
    const rows = this.#of(kind);
    for (const row of [...rows.values()]) if (!wanted(row)) rows.delete(row.id);
  }

  /** The car asked for, else the first by id. */
  #car(): string | null {
    const asked = this.#given.car;
    const cars = this.#of("car");
    if (typeof asked === "string" && cars.has(asked)) return asked;
    if (asked !== undefined && asked !== null) this.#warn("unknown_car", { car: asked });
    return cars.keys().next().value ?? null;
  }

  #trim(): "road" | "event" {
    const asked = this.#given.trim;
    const known = asked === undefined || asked === null || asked === "road" || asked === "event";
    if (!known) this.#warn("unknown_trim", { trim: asked });
    return asked === "event" ? "event" : "road";
  }
}

function fieldsOf(kind: string): Readonly<Record<string, Field>> {
  return KINDS[kind]?.fields ?? {};
}

// Every row is a copy of its kind's empty one, so that all rows of a kind have one shape in memory.
const EMPTY: Readonly<Record<string, Row>> = Object.fromEntries(
  Object.entries(WANTED).map(([kind, wanted]) => {
    return [kind, { id: "", ...Object.fromEntries(wanted.map((name) => [name, null])) }];
  }),
);

const REQUIRED: Readonly<Record<string, readonly string[]>> = Object.fromEntries(
  Object.entries(WANTED).map(([kind, wanted]) => {
    const known = fieldsOf(kind);
    return [kind, wanted.filter((name) => known[name]?.required && known[name].type !== "text")];
  }),
);

function grouped(rows: Rows, name: string): Map<string, Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows.values()) {
    const key = row[name];
    if (typeof key !== "string") continue;
    const group = groups.get(key);
    if (group) group.push(row);
    else groups.set(key, [row]);
  }
  return groups;
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function isId(value: unknown): value is string {
  return typeof value === "string" && /^[\x00-\x7f]{1,80}$/.test(value);
}
