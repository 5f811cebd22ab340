/**
 * What each weigh-in says of the car now: one look each at one and the same weight.
 *
 * A weigh-in, less the fuel, driver and ballast then on board, plus the net of the jobs since, plus what the class
 * weighs with, is a look at the weight now. All looks share what they are made from: the gain of a scale, the density of
 * fuel, the parts that moved since both. So the weight before any work needs no unknown of its own: with it unknown
 * altogether, the surest mean of these looks is the least-squares answer for it, all gains and all errors of the ledger
 * together.
 *
 * The last weigh-in that can count is what the others are held against. An earlier one is left out when what was on
 * board at either of the two is not known. Parts without a mass that moved between it and the last are unknowns: the
 * earlier one counts only as far as others tell them. A look is a sum of terms that is never taken for itself: any
 * weighting of the looks is summed once, over the terms, so that what cancels is gone.
 */

import { order } from "../garage/order";
import { type Warned, warned } from "../garage/records";
import { type Nets, netBetween, piecesBetween } from "../ledger/since";
import { fsum, total, type Uncertain, uncertain, weightedSum } from "../numbers/uncertain";
import type { Aboard } from "../wholeCar/aboard";
import { atCondition, type Condition, isWarned } from "../wholeCar/condition";
import type { Now, Terms, Weighed } from "../wholeCar/weighed";
import type { Loads } from "../wholeCar/weighIn";

/**
 * The weigh-ins that count, in order, the last being what the others are held against.
 *
 * `own`: terms of each car as it was; `written`: the net of the jobs from each to the next, from the last to now;
 * `target`: what the class weighs with, and the ballast now. `flat`: for each part of unknown mass that moved
 * (`unweighed`), the pieces more that each look would need. `left_out`: weigh-ins that cannot count, and why.
 */
export type Evidence = {
  readonly counted: readonly Weighed[];
  readonly own: readonly Terms[];
  readonly written: readonly Uncertain[];
  readonly target: Uncertain;
  readonly flat: readonly (readonly number[])[];
  readonly unweighed: readonly string[];
  readonly left_out: Readonly<Record<string, Warned>>;
};

/** The terms of a weighting of the looks. */
export function expandedBy(evidence: Evidence, weights: readonly number[]): Terms {
  const own = evidence.own.flatMap((terms, at) => {
    return terms.map(([item, sign]) => [item, sign * (weights[at] as number)] as const);
  });
  let before = 0;
  const written = evidence.written.map((item, at) => {
    before += weights[at] as number;
    return [item, before] as const;
  });
  return [...own, ...written, [evidence.target, fsum(weights)]];
}

/** A weighting of the looks, kg, with every source. */
export function weightedBy(evidence: Evidence, weights: readonly number[]): Uncertain {
  const terms = expandedBy(evidence, weights);
  return weightedSum(
    terms.map(([item]) => item),
    terms.map(([, weight]) => weight),
  );
}

/** The weight now by each look, kg. */
export function valuesOf({ own, written, target }: Evidence): number[] {
  return own.map((terms, at) => {
    const rest = fsum([...written.slice(at).map(({ value }) => value), target.value]);
    return fsum([...terms.map(([item, sign]) => sign * item.value), rest]);
  });
}

/** The same with every scale's gain acting on these loads (kg) in place of the readings. */
export function about(evidence: Evidence, loads: readonly number[]): Evidence {
  const own = evidence.own.map((terms, at): Terms => {
    const { loads: weighed } = evidence.counted[at] as Weighed;
    return [[actingOn(loads[at] as number, weighed), 1], ...terms.slice(1)];
  });
  return { ...evidence, own };
}

/** The covariance of each look with an item. */
export function sharedWith(evidence: Evidence, item: Uncertain): number[] {
  const moves = Object.entries(item.sources).map(([name, part]) => [part, movedBy(evidence, name)] as const);
  return evidence.own.map((_, at) => fsum(moves.map(([part, column]) => part * (column[at] as number))));
}

/** How far one standard deviation of a source moves each look, kg. */
export function movedBy({ own, written, target }: Evidence, source: string): number[] {
  const moves: number[] = [];
  let later = target.sources[source] ?? 0;
  for (let at = own.length - 1; at >= 0; at--) {
    later += written[at]?.sources[source] ?? 0;
    let here = later;
    for (const [item, sign] of own[at] as Terms) here += sign * (item.sources[source] ?? 0);
    moves.push(here);
  }
  return moves.reverse();
}

