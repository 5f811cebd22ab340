/** What the core tells of the balance, and every weight that a job moves, ready to be drawn. */
import { say } from "../../answers";
import { type Balance, balance, type StateName } from "../../core/balance/balance";
import { changed } from "../../core/balance/body";
import { byPart, type Moved, movedBetween } from "../../core/balance/moved";
import type { Garage } from "../../core/garage/records";
import { jobNets, jobsInCar } from "../../core/ledger/net";
import { showMass } from "../../core/numbers/shown";
import { expanded, type Uncertain, uncertain } from "../../core/numbers/uncertain";
import type { Standing } from "../../core/standing/standing";
import type { Masses } from "../../core/weighing/weighing";
import { massUnit } from "../../garage/units";
import type { Named } from "../../parts/drawing/CentreClose";
import type { Centre } from "../../parts/drawing/CentreMark";
import { halfOf, type Mark, spotOf } from "../../parts/drawing/marks";
import type { Spot } from "../../parts/drawing/view";
import { STATE_WORDS, withoutDoubt } from "./words";

/** `marks`: of all parts with a mass that jobs in the car or asked for move. `loads`: by state, part → kg since the weigh-in. */
export type Told = {
  balance: Balance;
  marks: readonly Mark[];
  loads: Readonly<Partial<Record<StateName, ReadonlyMap<string, number>>>>;
};

/** `jobs`: those asked for beyond the present, null for all that are chosen. */
export function tell(garage: Garage, known: Masses, jobs: readonly string[] | null, stand?: Standing): Told {
  const found = balance(garage, { jobs }, known, stand);
  const nets = jobNets(garage, known);
  const now = jobsInCar(garage).map((job) => job.id);
  const after = [...now, ...found.jobs];
  const between = (old: readonly string[], new_: readonly string[]) => movedBetween(garage, nets, old, new_, {});
  const then = (found.weigh_in && garage.weigh_ins.get(found.weigh_in)?.jobs) || null;
  const loads = then
    ? {
        start: kilograms(between(then, [])),
        now: kilograms(between(then, now)),
        after: kilograms(between(then, after)),
      }
    : {};
  return {
    balance: found,
    marks: [...marksOf(garage, between([], now), false), ...marksOf(garage, between(now, after), true)],
    loads,
  };
}

function kilograms(moves: readonly Moved[]): Map<string, number> {
  return new Map([...byPart(moves)].map(([part, { mass }]) => [part, mass.value]));
}

function marksOf(garage: Garage, moves: readonly Moved[], planned: boolean): Mark[] {
  return [...byPart(moves)].flatMap(([part, { mass, place }]) => {
    if (mass.value === 0) return [];
    const name = garage.parts.get(part)?.name ?? "A part not here yet";
    const shared = { part, name, planned, spot: spotOf(place), half: halfOf(place), apart: Math.sqrt(place.apart) };
    const unit = massUnit() === "lb oz" ? "lb" : massUnit(); // beside the car there is no room for two
    const brief = withoutDoubt(showMass(mass.value, unit, expanded(mass), true));
    return [{ ...shared, key: `${planned ? "then" : "now"}:${part}`, mass: mass.value, says: say(mass, true), brief }];
  });
}

/** The centre of a state with its 95 % interval; an axis nobody can tell is not a number. */
export function centreOf(told: Told, name: StateName): Centre | null {
  const body = told.balance.states[name]?.body;
  if (!body) return null;
  const value = (axis: Uncertain | null) => axis?.value ?? NaN;
  const within = (axis: Uncertain | null) => (axis ? expanded(axis) : NaN);
  const { x, y, z } = body;
  return { spot: { x: value(x), y: value(y), z: value(z) }, within: { x: within(x), y: within(y), z: within(z) } };
}

const SORTS = { start: "then", now: "now", after: "after" } as const;

/** The states whose centre is drawn close up. */
export function statesOf(told: Told): Named[] {
  return (["start", "now", "after"] as const).flatMap((name) => {
    const centre = centreOf(told, name);
    const isSame = name === "after" && told.balance.jobs.length === 0;
    return centre && !isSame ? [{ name: STATE_WORDS[name], sort: SORTS[name], centre }] : [];
  });
}

/** Where the centre of each state is once a part stands elsewhere, by the core's own rule; nothing else is computed anew. */
export function centresWith(told: Told, part: string, from: Spot, to: Spot): Partial<Record<StateName, Spot>> {
  const moved: Partial<Record<StateName, Spot>> = {};
  for (const name of ["start", "now", "after"] as const) {
    const [state, mass] = [told.balance.states[name], told.loads[name]?.get(part) ?? 0];
    if (!state) continue;
    const bare = (axis: Uncertain | null) => (axis ? uncertain(axis.value) : null);
    const load = (kg: number, { x, y, z }: Spot) => ({
      mass: uncertain(kg),
      x: uncertain(x),
      y: uncertain(y),
      z: uncertain(z),
      own: 0,
    });
    const { x, y, z } = state.body;
    const body = { mass: uncertain(state.body.mass.value), x: bare(x), y: bare(y), z: bare(z) };
    const after = mass === 0 ? body : changed(body, [load(-mass, from), load(mass, to)]);
    moved[name] = { x: after.x?.value ?? NaN, y: after.y?.value ?? NaN, z: after.z?.value ?? NaN };
  }
  return moved;
}
