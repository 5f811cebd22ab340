/**
 * What the official scale is likely to show, and how much weight to keep in hand for it.
 *
 * The official scale shows m·(1 + ĝ) rounded to its division. Its gain is not known better than anybody's, but if the
 * car was weighed on that very scale before, the gain is already in the weight and cancels in what it will show again:
 * both are sums over the same named sources, so the covariance takes care of itself. A gain that is a legal tolerance
 * in kilograms is taken at the minimum, where the answer is wanted, whatever was weighed before. A display that rounds
 * to nearest shows less than the minimum M when the load is half a division under M*, the first step at or above M:
 *
 *     P(shown < M) = Φ((M* − d/2 − ŷ) / u)      rounding to nearest, division d
 *     P(shown < M) = Φ((M − ŷ) / u)             rule or division unknown
 *
 * Beside u of the weight and of the gain, u has the scale's own repeatability: it will be a new look. Where the weigh-ins
 * leave more than one answer, P is the mean of these over the answers, each with its odds. "In hand" for a risk r is how
 * far above the minimum the weight must be for P to be r: the guard band of JCGM 106:2012, 8.3.
 */

import { CERTAIN, chanceBelow, type Spread, valueFor } from "../fusion/mixture";
import type { ClassSheet, Garage, WeighIn } from "../garage/records";
import { type Uncertain, u, uncertain, weightedSum } from "../numbers/uncertain";
import type { ScaleModel } from "../weighing/scale";
import { platformGain, wholeCarGain } from "../weighing/tradeScale";
import type { Masses } from "../weighing/weighing";
import { ASSUMED_REPEATABILITY, repeatability } from "../wholeCar/weighIn";

const LAST_BITS = 1e-9; // of a division: a minimum that is a whole number of them stays one
const PASSES = 4; // each brings the guard about a thousand times nearer: u hardly depends on the weight

/**
 * `scale`: id of the scale of an earlier official weigh-in, or null when all is assumed. Masses in kg.
 *
 * `division`: null when unknown; `rounding`: "nearest" or "unknown".
 */
export type OfficialScale = {
  readonly scale: string | null;
  readonly gain: Uncertain;
  readonly repeatability: number;
  readonly division: number | null;
  readonly rounding: "nearest" | "unknown";
};

/**
 * `expected`: what the scale should show before rounding, kg. `chance_under`: that it shows less than the minimum.
 *
 * `in_hand`: what to keep above the minimum, kg, for `chance_under` to be no more than the risk asked for, in whole
 * grams. `spread`: how what is shown spreads about `expected`, over all answers.
 */
export type OfficialReading = {
  readonly scale: OfficialScale;
  readonly expected: Uncertain;
  readonly chance_under: number;
  readonly in_hand: number;
  readonly spread: Spread;
};

/**
 * The scale of the last official weigh-in that names one, else an assumed platform.
 *
 * `weighIns` in order. `minimum` (kg): the load its gain is wanted at; the error keeps the name it has in the weight,
 * so that the same scale's error cancels.
 */
export function officialScale(
  garage: Garage,
  known: Masses,
  sheet: ClassSheet | null,
  weighIns: readonly WeighIn[],
  minimum: number,
): OfficialScale {
  const named = weighIns.flatMap(({ official, scale }) => (official && scale ? [scale] : [])).at(-1);
  const stated = sheet?.scale_division?.value || null;
  const rounding = (sheet?.scale_rounding ?? "unknown") as OfficialScale["rounding"];
  if (named === undefined) {
    const gain = platformGain("cal:official", minimum, stated);
    const repeats = ASSUMED_REPEATABILITY.platform as number;
    return { scale: null, gain, repeatability: repeats, division: stated, rounding };
  }
  const model = known.scales.get(named) as ScaleModel;
  const gain = wholeCarGain(garage, model, minimum, stated);
  const division = stated ?? model.division;
  return { scale: named, gain, repeatability: repeatability(garage, model), division, rounding };
}

/** What the scale should show for a car of this weight, against a minimum (kg) and a risk between 0 and 1. */
export function officialReading(
  weight: Uncertain,
  minimum: number,
  official: OfficialScale,
  risk: number,
  spread = CERTAIN,
): OfficialReading {
  return {
    scale: official,
    expected: expectedReading(weight, official),
    chance_under: chanceUnder(weight, minimum, official, spread),
    in_hand: inHand(weight, minimum, official, risk, spread),
    spread,
  };
}

/** What the official scale should show before rounding, kg. */
export function expectedReading(weight: Uncertain, official: Pick<OfficialScale, "gain" | "repeatability">): Uncertain {
  const through = 1 + official.gain.value;
  const { sources } = weightedSum([weight, official.gain], [through, weight.value]);
  return uncertain(weight.value * through, { ...sources, "rep:official": official.repeatability });
}

/** The weight a reading was foretold of, kg, with the doubt it then had; what is left of its own cancels. */
export function weightBehind({ expected, scale: { gain } }: OfficialReading): Uncertain {
  const through = 1 + gain.value;
  const weight = expected.value / through;
  const { "rep:official": _, ...sources } = weightedSum([expected, gain], [1 / through, -weight / through]).sources;
  return uncertain(weight, sources);
}

/** The load (kg, as this scale feels it) under which it shows less than the minimum. */
export function threshold(minimum: number, official: OfficialScale): number {
  if (official.rounding !== "nearest" || !official.division) return minimum;
  // A minimum that is a whole number of divisions in pounds is one in kilograms too, up to the last digit.
  return Math.ceil(minimum / official.division - LAST_BITS) * official.division - 0.5 * official.division;
}

/** The probability that the official scale shows less than `minimum` kg. */
export function chanceUnder(weight: Uncertain, minimum: number, official: OfficialScale, spread = CERTAIN): number {
  const reading = expectedReading(weight, official);
  return chanceBelow(threshold(minimum, official), reading.value, u(reading) ** 2, spread);
}

/**
 * How far above the minimum (kg) the weight must be for `chanceUnder` to be no more than `risk`; whole grams up.
 *
 * 0 < risk < 1; at this weight's doubt. Negative when the scale's rounding forgives more than the doubt asks for.
 */
export function inHand(
  weight: Uncertain,
  minimum: number,
  official: OfficialScale,
  risk: number,
  spread = CERTAIN,
): number {
  const bare = threshold(minimum, official);
  let mass = bare;
  for (let pass = 0; pass < PASSES; pass++) {
    const doubt = u(expectedReading(uncertain(mass, weight.sources), official));
    mass = valueFor(bare, doubt * doubt, spread, risk) / (1 + official.gain.value);
  }
  return Math.ceil((mass - minimum) * 1000 - LAST_BITS * 1000) / 1000;
}
