/** Slips in what was done: a job entered twice, one on the wrong side of a weigh-in, a part that is elsewhere. */

import { ALIKE, SAME_PART } from "../../generated/slipPriors";
import { order } from "../garage/order";
import type { Part } from "../garage/records";
import type { Line } from "../ledger/net";
import { plainSum } from "../numbers/plain";
import { type Uncertain, u } from "../numbers/uncertain";
import type { Weighed } from "../wholeCar/weighed";
import type { Looks, Shape } from "./looks";
import type { Of, Tried } from "./slip";
import { type Course, movedBy, type Trail } from "./trail";

const MANY_ALIKE = 12; // of so many lines of one name, none is another entered twice
const NEAR = 7; // standard uncertainties: a known part further from a step is not what made it
const NO_NAMES = new Set(["a", "an", "and", "both", "copy", "of", "pair", "set", "the", "x"]);

export function tryJobs(trail: Trail, looks: Looks, tried: Tried): void {
  twice(trail, looks, tried);
  wrongSide(trail, looks, tried);
  putBack(trail, looks, tried);
}

type Same = { other: string; job: string; lines: Map<string, readonly [Line, Line]> };

/** The lines of a job that another has too are not there in truth. */
function twice(trail: Trail, looks: Looks, tried: Tried): void {
  const found = sameOf(trail).sort((a, b) => order(a.other, b.other) || order(a.job, b.job));
  for (const { other, job, lines: both } of found) {
    const shape = movedBy(trail.jobs.get(job) as Course);
    if (new Set(shape).size === 1) continue; // all looks have it or lack it alike
    const lines = [...both.values()];
    const isPart = lines.some(([mine, its]) => mine.part === its.part);
    const kg = plainSum(lines.map(([{ mass }]) => mass?.value ?? 0));
    const part = lines.length === 1 ? (lines[0]?.[0].part ?? null) : null;
    tried.add(looks.about(shape, kg), "twice", { job, other, part, kg }, isPart ? SAME_PART : 1);
  }
}

/** A job, one that has the same, and the lines of the latter with those of the former. */
function sameOf({ lines, garage }: Trail): Same[] {
  const alike = new Map<string, Line[]>();
  const note = (key: string, line: Line) => alike.set(key, [...(alike.get(key) ?? []), line]);
  for (const line of lines) {
    note(`${line.way} ${line.part}`, line);
    const name = plainName(garage.parts.get(line.part)?.name ?? null);
    if (name) note(`${line.way}  ${name}`, line);
  }
  const found = new Map<string, Same>();
  for (const group of alike.values()) {
    if (group.length > MANY_ALIKE) continue;
    for (const its of group) {
      for (const mine of group) {
        if (its.job === mine.job || !(its.part === mine.part || asHeavy(its.mass, mine.mass))) continue;
        const key = `${its.job} ${mine.job}`;
        const same = found.get(key) ?? { other: its.job, job: mine.job, lines: new Map() };
        if (!same.lines.has(mine.id)) same.lines.set(mine.id, [mine, its]);
        found.set(key, same);
      }
    }
  }
  return [...found.values()];
}

/** The words of a name that tell one part from another, in one order; nothing of a part nobody named. */
export function plainName(name: string | null): string {
  const words = (name ?? "").toLowerCase().split(/[^\p{L}\p{N}]+/u);
  const telling = words.filter((word) => word && !NO_NAMES.has(word)).map((word) => word.replace(/s$/, ""));
  return [...new Set(telling)].sort(order).join(" ");
}

function asHeavy(a: Uncertain | null, b: Uncertain | null): boolean {
  const [one, other] = [Math.abs(a?.value ?? 0), Math.abs(b?.value ?? 0)];
  return Math.abs(one - other) <= ALIKE * Math.max(one, other);
}

