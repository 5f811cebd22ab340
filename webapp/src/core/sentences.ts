/**
 * The plain sentences a standing is told in, from one table of templates.
 *
 * A sentence here is what a person reads first, so it says one thing: how far above or under the minimum, or that it is
 * too close to call. Where a part without a weight has moved since the weigh-in, no sentence is sure of anything: it
 * says what is weighed, and which way the truth may lie. The table is the server's own (`server/tarebook/core/sentences.py`), in `generated/sentences`.
 */

import { describe } from "../generated/errors";
import { SENTENCES } from "../generated/sentences";
import { type Gap, isSignificant } from "./gap";
import type { OfficialReading } from "./official";
import type { Warned } from "./records";
import { type Piece, layOut, showChance, showGuard, showMass } from "./shown";
import type { Since } from "./since";
import type { Standing } from "./standing";
import { type Uncertain, expanded } from "./uncertain";

/** `code` of the table, or of the error table where a reason is told; `data` as texts; `text` ready to read. */
export type Said = { readonly code: string; readonly data: Readonly<Record<string, string>>; readonly text: string };

/** How far from the minimum, in one sentence; or what is missing to tell. `unit`: a unit of mass. */
export function marginSentence(standing: Standing, unit: string): Said {
  const { margin, verdict, official } = standing;
  if (margin === null || verdict === null) return missing(standing, unit);
  const moved = movedSince(standing.since);
  const ending = moved ? "_as_weighed" : "";
  if (verdict === "close" && official) {
    const chance = official.chance_under;
    return said(`${chance > 0.5 ? "probably_under" : "close"}${ending}`, { chance: showChance(chance), ...moved });
  }
  const { mass, within } = sizeOf(margin, unit);
  return said(`${margin.value > 0 ? "above" : "under"}${ending}`, { mass, ...(moved ?? { within }) });
}

/** What to keep above the minimum, rounded up, to about a digit more than the expected reading is known to. */
export function inHandSentence(reading: OfficialReading, unit: string): Said {
  if (reading.in_hand <= 0) return said("in_hand_none", {});
  return said("in_hand", { mass: showGuard(reading.in_hand, unit, expanded(reading.expected) / 5) });
}

/** What went in or came out since without a weight; null when everything has one. */
export function movedSince(since: Since | null): { moved: string } | null {
  const [out, put] = [since?.unweighed_out.length ?? 0, since?.unweighed_in.length ?? 0];
  if (out + put === 0) return null;
  const many = out + put === 1 ? "one" : "more";
  const way = out && put ? "both_ways" : (`${out ? "out" : "in"}_${many}` as const);
  return { moved: filled(SENTENCES[way], { count: `${out + put}` }) };
}

/** What the last two weigh-ins found beside what is written down. */
export function gapSentence(gap: Gap, unit: string): Said {
  if (!isSignificant(gap)) return said("gap_none", {});
  const { difference } = gap;
  const mass = showMass(Math.abs(difference.value), unit, expanded(difference));
  return said(difference.value > 0 ? "gap_more" : "gap_less", { mass });
}

function missing({ reasons, removed }: Standing, unit: string): Said {
  const { code, data } = reasons.margin as Warned;
  if (code === "no_weigh_in") {
    if (removed.value === 0) return said("unweighed", {});
    return said(removed.value > 0 ? "lighter" : "heavier", sizeOf(removed, unit));
  }
  if (code === "no_class_sheet" || code === "no_minimum") return said("no_minimum", {});
  const why = describe(code, data).sentence.replace(/\.$/, "");
  if (data["list"] !== "class_sheets") return { code, data: {}, text: why };
  return said(data["field"] === "adders" ? "adders_unread" : "minimum_unread", { why });
}

/** The size without its sign, and its expanded uncertainty, both to the place that deserves showing. */
export function sizeOf(item: Uncertain, unit: string): { mass: string; within: string } {
  const shown = layOut("mass", Math.abs(item.value), unit, expanded(item));
  return { mass: join(shown.parts), within: join(shown.within) || showMass(0, unit) };
}

function join(parts: readonly Piece[]): string {
  return parts.map(([digits, unit]) => `${digits} ${unit}`).join(" ");
}

function said(code: keyof typeof SENTENCES, data: Readonly<Record<string, string>>): Said {
  return { code, data, text: filled(SENTENCES[code], data) };
}

export function filled(template: string, data: Readonly<Record<string, string>>): string {
  return template.replace(/\{(\w+)\}/g, (_, name: string) => data[name] ?? "");
}
