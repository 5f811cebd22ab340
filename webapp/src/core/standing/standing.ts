/**
 * The standing: what the car weighs now, how sure that is, and how far it is from the minimum.
 *
 * It answers for one trim and for the condition the class weighs in. The weight comes through the one door `estimate`;
 * everything else here is comparing it: with the minimum as a mass, with the minimum as the official scale would show
 * it, and with what was weighed and written down before. What cannot be told is null, and `reasons` says why, by name:
 * weight, margin, start, gap.
 */

import { own } from "../../own";
import { type ClassSheet, type Garage, type Warned, type WeighIn, warned } from "../garage/records";
import { type JobNet, massTotal } from "../ledger/net";
import { piecesBetween, type Since } from "../ledger/since";
import { add, toNumber, ZERO } from "../numbers/ratio";
import { beyondDoubt, scale, subtract, type Uncertain, u, uncertain } from "../numbers/uncertain";
import { type Masses, masses } from "../weighing/weighing";
import { type Condition, conditionWarnings, isWarned } from "../wholeCar/condition";
import type { Now, Weighed } from "../wholeCar/weighed";
import { type Estimate, estimate, type Fused } from "./estimate";
import { type Gap, gapBetween, gapsInOrder } from "./gap";
import { type Given, givenBy } from "./given";
import { type Past, pastOf, type Start, startOf } from "./history";
import { expectedReading, type OfficialReading, officialReading, officialScale } from "./official";

const RISK = 0.05; // of being shown under the minimum, when the class sheet names none: an assumption, no source

export type Verdict = "above" | "under" | "close" | "unweighed";
export type Answer = "weight" | "margin" | "start" | "gap";

/**
 * Masses in kg. `minimum` has its adders in it; `margin` = weight − minimum.
 *
 * `fused`: what the weight is made of; `since` the last weigh-in in it. `official.in_hand` is what to keep above the
 * minimum for `risk`. `ballast`: what is on board now, and in the weight: the blocks fitted, else as at that weigh-in.
 * `removed`: net of the jobs in the car now, positive when it got lighter; `unweighed_off`, `unweighed_on`: parts those
 * took off or put on that have no weight. `history`: every weigh-in in order; `gaps` between those that can be held
 * against each other, `gap` between the last two. `verdict`: "above" or "under" the minimum when the margin is beyond
 * its expanded uncertainty (k = 2) and, for above, the chance of being shown under is within the risk; else "close".
 * "unweighed": either is so by what is weighed, but what moved since without a weight may make it untrue.
 */
export type Standing = {
  readonly car: string | null;
  readonly trim: Garage["trim"];
  readonly condition: Condition;
  readonly ballast: number;
  readonly weight: Uncertain | null;
  readonly minimum: number | null;
  readonly margin: Uncertain | null;
  readonly risk: number;
  readonly official: OfficialReading | null;
  readonly fused: Fused | null;
  readonly since: Since | null;
  readonly removed: Uncertain;
  readonly unweighed_off: readonly string[];
  readonly unweighed_on: readonly string[];
  readonly history: readonly Past[];
  readonly start: Start | null;
  readonly gap: Gap | null;
  readonly gaps: readonly Gap[];
  readonly reasons: Readonly<Partial<Record<Answer, Warned>>>;
  readonly verdict: Verdict | null;
  readonly warnings: readonly Warned[];
};

/**
 * The standing of the garage's car in the garage's trim.
 *
 * `classSheet`: id; by default the newest of the car. `weighIn`: id of the one to rest on alone; by default all that can
 * count do. `known`: the garage's masses, when they are at hand already.
 */
export function standing(
  garage: Garage,
  known: Masses = masses(garage),
  classSheet: string | null = null,
  weighIn: string | null = null,
): Standing {
  const given = givenBy(garage, known, classSheet);
  const { nets, condition, weighed } = given;
  const chosen = weighed.filter(({ record }) => weighIn === null || record.id === weighIn);
  const minimum = minimumOf(garage, given.sheet);
  const risk = riskOf(given.sheet);
  const now = estimate(given, chosen, risk);
  const start = startOf(given);
  const gap = gapOf(given);
  const found = isWarned(now) ? null : now;
  const moved = [...piecesBetween(given.now.jobs, [], nets)];
  const least = typeof minimum === "number" ? minimum : null;
  const margin = found && least !== null ? subtract(found.weight, uncertain(least)) : null;
  const official = officialOf(given, found, least, risk);
  return {
    car: garage.car?.id ?? null,
    trim: garage.trim,
    condition,
    ballast: ballastOf(given.now, found),
    weight: found?.weight ?? null,
    minimum: least,
    margin,
    risk,
    official,
    fused: found?.fused ?? null,
    since: found?.since ?? null,
    removed: scale(netNow(given), -1),
    unweighed_off: moved.flatMap(([part, pieces]) => (pieces < 0 ? [part] : [])),
    unweighed_on: moved.flatMap(([part, pieces]) => (pieces > 0 ? [part] : [])),
    history: weighed.map((each) => pastOf(each, condition)),
    start: isWarned(start) ? null : start,
    gap: isWarned(gap) ? null : gap,
    gaps: gapsInOrder(weighed, nets),
    reasons: reasonsOf({ weight: now, margin: isWarned(now) ? now : minimum, start, gap }),
    verdict: verdictOf(margin, official, risk, found),
    warnings: warningsOf(given, found, official),
  };
}

