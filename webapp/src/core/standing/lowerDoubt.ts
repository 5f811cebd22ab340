/**
 * What would lower the doubt of the weight most for its time: weigh-ins, checks and weighings, tried one by one.
 *
 * Each is put into the garage as it is expected to come out (`trials`), and the weight asked for anew: what is promised
 * is what the standing will say. Whatever cannot bring a tenth of a kilogram even if all it touches were sure is not
 * tried.
 *
 * Minutes: common practice, no source.
 */

import type { Doing, First, Lowering } from "../fusion/lowering";
import { order } from "../garage/order";
import type { Garage, Scale, ScaleCheck } from "../garage/records";
import { readMass } from "../numbers/quantity";
import { u } from "../numbers/uncertain";
import { SHARED } from "../weighing/claims";
import { partRepeats } from "../weighing/scale";
import { type Asked, doubtWith, lastOf, modelOf, NEXT, stepOf, withCheck, withWeighIn, withWeighing } from "./trials";

/** Of a weigh-in (on pads one puts under each wheel; on a platform one drives to) and what is seen to before it. */
const MINUTES = { weigh_in: 15, corner_pads: 25, platform: 45, check: 10, weigh: 5, zeroed: 2, fuel: 5, checked: 10 };
const LEAST = 0.1; // kg of the ± there is: what brings less is not told
const MOST = 3; // that are told; of parts and drivers also: that are tried
const HOLDS: Readonly<Record<string, number>> = { kitchen: 10, bench: 40, hanging: 60, bathroom: 180 }; // kg
const PLATE = ["20 kg", "0.2 kg"] as const; // a known mass most can lay hands on, where no check names one
const LOOKS = ["corner_pads", "axle_pads", "platform"];

export type Trial = Doing & { readonly garage: () => Garage };

const bringsOf = ({ u_now, u_then }: Lowering): number => 2 * (u_now - u_then);
/** Kilograms per minute, as far as two languages agree. */
const rateOf = (found: Lowering): number => Math.round((bringsOf(found) / found.minutes) * 1e7);

/** The three that narrow ± most per minute, the best first. */
export function lowerDoubt(now: Asked): Lowering[] {
  return bestOf(trialsOf(now).map((trial) => lowered(now, trial)));
}

/** What is worth trying. */
export function trialsOf(now: Asked): Trial[] {
  return [...weighInsOf(now), ...checksOf(now), ...weighingsOf(now)];
}

/** A standing for each: on a phone one at a time. */
export function lowered(now: Asked, { garage, ...doing }: Trial): Lowering {
  return { ...doing, u_now: u(now.fusion.weight), u_then: doubtWith(now, garage()) };
}

export function bestOf(found: readonly Lowering[]): Lowering[] {
  const best = new Map<string, Lowering>();
  for (const each of found) {
    const key = `${each.way} ${each.of}`;
    const other = best.get(key);
    if (bringsOf(each) >= LEAST && (!other || rateOf(each) > rateOf(other))) best.set(key, each);
  }
  const inOrder = (a: Lowering, b: Lowering) => {
    return rateOf(b) - rateOf(a) || order(a.way, b.way) || order(a.of ?? "", b.of ?? "");
  };
  return [...best.values()].sort(inOrder).slice(0, MOST);
}

function weighInsOf(now: Asked): Trial[] {
  const { garage } = now.given;
  const last = lastOf(now).record;
  const scales: (Scale | null)[] = [...garage.scales.values()].filter(({ id, kind }) => {
    return !garage.retired.has(id) && (LOOKS.includes(kind) || id === last.scale);
  });
  if (!scales.some((each) => each?.kind === "platform")) scales.push(null);
  const isFuelled = last.fuel !== null && last.fuel.value > 0;
  return scales.flatMap((scale) => {
    const [kind, of] = [scale?.kind ?? "platform", scale?.id ?? null];
    const check = scale && kind !== "platform" ? checkOf(now, scale) : null;
    const firsts: First[][] = [[], ...(scale ? [["zeroed" as const]] : []), ...(isFuelled ? [["fuel" as const]] : [])];
    if (check) firsts.push(["checked", "zeroed"]);
    return firsts.map((first): Trial => {
      const own = kind === "corner_pads" || kind === "platform" ? MINUTES[kind] : MINUTES.weigh_in;
      const minutes = first.reduce((sum, each) => sum + MINUTES[each], own);
      const checked = first.includes("checked") ? check : null;
      const doing = { ...bare("weigh_in", of, minutes), first, against: checked?.known.value ?? null };
      return { ...doing, garage: () => withWeighIn(now, of, first, checked) };
    });
  });
}

