/** What the answer says in words: what to move, what it comes to, what is missing. Figures are the core's. */
import type { Ballast, Carried, Share } from "../../core/ballast/ballast";
import { HARDLY } from "../../core/ballast/ballastAnswer";
import type { BallastChoice } from "../../core/ballast/ballastRecords";
import type { Warned } from "../../core/garage/records";
import { showLength, showMass, showPercent } from "../../core/numbers/shown";
import { expanded, type Uncertain } from "../../core/numbers/uncertain";
import type { Fact } from "../../parts/figures/Facts";

/** Take 1 from “Boot floor”, put 2 in “Left footwell”. Blocks come out before others go in. */
export function movesSentence(moves: Readonly<Record<string, number>>, nameOf: (id: string) => string): string {
  const all = Object.entries(moves);
  const out = all.filter(([, count]) => count < 0).map(([id, count]) => `take ${-count} from “${nameOf(id)}”`);
  const into = all.filter(([, count]) => count > 0).map(([id, count]) => `put ${count} in “${nameOf(id)}”`);
  const words = [...out, ...into].join(", ");
  return words && `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}

/** What one place's line says of its blocks now and then. */
export function changeWords(fitted: number, put: number, misses = false): string {
  if (fitted === put) return `${fitted} fitted, ${misses ? "as the nearest has it" : "as they should be"}`;
  const change = put > fitted ? `put ${put - fitted} more in` : `take ${fitted - put} out`;
  return fitted ? `${fitted} fitted now: ${change}` : "none fitted yet";
}

/** "52.8 %", with what it is wanted to be and what it is without ballast. */
export function shareFact(
  name: string,
  share: Uncertain | null,
  without: Uncertain | null,
  wanted: Share | null,
): Fact {
  if (!share) return { name, value: "not known" };
  const before = without && `${showPercent(without.value, expanded(without))} without ballast`;
  return {
    name,
    value: showPercent(share.value, expanded(share)),
    under: [wantedWords(wanted), before].filter(Boolean).join(" · "),
  };
}

function wantedWords(wanted: Share | null): string | null {
  if (!wanted) return null;
  const [low, high] = wanted.map((end) => showPercent(end));
  if (wanted[0] <= 0) return `wanted at most ${high}`;
  return wanted[1] >= 1 ? `wanted at least ${low}` : `wanted ${low} to ${high}`;
}

/** How much the centre comes down or goes up. */
export function heightFact({ height }: Ballast, car: Carried, unit: string): Fact {
  const name = "Centre of gravity";
  if (height === null || car.height === null) return { name, value: "height not known" };
  const change = height - car.height;
  const far = showLength(Math.abs(change), unit);
  if (far === showLength(0, unit)) return { name, value: "as high as before" };
  return { name, value: `${far} ${change < 0 ? "lower" : "higher"}`, under: "than without ballast" };
}

/** What it does to cross weight on springs; nothing without the front's share of roll stiffness. */
export function crossFact({ cross_load: load }: Ballast, unit: string): Fact[] {
  if (load === null) return [];
  const value =
    Math.abs(load) < HARDLY ? "next to no change" : `${showMass(load, unit, null, true)} on right front and left rear`;
  return [{ name: "Cross weight", value, under: "by these blocks alone, springs untouched" }];
}

/** What is missing, with its mass in the garage's own unit. */
export function missingIn(unit: string, missing: readonly Warned[]): Warned[] {
  return missing.map((each) => ({ ...each, data: { ...each.data, text: showMass(Number(each.data.kg), unit) } }));
}

const UNAIMED = ["ballast_no_front", "ballast_no_left"];

/** The wishes that cannot be aimed at: without them the answer is another one. */
export function unaimedOf({ warnings }: BallastChoice): Warned[] {
  return warnings.filter(({ code }) => UNAIMED.includes(code));
}
