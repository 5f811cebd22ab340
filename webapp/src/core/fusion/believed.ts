/**
 * What a scale's gain is believed to have been on each day that tells of it, and when its next check pays.
 *
 * The belief on a day is the gain by its record plus what it has wandered since, with all that the looks tell of that
 * day (`views`), averaged over how scales may behave and what may have changed (`average`). What a wandering gain moves
 * on a day it moves in the looks of other days too, as far as they lie on the same side of the check (`behaviour`).
 *
 * A check pays from the day on which what wandering may have added since the last one, averaged over behaviours,
 * exceeds the doubt that check left in the gain: from then on most of the doubt is age. For a scale nobody has checked
 * that is now.
 */

import { order } from "../garage/order";
import type { Garage } from "../garage/records";
import { type Uncertain, u } from "../numbers/uncertain";
import type { ScaleModel } from "../weighing/scale";
import type { Masses } from "../weighing/weighing";
import type { Weighed } from "../wholeCar/weighed";
import { averaged, covarianceBySet, mixed } from "./average";
import { BEFORE_1970, behaviours, DAY, type Group, MONTH, monthOf, walkedAlike } from "./behaviour";
import { sharedWith } from "./evidence";
import type { Fusion } from "./fusion";
import { apartOf } from "./inquiry";
import { at, dot, times } from "./precision";

const FREE = ["corner_pads", "axle_pads"]; // that may wander though no weigh-in on them counts yet
const NEVER = 120; // months: a check that pays later than this is not worth a date

/**
 * The gain of a scale on a day (`at`, a date): relative, ± `u`, its standard uncertainty.
 *
 * `sort`: what tells of the day: "weigh_in" or "check", with its id in `record`; "day", the one asked for. `read`: what
 * a check alone shows of the gain.
 */
export type Belief = Day & { readonly gain: number; readonly u: number };
type Day = {
  readonly at: string;
  readonly sort: "weigh_in" | "check" | "day";
  readonly record: string | null;
  readonly read: number | null;
};

/**
 * One scale over time, its `beliefs` in order of time.
 *
 * `due`: the day from which its next check pays. `now`: it pays already. Neither for a gain that stays as it is.
 */
export type Ageing = {
  readonly scale: string;
  readonly beliefs: readonly Belief[];
  readonly due: string | null;
  readonly now: boolean;
};

type Rates = readonly [walk: number, slope: number];

/** A scale of the garage until `day`, a date. `fusion` is that of the looks `among`; null where there is none. */
export function believed(
  garage: Garage,
  known: Masses,
  fusion: Fusion | null,
  among: readonly Group[],
  scale: string,
  day: string,
): Ageing {
  const model = known.scales.get(scale) as ScaleModel;
  const looks = fusion ? fusion.evidence.counted : [];
  const group = among.find((each) => each.scale === scale);
  const onIt = looks.filter(({ record }) => record.scale === scale);
  const days = daysOf(garage, model, onIt, day);
  const isFree = group ? group.wander.length > 0 : onIt.length === 0 && mayWander(garage, scale);
  const since = sinceOf(model, looks, group);
  const item = onIt.at(-1)?.loads.gain ?? model.gain;
  const rates = ratesOf(fusion, among);
  const wanders = isFree && group;
  const beliefs = days.map((each): Belief => {
    const month = isFree && since !== null ? (monthOf(each.at) ?? 0) - since : 0;
    const [gain, told] = fusion ? toldOf(fusion, item, group, month) : [item.value, u(item) ** 2];
    return { ...each, gain, u: Math.sqrt(Math.max(0, told + (wanders ? 0 : added(rates, month)))) };
  });
  const due = isFree ? dueOf(model, rates) : null;
  const isUnchecked = model.assumed || monthOf(model.checked) === null;
  return { scale, beliefs, due, now: isFree && (isUnchecked || (due !== null && due <= day)) };
}

/** By how much the zero of a scale, where nobody set it, is off, kg, as the looks tell. */
export function zeroBelieved(fusion: Fusion, among: readonly Group[], scale: string): number {
  const column = new Float64Array(fusion.values.length);
  for (const look of among.find((each) => each.scale === scale)?.unset ?? []) column[look] = 1;
  const byView = fusion.sets.views.map(({ behaviour: { zero }, told }) => {
    return times(told.beside, column).map((each) => zero * zero * each);
  });
  return dot(fusion.sets.share, averaged(fusion.sets, byView, apartOf(fusion)).values);
}

