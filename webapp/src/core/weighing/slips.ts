/**
 * Which slip of a thumb would explain a reading that disagrees with what is known: another unit, or a point misplaced.
 *
 * What is known of a mass says where an honest reading falls: ln(reading ÷ known) about a middle, with a spread by how
 * it is known. The weaker the knowledge, the wider the spread and the fewer the questions. Some readings honestly fall
 * far outside (another part, parts left on it): that is a broad tail beneath the spread. A slip is a reading with other
 * digits; it is judged by the same spreads, and rarer beforehand. A person is asked when the best slip is likely enough
 * against the reading as it is: by Bayes's rule, with all that is known together.
 *
 * Spreads and rates are common practice, no source; `tests/core/slips.test.ts` counts how many honest readings they
 * question: they are set so that it is less than one in thirty.
 */

import type { Garage, Weighing } from "../garage/records";
import type { Quantity } from "../numbers/quantity";
import { u } from "../numbers/uncertain";
import { canShow, type Display, pointMoved, sameDigits, UNKNOWN } from "./display";
import { type Known, knownOf, type Lore, loreOf } from "./known";
import { type ScaleModel, UNNAMED } from "./scale";
import { type Masses, Reading, readWeighing } from "./weighing";

/** A unit read as another one, or a point so many places off (above nothing: too far to the left). */
export type Slip =
  | { readonly sort: "unit"; readonly from: string; readonly to: string }
  | { readonly sort: "point"; readonly places: number };
/** `weighing`: as it would be without the slip; `mass`: what one piece then weighs, kg; `against`: the surest known. */
export type Slipped = {
  readonly slip: Slip;
  readonly weighing: Weighing;
  readonly mass: number;
  readonly against: Known;
  readonly odds: number;
};

const TAIL = { share: 0.03, spread: 1.5 };
const UNITS = ["kg", "lb", "g", "oz"];
const RATES = { usual: 0.02, rare: 0.006 }; // of kilograms and pounds, or a place; of the others
const ASK = 0.05; // odds; a question costs one tap, a slip the margin
const FINE = 1; // spreads: a reading so near to the surest that is known needs no other explanation
const FITS = 2.5; // spreads: a slip that explains a reading badly explains nothing
const COARSE = 0.5; // own uncertainty: what its scale cannot tell from nothing explains nothing either

/** The likeliest slip, when it is worth a question; null otherwise, and where nothing is known. */
export function slipIn(
  weighing: Weighing,
  model: ScaleModel,
  display: Display,
  known: readonly Known[],
): Slipped | null {
  const read = readWeighing(weighing, model);
  if (!(read instanceof Reading)) return null;
  const others = function* (): Generator<Option & { weighing: Weighing }> {
    for (const other of otherwise(weighing, display)) {
      const reading = readWeighing(other.weighing, model);
      if (reading instanceof Reading) yield { ...other, mass: reading.value, own: ownOf(reading) };
    }
  };
  return likeliest({ mass: read.value, own: ownOf(read) }, others, known);
}

/** The same for the looks of a whole car: all of them in another unit, or one of them slipped. */
export function slipInLoads(looks: readonly Quantity[], display: Display, known: readonly Known[]) {
  const total = (of: readonly Quantity[]) => of.reduce((sum, { value }) => sum + value, 0);
  const others = function* (): Generator<Option & { looks: readonly Quantity[] }> {
    for (const to of ["kg", "lb"]) {
      const all = looks.map((look) => (look.unit === to ? null : sameDigits(look, to))).filter((look) => look !== null);
      const slip = { sort: "unit", from: looks[0]?.unit as string, to } as const;
      if (all.length === looks.length) yield { slip, rate: RATES.usual, looks: all, mass: total(all), own: 0 };
    }
    if (looks.length === 1) yield* oneOf(0);
    else for (const at of looks.keys()) yield* oneOf(at);
  };
  const oneOf = function* (at: number): Generator<Option & { looks: readonly Quantity[] }> {
    for (const { slip, rate, look } of slipsOf(looks[at] as Quantity, display)) {
      const all = looks.map((each, n) => (n === at ? look : each));
      yield { slip, rate: rate / looks.length, looks: all, mass: total(all), own: 0 };
    }
  };
  return looks.length ? likeliest({ mass: total(looks), own: 0 }, others, known) : null;
}

/** A mass in kg, and its own standard uncertainty as a share of it. */
type Amount = { readonly mass: number; readonly own: number };
type Option = Amount & { readonly slip: Slip; readonly rate: number };
type Found<O> = O & { readonly against: Known; readonly odds: number };

