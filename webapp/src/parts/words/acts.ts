/** What was done, in a few words: for the line that offers to take it back, and for a record's history. */

import { garage } from "../../garage/garage";
import { KINDS } from "../../journal/kinds";
import type { Entry, Value } from "../../journal/types";
import { fieldWord, labelOf, valueWords } from "./fieldWords";
import { kindWord, nameOf, refName, sentenceCase } from "./naming";

/** One act: "Fitted: Rear seat out", "Hours: 2", "Rear seat deleted". `begins`: it made the record. */
export function actWords({ kind, record, set }: Entry, begins: boolean): string {
  const rec = garage.value.byId.get(record);
  const name = rec ? nameOf(rec) : kindWord(kind);
  const isFact = KINDS[kind]?.fact === true;
  if (kind === "omission" && (begins || set.deleted === true))
    return begins ? "A reading left out" : "A reading counts again";
  if (set.deleted === true) return `${sentenceCase(name)} ${isFact ? "withdrawn" : "deleted"}`;
  if (set.deleted === false) return `${sentenceCase(name)} brought back`;
  if (kind === "photo" && !begins && set.of) return `Photo moved to ${refName(set.of)}`;
  if (begins) return begunWords(kind, name, set);
  const fields = Object.keys(set);
  if (kind === "job" && typeof set.state === "string")
    return `${sentenceCase(valueWords(kind, "state", set.state))}: ${name}`;
  if (fields.length === 1) return fieldWords(kind, fields[0]!, set[fields[0]!]!);
  const more = fields.length - 1;
  return `${fieldWords(kind, fields[0]!, set[fields[0]!]!)}, and ${more} more`;
}

/** A field as it was set: "Hours: 2". */
export function fieldWords(kind: string, field: string, value: Value): string {
  const label = labelOf(kind, field) || sentenceCase(fieldWord(kind, field));
  return value === null ? `${label}: cleared` : `${label}: ${valueWords(kind, field, value)}`;
}

function begunWords(kind: string, name: string, set: Entry["set"]): string {
  if (kind === "weighing") return set.replaces ? `${sentenceCase(name)} replaced` : `${sentenceCase(name)} saved`;
  if (kind === "photo") return `Photo of ${refName(set.of)} added`;
  if (KINDS[kind]?.fact) return `${sentenceCase(kindWord(kind))} saved`;
  return `${sentenceCase(name)} added`;
}
