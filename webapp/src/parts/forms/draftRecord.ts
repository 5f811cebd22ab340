/** Between a draft, whose keys are named as a record's fields, and that record: what is typed with its unit, and back. */
import { type Measure, unitOf } from "../../garage/units";
import { type Changes, type Field, type FieldName, KINDS, type KindName, type Values } from "../../journal/kinds";
import type { Value } from "../../journal/types";
import { placed, sidesOf } from "../words/place";
import { typedOf } from "../words/reading";

type Units = Partial<Record<Measure, string>>;

/** What a draft says of these fields; nothing of what is empty. `units`: what bare numbers are in. */
export function setOf<K extends KindName, N extends FieldName<K>>(
  kind: K,
  draft: Partial<Record<NoInfer<N>, Value>>,
  names: readonly N[],
  units: Units = {},
): Changes<K> {
  const said = names.map((name) => [name, kept(KINDS[kind]!.fields[name]!, draft[name] ?? "", units)] as const);
  return Object.fromEntries(said.filter(([, value]) => value !== "")) as Changes<K>;
}

/** A field's value as its record keeps it: a bare number with the unit it was read in. */
export function keptValue(kind: string, name: string, value: Value): Value {
  const field = KINDS[kind]!.fields[name];
  return field && value !== null ? kept(field, value, {}) : value;
}

function kept({ type }: Field, value: Value, units: Units): Value {
  if (typeof value !== "string") return value;
  if (type !== "mass" && type !== "length" && type !== "volume") return value.trim();
  const { far, minus } = type === "length" ? sidesOf(value) : { far: value, minus: false };
  return placed(typedOf(type, far, units[type] ?? unitOf(type)), minus);
}

/** Fields of a record as a draft takes them: all texts, "" where there is none. */
export function textsOf<K extends KindName, N extends FieldName<K>>(
  values: Values<K>,
  names: readonly N[],
): Record<N, string> {
  return Object.fromEntries(names.map((name) => [name, String(values[name] ?? "")])) as Record<N, string>;
}
