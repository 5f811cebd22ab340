/** What was typed into a form and does not count: it cannot be read, or it is asked about first. */
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

/** `why`: a sentence with what to type. `isAsked`: it can be read, and is kept once somebody says that it is meant. */
export type Unkept = { why: string; isAsked: boolean };

/** A sentence naming the first field that cannot be read and what to type; null when all can. */
export function unreadable(kind: KindName, typed: Record<string, Value>): string | null {
  for (const [name, value] of Object.entries(typed)) {
    const field = KINDS[kind]!.fields[name];
    const trouble = field && typeof value === "string" ? troubleIn(field, value) : null;
    if (trouble) return `${fieldWord(kind, name)}: ${trouble}`;
  }
  return null;
}

/** Why a field's text is no entry, or null: it may be kept. */
export function unkeptIn(kind: KindName, name: string, typed: { value: Value; asked?: true }): Unkept | null {
  const field = KINDS[kind]!.fields[name];
  const { value, asked } = typed;
  if (!field) return null;
  const isEmpty = value === null || (typeof value === "string" && value.trim() === "");
  if (isEmpty) return field.required ? { why: "This cannot be left empty.", isAsked: false } : null;
  if (typeof value !== "string") return null;
  const trouble = troubleIn(field, value);
  if (!trouble) return null;
  const isAsked = unlikely(field, value) !== null;
  return isAsked && asked ? null : { why: trouble, isAsked };
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