function likeliest<O extends Option>(
  asRead: Amount,
  others: () => Iterable<O>,
  known: readonly Known[],
): Found<O> | null {
  const against = [...known].sort((a, b) => a.spread - b.spread)[0];
  if (!against || Math.abs(offBy(asRead, against)) < FINE) return null;
  const asItIs = likelihood(asRead, known);
  let best: Found<O> | null = null;
  for (const other of others()) {
    if (other.own > COARSE || Math.abs(offBy(other, against)) > FITS) continue;
    const odds = other.rate * Math.exp(likelihood(other, known) - asItIs);
    if (odds >= ASK && odds > (best?.odds ?? 0)) best = { ...other, against, odds };
  }
  return best;
}

function ownOf({ value, mass }: Reading): number {
  return u(mass) / value;
}

/** How far an amount lies from what is known, in spreads of both. */
function offBy({ mass, own }: Amount, { value, middle, spread }: Known): number {
  return (Math.log(mass / value) - middle) / Math.sqrt(spread * spread + own * own);
}

function likelihood(amount: Amount, known: readonly Known[]): number {
  return known.reduce((sum, each) => {
    const spread = Math.sqrt(each.spread * each.spread + amount.own * amount.own);
    const off = offBy(amount, each) * spread;
    return sum + Math.log((1 - TAIL.share) * bell(off, spread) + TAIL.share * bell(off, TAIL.spread));
  }, 0);
}

/** The normal density, but for a factor that all have. */
function bell(off: number, spread: number): number {
  const z = off / spread;
  return Math.exp((-z * z) / 2) / spread;
}

type Other = { readonly slip: Slip; readonly rate: number; readonly weighing: Weighing };
const SECOND: Readonly<Record<string, "shown_empty" | "shown_far">> = {
  difference: "shown_empty",
  container: "shown_empty",
  ends: "shown_far",
};

/** The weighing as it would be without each slip there could have been, with how often there is such a slip. */
function otherwise(weighing: Weighing, display: Display): Other[] {
  const second = SECOND[weighing.method];
  const other = second && weighing[second];
  const of = (look: Quantity) => slipsOf(look, display);
  const first = of(weighing.shown).map(({ look, ...each }) => ({ ...each, weighing: { ...weighing, shown: look } }));
  if (!second || !other) return first;
  const alone = of(other).map(({ look, ...each }) => ({ ...each, weighing: { ...weighing, [second]: look } }));
  const both = first.flatMap((each) => {
    const { slip } = each;
    if (slip.sort !== "unit" || other.unit !== slip.from) return [];
    const look = sameDigits(other, slip.to);
    return look ? [{ ...each, weighing: { ...each.weighing, [second]: look } }] : [];
  });
  const half = [...first, ...alone].map((each) => ({ ...each, rate: each.rate / 2 }));
  return [...both, ...half];
}

function slipsOf(look: Quantity, display: Display): { slip: Slip; rate: number; look: Quantity }[] {
  // What is in the unit of the display was hardly read as another one.
  const usual = (to: string) =>
    look.unit !== display.unit && [look.unit, to].every((unit) => unit === "kg" || unit === "lb");
  const units = UNITS.filter((to) => to !== look.unit).map((to) => ({
    slip: { sort: "unit", from: look.unit, to } as const,
    rate: usual(to) ? RATES.usual : RATES.rare,
    look: sameDigits(look, to),
  }));
  const points = [1, -1, 2, -2].map((places) => ({
    slip: { sort: "point", places } as const,
    rate: Math.abs(places) === 1 ? RATES.usual : RATES.rare,
    look: pointMoved(look, places),
  }));
  const shown = points.filter((each) => each.look && canShow(each.look, display));
  return [...units, ...shown].filter((each) => each.look !== null) as { slip: Slip; rate: number; look: Quantity }[];
}

/** Every slip in what was read once and not found right as it is: the likeliest of each part and driver. */
export function slipsIn(garage: Garage, masses: Masses, right: ReadonlySet<string>): Slipped[] {
  const lore = loreOf(garage, masses);
  const found = new Map<string, Slipped>();
  for (const weighing of garage.weighings.values()) {
    const slipped =
      right.has(weighing.id) || garage.repeats_of.has(weighing.id)
        ? null
        : slipIn(weighing, ...aboutScale(lore, weighing), knownOf(lore, weighing));
    const before = found.get(weighing.of as string);
    if (slipped && !(before && before.odds >= slipped.odds)) found.set(weighing.of as string, slipped);
  }
  return [...found.values()];
}

/** The errors and the display of the scale of a weighing. */
export function aboutScale({ garage, masses }: Lore, { scale }: Weighing): [ScaleModel, Display] {
  const model = masses.scales.get(scale ?? UNNAMED) ?? (masses.scales.get(UNNAMED) as ScaleModel);
  return [model, garage.scales.get(scale ?? "") ?? UNKNOWN];
}