function bare(way: Doing["way"], of: string | null, minutes: number): Doing {
  return { way, of, on: null, first: [], against: null, minutes };
}

/** With the mass it was checked with last, else the heaviest known that it can carry. */
function checkOf(now: Asked, { id, kind }: Scale): ScaleCheck {
  const { garage } = now.given;
  const model = modelOf(now, id);
  const own = (garage.checks_of.get(id) ?? []).filter((each) => model.checks.includes(each.id));
  const most = model.capacity || (HOLDS[kind] ?? Infinity);
  const others = [...garage.checks_of.values()].flat().filter(({ known }) => known.value <= most);
  const among = own.length > 0 ? own : others;
  const heaviest = [...among].sort((a, b) => b.known.value - a.known.value || order(b.id, a.id))[0];
  const [known, known_within] = PLATE.map((each) => readMass(each)) as [ScaleCheck["known"], ScaleCheck["known"]];
  return { ...(heaviest ?? { known_name: null, known, known_within, shown: known }), id: NEXT, scale: id, at: null };
}

/** Of every scale in use. */
function checksOf(now: Asked): Trial[] {
  const { garage } = now.given;
  return [...garage.scales.values()].flatMap((scale) => {
    const { id } = scale;
    const touched = [...Object.keys(modelOf(now, id).gain.sources), `wander:${id}`];
    if (garage.retired.has(id) || !mayBring(now, varianceOf(now, touched))) return [];
    const check = checkOf(now, scale);
    const doing = { ...bare("check", id, MINUTES.check), against: check.known.value };
    return [{ ...doing, garage: () => withCheck(now, check) }];
  });
}

/** Parts that are claimed, and drivers: those that put most into the doubt. */
function weighingsOf(now: Asked): Trial[] {
  const { garage, known } = now.given;
  const { sources } = now.fusion.weight;
  const found: { variance: number; of: string; kg: number }[] = [];
  for (const of of garage.parts.keys()) {
    const { mass = null, basis = null } = known.of.get(of) ?? {};
    const put = sources[`claim:${of}`];
    if (!mass || basis === "weighed" || put === undefined) continue;
    const own = Math.abs(put);
    const shared = (SHARED as Readonly<Record<string, string>>)[basis ?? ""] ?? "";
    const ofAll = Math.abs(sources[shared] ?? 0);
    const claim = mass.sources[`claim:${of}`];
    const theirs = claim ? Math.min(ofAll, (own * (mass.sources[shared] ?? 0)) / claim) : 0;
    found.push({ variance: own * own + ofAll * ofAll - (ofAll - theirs) * (ofAll - theirs), of, kg: mass.value });
  }
  for (const of of garage.drivers.keys()) {
    const mass = known.of.get(of)?.mass;
    if (mass) found.push({ variance: varianceOf(now, Object.keys(mass.sources)), of, kg: mass.value });
  }
  found.sort((a, b) => b.variance - a.variance || order(a.of, b.of));
  return found.slice(0, MOST).flatMap(({ variance, of, kg }) => {
    const on = scaleFor(now, kg);
    if (on === null || !mayBring(now, variance)) return [];
    return [{ ...bare("weigh", of, MINUTES.weigh), on, garage: () => withWeighing(now, of, on, kg) }];
  });
}

/** The scale of the garage that tells such a mass best. */
function scaleFor(now: Asked, kg: number): string | null {
  const { garage } = now.given;
  const able = [...garage.scales.values()].flatMap(({ id, kind }) => {
    const model = modelOf(now, id);
    const most = HOLDS[kind];
    if (garage.retired.has(id) || most === undefined || kg > (model.capacity || most)) return [];
    const off = Math.sqrt(stepOf(now, model) ** 2 / 12 + partRepeats(model) ** 2 + (kg * u(model.gain)) ** 2);
    return [{ id, off }];
  });
  return able.sort((a, b) => a.off - b.off || order(a.id, b.id))[0]?.id ?? null;
}

/** What these sources put into the weight, kg². */
function varianceOf({ fusion }: Asked, sources: readonly string[]): number {
  return [...new Set(sources)].reduce((sum, each) => sum + (fusion.weight.sources[each] ?? 0) ** 2, 0);
}

/** Whether ± would be less by what is told if this variance were gone. */
function mayBring({ fusion }: Asked, variance: number): boolean {
  const now = u(fusion.weight);
  return 2 * (now - Math.sqrt(Math.max(0, now * now - variance))) >= LEAST;
}
