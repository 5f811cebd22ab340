/** Where doubt comes from, in words: the error sources of the core, named for people and gathered by what they are. */
import { doubtsBy } from "../../core/numbers/doubts";
import type { Uncertain } from "../../core/numbers/uncertain";
import { garage } from "../../garage/garage";
import { to } from "../../route";
import { choiceWord } from "./fieldWords";

/** `href`: where it can be made smaller: the scale it comes from, when that is one of this garage; or weighing again. */
export type Doubt = { words: string; u: number; href: string | null };

const STEPS = "The steps of the display";
const WORDS: [prefix: string, words: (rest: string) => string][] = [
  ["cal:official:", () => "How true the official scale is (assumed)"],
  ["wander:", (scale) => `How far ${namedScale(scale)} has drifted since its last check`],
  ["zero:", (rest) => `The zero of ${namedScale(rest.split(":")[0]!)}`],
  ["scatter", () => "Readings that scatter more than the record of the scale says"],
  ["cal:", (scale) => (scale ? `How true ${scaleName(scale)} is` : "How true an unnamed scale is (assumed)")],
  ["known:", (name) => `How well ${checkName(name)} is known`],
  ["lift:", () => "How well the rise was measured"],
  ["round:", (of) => (isRepeated(of) ? "How its readings differ, and the steps of the display" : STEPS)],
  ["looks:", () => STEPS],
  ["spread:", () => "Readings that differ from each other"],
  ["claim:", (part) => `What is claimed of ${scaleName(part)}`],
  ["guesses", () => "People guess all too high or all too low"],
  ["quotes", () => "Quoted weights are all too high or all too low"],
  ["unlogged", () => "Weigh-ins that differ: what nobody wrote down, or a reading that is off"],
  ["ballast:", () => "The ballast on board"],
  ["rep:", () => "Rolling on and off shows a little different each time"],
  ["settle:", () => "How the car settled on its springs"],
  [
    "unready:",
    (rest) => `Not seen to before it: ${choiceWord("weigh_in", "ready", rest.split(":")[0]!).toLowerCase()}`,
  ],
  ["cut:", () => "How exactly it is cut"],
  ["callipers:", () => "The last digit of the thickness measured"],
  ["thickness:", () => "How thick sheet sold as this really is"],
  ["gauge:", () => "How far a gauge's weight may be off"],
  ["density:", () => "The density of the material"],
  ["fuel-density", () => "The density of the fuel"],
  ["driver:", () => "Who sat in the car, which is not said"],
  ["fuel:", () => "How well the fuel in the tank is known"],
];

const isRepeated = (of: string) => garage.value.of("repeat").some(({ values }) => values.of === of);

function scaleName(id: string): string {
  return String(garage.value.byId.get(id)?.values.name ?? "something not here");
}

function namedScale(id: string): string {
  return garage.value.byId.get(id)?.kind === "scale" ? scaleName(id) : "an unnamed scale";
}

function checkName(name: string): string {
  return garage.value.byId.has(name) ? "the known mass of a check" : `“${name}”`;
}

const LENGTHS = /^round:.*:(wheelbase|track_\w+|tyre_radius_\w+)$/;

export function sourceWord(source: string): string {
  if (LENGTHS.test(source)) return "The car's own lengths";
  const found = WORDS.find(([prefix]) => source.startsWith(prefix));
  return found ? found[1](source.slice(found[0].length)) : source;
}

function placeToMend(source: string): string | null {
  const [what = "", id = ""] = source.split(":");
  if (["unlogged", "scatter", "rep", "zero"].includes(what)) return to("weigh-car");
  return ["cal", "wander"].includes(what) && garage.value.byId.get(id)?.kind === "scale" ? to("scale", id) : null;
}

/** Sources that are called the same are one line; the largest doubt comes first. */
export function doubtsOf(item: Uncertain): Doubt[] {
  return doubtsBy(item, sourceWord).map(({ name, u, first }) => ({ words: name, u, href: placeToMend(first) }));
}