/** The minimum with its adders, kg. One that cannot be read is no minimum: half of it would be a false comfort. */
function minimumOf(garage: Garage, sheet: ClassSheet | null): number | Warned {
  if (sheet === null) return warned("no_minimum");
  const unread = garage.warnings.find(({ data }) => {
    return data.list === "class_sheets" && data.id === sheet.id && isOfMinimum(data.field);
  });
  if (unread) return unread;
  if (sheet.minimum === null) return warned("no_minimum", { class_sheet: sheet.id });
  return toNumber(add(sheet.minimum.exact, sheet.adders?.exact ?? ZERO));
}

function isOfMinimum(field: unknown): boolean {
  return field === "minimum" || field === "adders";
}

export function riskOf(sheet: ClassSheet | null): number {
  const risk = sheet?.risk ? toNumber(sheet.risk) : RISK;
  return risk > 0 && risk < 1 ? risk : RISK;
}

function officialOf(
  given: Given,
  found: Estimate | null,
  minimum: number | null,
  risk: number,
): OfficialReading | null {
  if (found === null || minimum === null) return null;
  const records = given.weighed.map(({ record }) => record);
  const theirs = officialScale(given.garage, given.known, given.sheet, records, minimum);
  const { gain, spread } = found.learn(theirs.gain);
  const official = { ...theirs, gain };
  const about = u(expectedReading(found.weight, official)) ** 2;
  return officialReading(found.weight, minimum, official, risk, spread(theirs.repeatability, about));
}

function ballastOf({ ballast }: Now, found: Estimate | null): number {
  return (ballast ?? found?.last.aboard.ballast)?.value ?? 0;
}

function verdictOf(
  margin: Uncertain | null,
  official: OfficialReading | null,
  risk: number,
  found: Estimate | null,
): Verdict | null {
  if (margin === null || official === null || found === null) return null;
  const { unweighed_out: out, unweighed_in: put } = found.since;
  if (!beyondDoubt(margin)) return "close";
  if (margin.value < 0) return put.length > 0 ? "unweighed" : "under";
  if (official.chance_under > risk) return "close";
  return out.length > 0 ? "unweighed" : "above";
}

/** Whether the car is to be shown as under its minimum: by its verdict, or by the plain figure. */
export function isUnder({ verdict, margin }: Standing): boolean {
  return verdict === "under" || (margin?.value ?? 0) < 0;
}

function netNow({ now, nets }: Given): Uncertain {
  return massTotal(now.jobs.flatMap((job) => (nets.get(job) as JobNet).lines)).net;
}

function gapOf({ nets, weighed }: Given): Gap | Warned {
  const [first, second] = weighed.filter(({ loads }) => loads.loads.total).slice(-2);
  return first && second ? gapBetween(first, second, nets) : warned("one_weigh_in");
}

/** The answers that are no answers, by name. */
function reasonsOf(answers: Readonly<Record<Answer, object | number>>): Standing["reasons"] {
  const found = Object.entries(answers).filter(([, answer]) => typeof answer === "object" && isWarned(answer));
  return Object.fromEntries(found) as Standing["reasons"];
}

/** What should be known of the weigh-in the weight rests on, of the jobs since, of the class and of its scale. */
function warningsOf(given: Given, found: Estimate | null, official: OfficialReading | null): Warned[] {
  const { garage, sheet, condition, weighed } = given;
  const warnings = [...condition.warnings];
  if (sheet?.risk && riskOf(sheet) !== toNumber(sheet.risk)) {
    warnings.push(warned("risk_unusable", { class_sheet: sheet.id }));
  }
  warnings.push(...leftOutLast(weighed, found));
  if (official && official.scale.scale === null) warnings.push(warned("official_scale_assumed"));
  if (!found) return warnings;
  const { record, loads, aboard } = found.last;
  warnings.push(...loads.warnings, ...conditionWarnings(garage, record, aboard, condition));
  warnings.push(...ofBallast(given, record));
  if (found.since.unweighed.length > 0) warnings.push(warned("unweighed", { parts: found.since.unweighed }));
  return [...warnings, ...found.fused.warnings];
}

/** Why weigh-ins later than the last that counts do not; of none that counts the reason is given elsewhere. */
function leftOutLast(weighed: readonly Weighed[], found: Estimate | null): Warned[] {
  if (found === null) {
    const incomplete = weighed.slice(-1).filter(({ loads }) => !loads.loads.total);
    return incomplete.map(({ record }) => warned("reading_missing", { weigh_in: record.id }));
  }
  const names = weighed.map(({ record }) => record.id);
  const later = names.slice(names.indexOf(found.last.record.id) + 1);
  return later.flatMap((name) => own(found.fused.left_out, name) ?? []);
}

/** Where the ballast in the weight comes from, and what may be wrong with it. */
function ofBallast({ garage, now: { ballast: fitted } }: Given, last: WeighIn): Warned[] {
  if (fitted === null) return last.ballast?.value ? [warned("ballast_kept", { weigh_in: last.id })] : [];
  const bare = [...garage.ballast_places.values()].filter((place) => place.fitted && place.block === null);
  const found = bare.length > 0 ? [warned("ballast_without_block", { places: bare.map(({ id }) => id) })] : [];
  if (last.ballast === null && fitted.value) found.push(warned("ballast_unnoted", { weigh_in: last.id }));
  return found;
}
