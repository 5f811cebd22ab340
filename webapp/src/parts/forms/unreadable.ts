/** What was typed into a form and cannot be read: said before it is saved, so that nothing counts as nothing unnoticed. */
import { likely } from "../../core/garage/fieldValues";
import { read } from "../../core/numbers/quantity";
import { AppError } from "../../errors";
import { type Measure, unitOf } from "../../garage/units";
import { type Field, KINDS, type KindName } from "../../journal/kinds";
import type { Value } from "../../journal/types";
import { fieldWord } from "../words/fieldWords";
import { readingOf } from "../words/reading";

const MEASURES: readonly string[] = ["mass", "length", "volume"];
const DECIMAL = /^\d{1,15}(\.\d{1,9})?$/;

/** A sentence naming the first field that cannot be read and what to type; null when all can. */
export function unreadable(kind: KindName, typed: Record<string, Value>): string | null {
  for (const [name, value] of Object.entries(typed)) {
    const field = KINDS[kind]!.fields[name];
    const trouble = field && typeof value === "string" ? troubleIn(field, value) : null;
    if (trouble) return `${fieldWord(kind, name)}: ${trouble}`;
  }
  return null;
}

/** Why no car has a length as this field; null while nothing can be read, as the reading says that itself. */
export function unlikely(field: Field, text: string): string | null {
  if (!field.likely) return null;
  const reading = readingOf("length", text, unitOf("length"));
  return reading.state === "read" ? troubleIn(field, text) : null;
}

/** Why a text cannot be read as a field has it, with what to type. */
export function troubleIn(field: Field, text: string): string | null {
  const { type } = field;
  if (type === "money" || type === "hours" || type === "fraction")
    return DECIMAL.test(text) ? null : "type a plain number with a point, such as 2.5.";
  if (!MEASURES.includes(type)) return null;
  const measure = type as Measure;
  try {
    likely(field, read(measure, text, unitOf(measure), false, measure === "length"));
    return null;
  } catch (error) {
    return error instanceof AppError ? `${error.sentence} ${error.do}` : null;
  }
}
