/** What was typed into a form and cannot be read: said before it is saved, so that nothing counts as nothing unnoticed. */
import { likely } from "../../core/garage/fieldValues";
import { read } from "../../core/numbers/quantity";
import { AppError } from "../../errors";
import { type Field, KINDS } from "../../generated/kinds";
import type { Value } from "../../journal/types";
import { fieldWord } from "../words/fieldWords";
import { readingOf } from "../words/reading";
import { type Measure, unitOf } from "../words/units";

const MEASURES: readonly string[] = ["mass", "length", "volume"];
const DECIMAL = /^\d{1,15}(\.\d{1,9})?$/;

/** A sentence naming the first field that cannot be read and what to type; null when all can. */
export function unreadable(kind: string, typed: Record<string, Value>): string | null {
  for (const [name, value] of Object.entries(typed)) {
    const field = KINDS[kind]?.fields[name];
    const trouble = field && typeof value === "string" ? troubleIn(name, field, value) : null;
    if (trouble) return `${fieldWord(name)}: ${trouble}`;
  }
  return null;
}

/** Why no car has a length as its `name`; null while nothing can be read, as the reading says that itself. */
export function unlikely(name: string, text: string): string | null {
  const reading = readingOf("length", text, unitOf("length"));
  return reading.state === "read" ? troubleIn(name, KINDS["car"]!.fields[name]!, text) : null;
}

function troubleIn(name: string, { type }: Field, text: string): string | null {
  if (type === "money" || type === "hours" || type === "fraction")
    return DECIMAL.test(text) ? null : "type a plain number with a point, such as 2.5.";
  if (!MEASURES.includes(type)) return null;
  const measure = type as Measure;
  try {
    likely(name, read(measure, text, unitOf(measure), false, measure === "length"));
    return null;
  } catch (error) {
    return error instanceof AppError ? `${error.sentence} ${error.do}` : null;
  }
}