/** In the list of a weigh-in though it was done after it, or missing there though it was done before. */
function wrongSide(trail: Trail, looks: Looks, tried: Tried): void {
  for (const [job, course] of trail.jobs) {
    const net = trail.nets.get(job)?.total.mass.net as Uncertain;
    if (!net.value) continue;
    for (const look of beside(course)) {
      const there = course[look] === 1;
      const kg = there ? -net.value : net.value;
      const likely = looks.about(looks.singles[look] as Shape, kg, u(net));
      const way = there ? "undone" : "done";
      tried.add(likely, "wrong_side", { weigh_in: idOf(trail, look), job, way, kg });
    }
  }
}

const idOf = ({ counted }: Trail, look: number): string => (counted[look] as Weighed).record.id;

/** The looks next to one where a job is done or undone; before the first look it may have been done any time. */
function beside(course: Course): number[] {
  return course.slice(0, -1).flatMap((there, at) => {
    const before = at ? course[at - 1] : 0;
    return there !== course[at + 1] || there !== before ? [at] : [];
  });
}

/** A part of known mass that may be elsewhere than noted: pieces by the record of each look, now, and where it may be. */
type Loose = { part: string; mass: Uncertain; more: Course; first: number; kg: number };

/** A part went in or out and no record says so: for one weigh-in, or from a gap on. */
function putBack(trail: Trail, looks: Looks, tried: Tried): void {
  const loose = [...trail.garage.parts.values()].flatMap((part) => elsewhere(trail, part));
  loose.sort((a, b) => a.kg - b.kg || a.first - b.first || order(a.part, b.part));
  const gaps = looks.count - 1;
  tried.also("put_back", plainSum(loose.map(({ first }) => Math.max(0, gaps - first))));
  looks.steps.forEach((shape, gap) => {
    if (!mayTell(looks, tried, shape)) return;
    const moves = loose.filter(({ first }) => first <= gap).map((each) => [each, each.kg] as const);
    movedAt(looks, tried, shape, moves, { weigh_in: idOf(trail, gap), until: idOf(trail, gap + 1) });
  });
  tried.also("put_back", loose.length * looks.count);
  looks.singles.forEach((shape, look) => {
    if (!mayTell(looks, tried, shape)) return;
    const moves = loose.map((each) => [each, atLook(each, look)] as const);
    movedAt(looks, tried, shape, moves, { weigh_in: idOf(trail, look) });
  });
}

/** What it changes by at this look alone, kg: where it is at another. */
function atLook({ more, mass }: Loose, look: number): number {
  const here = more[look] as number;
  return ((more.find((each) => each !== here) ?? 0) - here) * mass.value;
}

/** Whether anything of this shape, of the best size for it, says something beside the best slip. */
function mayTell(looks: Looks, tried: Tried, shape: Shape): boolean {
  const [g, own] = looks.of(shape);
  return own > 0 && tried.tells((0.5 * g * g) / own);
}

function movedAt(looks: Looks, tried: Tried, shape: Shape, moves: readonly (readonly [Loose, number])[], of: Of): void {
  const [g, own] = looks.of(shape);
  const wide = NEAR / Math.sqrt(own);
  for (const [{ part, mass }, kg] of moves) {
    if (Math.abs(kg - g / own) > wide) continue;
    tried.also("put_back", -1);
    const likely = looks.about(shape, kg, Math.abs(kg / mass.value) * u(mass));
    tried.add(likely, "put_back", { ...of, part, way: kg > 0 ? "on" : "off", kg });
  }
}

function elsewhere({ known, pieces, coming, counted }: Trail, { id, count }: Part): Loose[] {
  const mass = known.of.get(id)?.mass;
  if (!mass?.value) return [];
  const course = pieces.get(id);
  if (!course) {
    // In the car, or still to come into it.
    const more = (count || 1) * (coming.has(id) ? 1 : -1);
    return [{ part: id, mass, more: [0, ...counted.map(() => 0), more], first: 0, kg: more * mass.value }];
  }
  const now = course.at(-1) as number;
  const first = Math.max(
    0,
    course.findLastIndex((then) => then !== now),
  );
  // Noted where it moved last, and it did not, or moved back: the same, the other way round.
  const more = (course[first] as number) - now || -now;
  return more ? [{ part: id, mass, more: [...course, now + more], first, kg: more * mass.value }] : [];
}
