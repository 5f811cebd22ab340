/**
 * The plain sentences a standing is told in, from one table of templates.
 *
 * A sentence here is what a person reads first, so it says one thing: how far above or under the minimum, or that it is
 * too close to call. Where a part without a weight has moved since the weigh-in, no sentence is sure of anything: it
 * says what is weighed, and which way the truth may lie. The table is the server's own
 * (`server/tarebook/core/standing/sentences.py`), in `generated/sentences`.
 */

import { SENTENCES } from "../../generated/sentences";
import { type Warned, warned } from "../garage/records";
import type { Since } from "../ledger/since";
import { showChance, showInHand, showMass } from "../numbers/shown";
import { expanded } from "../numbers/uncertain";
import { missed, type Said, sizeOf, teller } from "../words/said";
import type { Foretold } from "./foretold";
import { type Gap, isSignificant } from "./gap";
import type { Past } from "./history";
import type { OfficialReading } from "./official";
import type { Standing } from "./standing";

const EVEN_ODDS = 0.5;
const said = teller(SENTENCES);

/** How far from the minimum, in one sentence; or what is missing to tell. `unit`: a unit of mass. */
export function marginSentence(standing: Standing, unit: string): Said {
  const { margin, verdict, official } = standing;
  if (margin === null || verdict === null) return missing(standing, unit);
  const moved = movedSince(standing.since);
  const ending = moved ? "_as_weighed" : "";
  if (verdict === "close" && official) {
    const chance = official.chance_under;
    return said(`${chance > EVEN_ODDS ? "probably_under" : "close"}${ending}`, {
      chance: showChance(chance),
      ...moved,
    });
  }
  const { mass, within } = sizeOf(margin, unit);
  return said(`${margin.value > 0 ? "above" : "under"}${ending}`, { mass, ...(moved ?? { within }) });
}

/** What to keep above the minimum. */
export function inHandSentence(reading: OfficialReading, unit: string): Said {
  if (reading.in_hand <= 0) return said("in_hand_none");
  return said("in_hand", { mass: showInHand(reading.in_hand, unit, expanded(reading.expected)) });
}

/** What went in or came out since without a weight; null when everything has one. */
export function movedSince(since: Since | null): { moved: string } | null {
  return since && movedOf(since.unweighed_out.length, since.unweighed_in.length, ["out", "in", "both_ways"]);
}

type MovedWords = readonly ["out", "in", "both_ways"] | readonly ["off", "on", "off_and_on"];

/** So many parts off and on, told with the sentences named for the one, the other, and both. */
function movedOf(off: number, on: number, [one, other, both]: MovedWords): { moved: string } | null {
  if (off + on === 0) return null;
  const way = off && on ? both : (`${off ? one : other}_${off + on === 1 ? "one" : "more"}` as const);
  return { moved: said(way, { count: `${off + on}` }).text };
}

/** What two weigh-ins found beside what is written down, as a headline. */
export function gapSentence(gap: Gap, unit: string): Said {
  if (!isSignificant(gap)) return gapLine(gap, unit);
  const { difference } = gap;
  const mass = showMass(Math.abs(difference.value), unit, expanded(difference));
  return said(difference.value > 0 ? "gap_more" : "gap_less", { mass });
}

/** The same as one of a list, with whether there is anything to look for. */
export function gapLine(gap: Gap, unit: string): Said {
  const way = gap.difference.value > 0 ? "more" : "less";
  return said(isSignificant(gap) ? `gap_line_${way}` : `gap_fits_${way}`, sizeOf(gap.difference, unit));
}

/** What was foretold of a weigh-in, and what came of it. */
export function foretoldSentence({ expected, read, inside }: Foretold, unit: string): Said {
  const [mass, shown] = [expected, read].map((each) => showMass(each.value, unit, expanded(each))) as [string, string];
  return said(inside ? "foretold_inside" : "foretold_outside", { mass, read: shown });
}

/** How often the word given before an official weigh-in held; null while none was given. */
export function scoreSentence(history: readonly Past[]): Said | null {
  const told = history.flatMap(({ foretold }) => (foretold ? [foretold.inside] : []));
  if (told.length === 0) return null;
  return said("foretold_score", { inside: `${told.filter(Boolean).length}`, all: `${told.length}` });
}

function missing(standing: Standing, unit: string): Said {
  const reason = standing.reasons.margin as Warned;
  if (reason.code === "no_weigh_in") return byJobs(standing, unit);
  const why = missed(reason);
  if (reason.data.list !== "class_sheets") return why;
  return said(reason.data.field === "adders" ? "adders_unread" : "minimum_unread", { why: why.text });
}

/** Without a weigh-in: what the jobs in the car made of it, and which of their parts have no weight. */
function byJobs({ removed, unweighed_off: off, unweighed_on: on }: Standing, unit: string): Said {
  if (removed.value === 0) return missed(warned("no_weigh_in"));
  const code = removed.value > 0 ? "lighter" : "heavier";
  const moved = movedOf(off.length, on.length, ["off", "on", "off_and_on"]);
  const { mass, within } = sizeOf(removed, unit);
  return moved ? said(`${code}_as_weighed`, { mass, ...moved }) : said(code, { mass, within });
}
