/** What two phones disagree about, in words. */
import type { Rec, Value } from "../../garage/garage";
import { actNamed } from "../../garage/undo";
import { asideOn, type Dispute, disputesOn } from "../../garage/unsettled";
import { KINDS } from "../../journal/kinds";
import type { Head } from "../../journal/types";
import { deviceName } from "../words/deviceNames";
import { isLongText, valueWords } from "../words/fieldWords";
import { kindWord } from "../words/naming";

/** "1 to settle · 2 do not count" on a record's line; empty where all is well. */
export function unsettledWords(id: string): string {
  const [open, aside] = [disputesOn(id).length, asideOn(id).length];
  return [open && `${open} to settle`, aside && `${aside} not counted`].filter(Boolean).join(" · ");
}

/** "Deleted on Ben's phone, weighed on this phone meanwhile." */
export function deletionWords(rec: Rec): string {
  const claims = rec.conflicts.deleted ?? [];
  const gone = claims.filter(({ value }) => value === true).map(({ device }) => `on ${deviceName(device)}`);
  const work = claims.filter(({ value }) => value !== true).map((claim) => `${workWords(rec, claim)}`);
  const begun = KINDS[rec.kind]?.fact ? "Withdrawn" : "Deleted";
  return `${begun} ${once(gone)}, ${once(work)} meanwhile.`;
}

/** A claim as its button says it. */
export function claimWords({ rec, field }: Dispute, value: Value): string {
  if (field !== "deleted") return valueWords(rec.kind, field, value);
  if (value !== true) return "Keep it";
  return KINDS[rec.kind]?.fact ? "Withdraw it all the same" : "Delete it all the same";
}

/** All the texts, one below the other; null where they are not of that sort, or too long together. */
export function bothTexts({ rec, field, claims }: Dispute): string | null {
  const spec = KINDS[rec.kind]?.fields[field];
  const texts = claims.map(({ value }) => value).filter((value) => typeof value === "string" && value !== "");
  const both = texts.join("\n");
  return spec && isLongText(spec) && texts.length > 1 && both.length <= spec.most! ? both : null;
}

function workWords(rec: Rec, { entry, device }: Head): string {
  const work = actNamed(entry)?.entry;
  return `${work ? workOf(rec, work.kind, work.set) : "changed"} on ${deviceName(device)}`;
}

function workOf(rec: Rec, kind: string, set: Record<string, Value>): string {
  if (kind === "weighing" && rec.kind !== "weighing") return "weighed";
  if (kind !== rec.kind) return `${kindWord(kind)} added`;
  return set.deleted === false ? "kept" : "changed";
}

function once(words: readonly string[]): string {
  return [...new Set(words)].join(" and ");
}