/** The days something tells of, in order of time, and the one asked for. */
function daysOf(garage: Garage, model: ScaleModel, onIt: readonly Weighed[], day: string): Day[] {
  const weighIns = onIt.map(({ record: { id, at } }): Day => {
    return { at: (at ?? "").slice(0, 10), sort: "weigh_in", record: id, read: null };
  });
  const used = (garage.checks_of.get(model.id) ?? []).filter(({ id }) => model.checks.includes(id));
  const checks = used.map(({ id, at, shown, known }): Day => {
    return { at: (at ?? "").slice(0, 10), sort: "check", record: id, read: shown.value / known.value - 1 };
  });
  const told = [...weighIns, ...checks].filter((each) => monthOf(each.at) !== null && each.at <= day);
  told.sort((a, b) => order(a.at, b.at) || order(a.sort, b.sort) || order(a.record ?? "", b.record ?? ""));
  return [...told, { at: day, sort: "day", record: null, read: null }];
}

function mayWander(garage: Garage, scale: string): boolean {
  const named = garage.scales.get(scale);
  return named !== undefined && FREE.includes(named.kind) && named.accuracy_class === null;
}

/** The month wandering is counted from: that of the last check, else of the first weigh-in on it. */
function sinceOf(model: ScaleModel, looks: readonly Weighed[], group: Group | undefined): number | null {
  for (const [n, look] of (group?.wander ?? []).entries()) {
    const month = monthOf(looks[look]?.record.at ?? null);
    if (month !== null) return month - at(group?.months ?? [], n);
  }
  return monthOf(model.checked);
}

/** The gain and its variance at so many months since the check, with what all looks tell. */
function toldOf(fusion: Fusion, item: Uncertain, group: Group | undefined, month: number): [number, number] {
  const { evidence, sets, values, weight } = fusion;
  const byItem = sharedWith(evidence, item);
  const loadOf = (look: number) => {
    return (evidence.counted[look]?.loads.loads.total ?? weight).value - (at(values, look) - weight.value);
  };
  const wander = group?.wander ?? [];
  const ofItem: number[] = [];
  const byView = sets.views.map(({ behaviour: { walk, slope }, told }) => {
    const shared = Float64Array.from(byItem);
    wander.forEach((look, n) => {
      const then = at(group?.months ?? [], n);
      const moved = walk * walk * walkedAlike(month, then) + slope * slope * month * then;
      shared[look] = at(shared, look) - loadOf(look) * moved;
    });
    const weights = times(told.beside, shared).map((each) => -each);
    const own = wander.length > 0 ? added([walk * walk, slope * slope], month) : 0;
    ofItem.push(u(item) ** 2 + own + dot(weights, shared));
    return weights;
  });
  const byLooks = averaged(sets, byView, apartOf(fusion));
  const variance = mixed(sets, byLooks, byLooks, covarianceBySet(sets, byLooks, byLooks, Float64Array.from(ofItem)));
  return [item.value + dot(sets.share, byLooks.values), variance];
}

/** The mean squares of the rates of walk and slope: as the looks tell where any could, else as thought beforehand. */
function ratesOf(fusion: Fusion | null, among: readonly Group[]): Rates {
  let [walk, slope] = [0, 0];
  const add = (chance: number, how: { walk: number; slope: number }) => {
    walk += chance * how.walk * how.walk;
    slope += chance * how.slope * how.slope;
  };
  if (fusion && among.some(({ months }) => months.some((month) => month))) {
    const { share, view, views } = fusion.sets;
    for (const [n, m] of view.entries()) add(at(share, n), views[m]?.behaviour as { walk: number; slope: number });
  } else {
    const thoughtOf = behaviours([{ scale: "", wander: [0], months: [1], unset: [] }]);
    for (const how of thoughtOf) add(Math.exp(how.likely), how);
  }
  return [walk, slope];
}

/** The variance that wandering adds in so many months. */
function added([walk, slope]: Rates, months: number): number {
  return walk * Math.abs(months) + slope * months * months;
}

/** The day on which wandering since the last check has added as much as that check left. */
function dueOf(model: ScaleModel, [walk, slope]: Rates): string | null {
  const checked = monthOf(model.checked);
  const left = u(model.gain) ** 2;
  if (model.assumed || checked === null || walk + slope <= 0) return null;
  const months = left > 0 ? (2 * left) / (walk + Math.sqrt(walk * walk + 4 * slope * left)) : 0;
  if (months >= NEVER) return null;
  return new Date((Math.trunc((checked + months) * MONTH + 0.5) - BEFORE_1970) * DAY).toISOString().slice(0, 10);
}
