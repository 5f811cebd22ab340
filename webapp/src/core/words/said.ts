/** Plain sentences from tables of templates, one table a room, written from the server's own. */

import { describe, fill } from "../../errors";
import type { Warned } from "../garage/records";
import { layOut, type Piece, showMass } from "../numbers/shown";
import { expanded, type Uncertain } from "../numbers/uncertain";

/** `code` of a room's table, or of the error table where a reason is told; `data` as texts; `text` ready to read. */
export type Said = { readonly code: string; readonly data: Readonly<Record<string, string>>; readonly text: string };

/** Tells by the templates of a room; `{name}` in one is filled from the data. */
export function teller<Code extends string>(templates: Readonly<Record<Code, string>>) {
  return (code: Code, data: Said["data"] = {}): Said => ({ code, data, text: fill(templates[code], data) });
}

/** Why something cannot be told: the error table's sentence, without its full stop. */
export function missed({ code, data }: Warned): Said {
  return { code, data: {}, text: describe(code, data).sentence.replace(/\.$/, "") };
}

/** The size without its sign, and its expanded uncertainty, both to the place that deserves showing. */
export function sizeOf(item: Uncertain, unit: string): { mass: string; within: string } {
  const shown = layOut("mass", Math.abs(item.value), unit, expanded(item));
  return { mass: join(shown.parts), within: join(shown.within) || showMass(0, unit) };
}

function join(parts: readonly Piece[]): string {
  return parts.map(([digits, unit]) => `${digits} ${unit}`).join(" ");
}
