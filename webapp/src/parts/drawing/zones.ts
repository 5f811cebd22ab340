/** Where parts sit by their names, and what follows from a zone. Common practice of closed cars, no source. */
import type { Changes, Values } from "../../journal/kinds";

export type Zone = NonNullable<Values<"part">["zone"]>;

const WHEELS: readonly Zone[] = ["front wheels", "rear wheels"];

/** By whole words, of which a plural is one too; the first line that fits says it. */
const NAMED: readonly (readonly [words: string, ...zones: Zone[]])[] = [
  ["spare wheel", "boot"],
  ["steering wheel", "dash"],
  ["wheel", ...WHEELS],
  ["tyre", ...WHEELS],
  ["rim", ...WHEELS],
  ["brake disc", ...WHEELS],
  ["caliper", ...WHEELS],
  ["hub", ...WHEELS],
  ["boot lid", "tail"],
  ["tailgate", "tail"],
  ["rear window", "glass"],
  ["windscreen", "glass"],
  ["window", "glass"],
  ["rear seat", "cabin rear"],
  ["rear bench", "cabin rear"],
  ["seat", "cabin front"],
  ["door", "left door", "right door"],
  ["bonnet", "engine bay"],
  ["battery", "engine bay", "boot"],
  ["starter", "engine bay"],
  ["alternator", "engine bay"],
  ["radiator", "nose"],
  ["headlamp", "nose"],
  ["horn", "nose"],
  ["bumper", "nose", "tail"],
  ["dashboard", "dash"],
  ["radio", "dash"],
  ["heater", "bulkhead"],
  ["carpet", "floor"],
  ["sunroof", "roof"],
  ["headliner", "roof"],
  ["gearbox", "underneath front"],
  ["silencer", "underneath rear"],
  ["exhaust", "underneath rear"],
  ["tank", "underneath rear"],
  ["jack", "boot"],
];

/** Zones in which a part of this name sits on most cars; of two, a word for the end or the side says which. */
export function zonesNamed(name: string): readonly Zone[] {
  const words = ` ${wordsOf(name)} `;
  const [, ...zones] = NAMED.find(([wanted]) => words.includes(` ${wanted} `)) ?? [""];
  const said = zones.filter((zone) => SIDES.some(([word, ends]) => words.includes(` ${word} `) && ends.test(zone)));
  return said.length ? said : zones;
}

const SIDES: readonly (readonly [word: string, zones: RegExp])[] = [
  ["front", /^front|nose|engine/],
  ["rear", /^rear|tail|boot/],
  ["left", /^left/],
  ["right", /^right/],
];

function wordsOf(name: string): string {
  const words = name
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean);
  return words.map((word) => (word.length > 3 ? word.replace(/s$/, "") : word)).join(" ");
}

/** What is set with a zone: what sits at a wheel is unsprung, and turns but for what holds the pads, unless said already. */
export function placing(zone: Zone, { name = "", unsprung, rotating }: Values<"part">): Changes<"part"> {
  if (!WHEELS.includes(zone)) return { zone };
  return {
    zone,
    ...(unsprung === undefined && { unsprung: true }),
    ...(rotating === undefined && { rotating: !/\bcalipers?\b/i.test(name) }),
  };
}

/** Said where a zone is chosen. */
export const FOLLOWS = "What sits at the wheels counts as unsprung and, but for calipers, as rotating.";
