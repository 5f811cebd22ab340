/**
 * What is known of a mass before it is read: by its own earlier readings and claims, parts alike, the part it replaces.
 *
 * Each says where an honest reading falls: ln(reading ÷ known) about a middle, with a spread by how it is known. The
 * spreads are common practice, no source; how many honest readings they question is counted in `tests/core/slips.test.ts`.
 */

import type { Driver, Garage, Part, Weighing } from "../garage/records";
import type { Basis, Masses } from "./weighing";

/**
 * Something known of a mass. `of`: the part or driver it is known from; `value`: kg of one piece.
 *
 * `middle` and `spread`: of ln(an honest reading ÷ value). `basis`: how it is known; null of people in general.
 */
export type Known = {
  readonly why: "itself" | "alike" | "twin" | "person" | "car" | "weigh_in" | "check";
  readonly of: string;
  readonly basis: Basis | null;
  readonly value: number;
  readonly middle: number;
  readonly spread: number;
};
const SPREADS: Readonly<Record<Basis, number>> = { weighed: 0.05, worked_out: 0.08, quoted: 0.12, guessed: 0.3 };
const ALIKE = 0.2; // parts of one name and zone
const TWIN = { middle: -0.55, spread: 0.4 }; // what comes in the place of a part is most often lighter than it
const CAR = { weighed: 0.12, minimum: 0.25 }; // fuel and driver differ; a class's minimum is near what its cars weigh
const CHECK = 0.05; // a scale and what it is checked with are no further apart
const PERSON = { value: 80, middle: 0, spread: 0.25 }; // with gear

/** A garage with what its parts can be known by: parts by plain name, and what is to replace which. */
export type Lore = {
  readonly garage: Garage;
  readonly masses: Masses;
  readonly named: ReadonlyMap<string, readonly Part[]>;
  readonly replacing: ReadonlyMap<string, readonly Part[]>;
};

export function loreOf(garage: Garage, masses: Masses): Lore {
  const [named, replacing] = [new Map<string, Part[]>(), new Map<string, Part[]>()];
  const note = (lists: Map<string, Part[]>, key: string, part: Part) => {
    const list = lists.get(key);
    if (list) list.push(part);
    else lists.set(key, [part]);
  };
  for (const part of garage.parts.values()) {
    note(named, plainName(part.name), part);
    if (part.instead_of && part.instead_of !== part.id) note(replacing, part.instead_of, part);
  }
  return { garage, masses, named, replacing };
}

/** What is known of what was weighed, without this weighing and those it took the place of. */
export function knownOf(lore: Lore, { id, of }: Weighing, ...without: string[]): Known[] {
  const [part, driver] = [lore.garage.parts.get(of ?? ""), lore.garage.drivers.get(of ?? "")];
  const left = new Set([id, ...without]);
  if (part) return knownOfPart(lore, part, left);
  return driver ? knownOfDriver(lore.masses, driver, left) : [];
}

/** What is known of the whole car: what it weighs now, else what its class asks, kg. */
export function knownOfCar(weight: number | null, minimum: number | null): Known[] {
  const [value, spread, basis] = weight ? [weight, CAR.weighed, "weighed" as const] : [minimum, CAR.minimum, null];
  return value ? [{ why: "car", of: "", basis, value, middle: 0, spread }] : [];
}

/** What is known of a whole car by its other weigh-ins (kg as shown), the middle one first, and by what its class asks. */
export function knownOfWeighIns(others: readonly number[], minimum: number | null): Known[] {
  const middle = others.length ? middleOf(others) : 0;
  const inTurn = [...others].sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle));
  const byOthers = inTurn.flatMap((total) => knownOfCar(total, null));
  return [...byOthers.map((each) => ({ ...each, why: "weigh_in" as const })), ...knownOfCar(null, minimum)];
}

/** What is known of a scale's reading by the mass put on for a check (kg), and of that mass by the reading. */
export function knownOfCheck(value: number): Known[] {
  return [{ why: "check", of: "", basis: null, value, middle: 0, spread: CHECK }];
}

/** What is asked of a part that may not be written down yet. */
export type About = Pick<Part, "id" | "name" | "instead_of" | "claim" | "claim_basis"> & { zone: string | null };

/** What is known of a part without these weighings of it: by itself, by parts alike, by the one it is to replace. */
export function knownOfPart(lore: Lore, part: About, without: ReadonlySet<string>): Known[] {
  const { garage, masses } = lore;
  const twins = lore.replacing.get(part.id) ?? [];
  const replaced = part.instead_of ? garage.parts.get(part.instead_of) : undefined;
  return [
    ...ofItself(masses, part, without),
    ...alike(lore, part),
    ...(replaced ? ofTwin(masses, replaced.id, TWIN.middle) : []),
    ...twins.flatMap(({ id }) => ofTwin(masses, id, -TWIN.middle)),
  ];
}

/** What is known of a driver without these weighings; in doubt, what people weigh. */
function knownOfDriver(masses: Masses, driver: Driver, without: ReadonlySet<string>): Known[] {
  const own = ofItself(masses, driver, without);
  return own.length ? own : [{ why: "person", of: driver.id, basis: null, ...PERSON }];
}

function ofItself(
  masses: Masses,
  thing: Pick<About, "id" | "claim" | "claim_basis">,
  without: ReadonlySet<string>,
): Known[] {
  const known = (basis: Basis, value: number): Known => ({
    ...{ why: "itself", of: thing.id, basis, value },
    ...{ middle: 0, spread: SPREADS[basis] },
  });
  const others = (masses.of.get(thing.id)?.readings ?? []).filter(({ weighing }) => !without.has(weighing));
  const claim = thing.claim ? [known((thing.claim_basis ?? "guessed") as Basis, thing.claim.value)] : [];
  return others.length ? [known("weighed", middleOf(others.map(({ value }) => value))), ...claim] : claim;
}

/** Weighed parts of the same name and zone; a zone nobody said is no other zone. */
function alike({ masses, named }: Lore, part: About): Known[] {
  const name = plainName(part.name);
  if (!name) return [];
  const zone = plainName(part.zone);
  const isAlike = (other: Part) => other.id !== part.id && (!zone || !other.zone || plainName(other.zone) === zone);
  const found = (named.get(name) ?? []).filter(isAlike);
  const weighed = found.map(({ id }) => masses.of.get(id)).filter((mass) => mass?.basis === "weighed");
  if (!weighed.length) return [];
  const value = middleOf(weighed.map((mass) => mass?.mass?.value as number));
  return [{ why: "alike", of: weighed[0]?.of as string, basis: "weighed", value, middle: 0, spread: ALIKE }];
}

function ofTwin(masses: Masses, id: string, middle: number): Known[] {
  const { mass, basis } = masses.of.get(id) ?? {};
  if (!mass || !basis) return [];
  const spread = Math.sqrt(TWIN.spread * TWIN.spread + SPREADS[basis] * SPREADS[basis]);
  return [{ why: "twin", of: id, basis, value: mass.value, middle, spread }];
}

const SIDES = /\b(left|right|l\/?h|r\/?h)\b/g;

/** A name or zone without its side and in lower case: what is on both sides weighs much the same. */
function plainName(name: string | null): string {
  const lower = (name ?? "").toLowerCase();
  return lower.replace(SIDES, " ").replace(/\s+/g, " ").trim() || lower.trim();
}

/** The middle one; of an even number the lower of the two, so that it is one of them. */
function middleOf(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[(values.length - 1) >> 1] as number;
}