/** What the weigh-ins given, in order, say of the car now; or why none of them says anything. */
export function evidenceOf(weighed: readonly Weighed[], now: Now, nets: Nets, condition: Condition): Evidence | Warned {
  const reasons = new Map(weighed.map((each) => [each.record.id, unusable(each, condition)]));
  const usable = weighed.filter(({ record }) => reasons.get(record.id) === null);
  const last = usable.at(-1);
  if (!last) return noneUsable(weighed, reasons);
  for (const { record, aboard } of usable.slice(0, -1)) {
    reasons.set(record.id, incomparable(aboard, last.aboard, condition));
  }
  const counted = usable.filter(({ record }) => reasons.get(record.id) === null);
  const lists = [...counted.map(({ jobs }) => jobs ?? []), now.jobs];
  const flat = flatOf(lists.slice(0, -1), nets);
  return {
    counted,
    own: counted.map(ownOf),
    written: lists.slice(1).map((after, at) => netBetween(after, lists[at] as string[], nets)),
    target: targetOf(last.aboard, now, condition),
    flat: flat.map(([, column]) => column),
    unweighed: flat.map(([part]) => part),
    left_out: Object.fromEntries([...reasons].filter((entry): entry is [string, Warned] => entry[1] !== null)),
  };
}

function noneUsable(weighed: readonly Weighed[], reasons: ReadonlyMap<string, Warned | null>): Warned {
  const whole = weighed.filter(({ loads }) => loads.loads.total).at(-1);
  const reason = whole ? reasons.get(whole.record.id) : null;
  return reason ?? warned(weighed.length > 0 ? "reading_missing" : "no_weigh_in");
}

function unusable({ record, loads, jobs, aboard }: Weighed, condition: Condition): Warned | null {
  if (loads.loads.total && jobs === null) return warned("jobs_not_confirmed", { weigh_in: record.id });
  const answer = atCondition(loads.loads.total, aboard, condition);
  return isWarned(answer) ? answer : null;
}

/** Why the car of a weigh-in cannot be held against that of the last; with the last it is as the last was. */
function incomparable(then: Aboard, last: Aboard, condition: Condition): Warned | null {
  for (const { weigh_in, fuel, driver } of [then, last]) {
    if (condition.fuel === "as_it_is" && !fuel) return warned("fuel_unknown", { weigh_in });
    if (!driver) return warned("driver_unknown", { weigh_in });
  }
  return null;
}

/** The car as it was, less what is known to have been on board. */
function ownOf({ loads, aboard: { fuel, driver, ballast } }: Weighed): Terms {
  const whole = loads.loads.total ?? uncertain(0);
  return [[whole, 1], ...[fuel, driver, ballast].flatMap((item): Terms => (item ? [[item, -1]] : []))];
}

/** What the class weighs with, and the ballast now; as it was at the last weigh-in where nobody says otherwise. */
function targetOf(last: Aboard, now: Now, condition: Condition): Uncertain {
  const { fuel, driver, ballast } = countedOf(last, now, condition);
  return total([fuel, driver, ballast].filter((item) => item !== null));
}

/** Fuel, driver and ballast that the weight counts, kg, as far as they are known. */
export function countedOf(last: Aboard, now: Now, condition: Condition) {
  const fuel = condition.fuel === "as_it_is" ? last.fuel : condition.fuel_mass;
  const isReplaced = condition.driver === "in" && last.driver !== null;
  return { fuel, driver: isReplaced ? condition.driver_mass : null, ballast: now.ballast ?? last.ballast };
}

/** Parts without a mass that moved between the weigh-ins, each with the pieces of it that every look lacks. */
function flatOf(lists: readonly (readonly string[])[], nets: Nets): [string, number[]][] {
  let later = new Map<string, number>();
  const moved = [later];
  for (let at = lists.length - 2; at >= 0; at--) {
    const between = piecesBetween(lists[at + 1] as string[], lists[at] as string[], nets);
    later = new Map(later);
    for (const [part, pieces] of between) later.set(part, (later.get(part) ?? 0) + pieces);
    moved.push(later);
  }
  moved.reverse();
  const parts = new Set(moved.flatMap((pieces) => [...pieces].flatMap(([part, more]) => (more ? [part] : []))));
  return [...parts].sort(order).map((part) => [part, moved.map((pieces) => -(pieces.get(part) ?? 0))]);
}

/** The whole car of a weigh-in, its scale's gain taken to act on this load (kg). */
function actingOn(load: number, { loads, gain }: Loads): Uncertain {
  const whole = loads.total ?? uncertain(0);
  const through = 1 + gain.value;
  const gains = Object.entries(gain.sources).map(([source, part]) => [source, (-load * part) / through]);
  return uncertain(whole.value, { ...whole.sources, ...(Object.fromEntries(gains) as Record<string, number>) });
}
