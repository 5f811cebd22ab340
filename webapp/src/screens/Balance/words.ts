/** The balance in plain words for a driver: shares that moved, and where the centre went. */

import { say } from "../../answers";
import type { Balance, CarState, Side, StateName } from "../../core/balance/balance";
import { showLength, showPercent } from "../../core/numbers/shown";
import { beyondDoubt, expanded, subtract, type Uncertain } from "../../core/numbers/uncertain";
import { unbroken } from "../../parts/drawing/placeWords";

export const STATES: readonly StateName[] = ["start", "weighed", "now", "after"];
export const STATE_WORDS: Readonly<Record<StateName, string>> = {
  start: "Start",
  weighed: "Weighed",
  now: "Now",
  after: "After",
};

type Axis = "x" | "y" | "z";
const AXES: readonly Axis[] = ["x", "y", "z"];
const WAYS: Readonly<Record<Axis, readonly [minus: string, plus: string]>> = {
  x: ["forward", "rearward"],
  y: ["to the left", "to the right"],
  z: ["down", "up"],
};

const percent = (share: Uncertain) => unbroken(showPercent(share.value, expanded(share)));

/** "52.1 ± 0.3 % on the front wheels, was 53.0 ± 0.2 %"; null when it cannot be told. */
export function shareWords({ states }: Balance, side: Side, before: StateName | null, now: StateName): string | null {
  const share = states[now]?.shares[side];
  if (!share) return null;
  const old = before && states[before]?.shares[side];
  const was = old && percent(old) !== percent(share) ? `, was ${percent(old)}` : "";
  return `${percent(share)} on the ${side} wheels${was}`;
}

const ALONG: Readonly<Record<Axis, string>> = { x: "along the car", y: "across it", z: "in height" };

/** "The centre moved 14 ± 6 mm rearward and 8 ± 4 mm down"; what cannot be told from nothing is left out, what is unknown never said to rest. */
export function movedWords({ states }: Balance, from: StateName, to: StateName, unit: string): string | null {
  const [old, now] = [states[from]?.body, states[to]?.body];
  if (!old || !now) return null;
  const moves = AXES.flatMap((axis) => moveWords(axis, old[axis], now[axis], unit));
  if (!moves.length) return restWords(AXES.filter((axis) => old[axis] && now[axis]));
  const last = moves[moves.length - 1]!;
  return `The centre of gravity went ${moves.length > 1 ? `${moves.slice(0, -1).join(", ")} and ${last}` : last}`;
}

/** `known`: the axes it can be told of. */
function restWords(known: readonly Axis[]): string {
  if (!known.length) return "It cannot be told how the centre of gravity moved";
  const where = known.length < AXES.length ? ` ${known.map((axis) => ALONG[axis]).join(" or ")}` : "";
  return `The centre of gravity has not moved by more than the doubt${where}`;
}

function moveWords(axis: Axis, old: Uncertain | null, now: Uncertain | null, unit: string): string[] {
  if (!old || !now) return [];
  const move = subtract(now, old);
  if (!beyondDoubt(move)) return [];
  return [`${unbroken(showLength(Math.abs(move.value), unit, expanded(move)))} ${WAYS[axis][move.value < 0 ? 0 : 1]}`];
}

/** What a change in yaw inertia does, said only where it is more than its doubt. */
export function yawWords(change: Uncertain): string {
  if (!beyondDoubt(change)) return "no change that could be told";
  return change.value < 0 ? "turns in more willingly" : "turns in less willingly";
}

/** One figure of a state as [value, how sure]; "—" where it cannot be told. */
export type Cell = readonly [value: string, within: string];

export function cell(text: string | null): Cell {
  const [value = "", within] = (text ?? "—").split(" ± ");
  return [value, within === undefined ? "" : `± ${within}`];
}

/** "−14.22 kg" of "−14.22 ± 0.04 kg". */
export function withoutDoubt(text: string): string {
  const [value = "", within] = text.split(" ± ");
  return within === undefined || /[a-z]$/.test(value) ? value : `${value} ${within.replace(/^\S+ /, "")}`;
}

export function shareCell(state: CarState | undefined, side: Side): Cell {
  const share = state?.shares[side];
  return cell(share ? showPercent(share.value, expanded(share)) : null);
}

/** A length on an axis, its sign put in words. */
export function axisCell(state: CarState | undefined, axis: Axis, unit: string): Cell {
  const at = state?.body[axis];
  if (!at) return cell(null);
  const [value, within] = cell(showLength(Math.abs(at.value), unit, expanded(at)));
  return [value, axis === "y" && at.value !== 0 ? `${within} ${at.value < 0 ? "left" : "right"}` : within];
}

/** What comes of the parts somebody noted as such; where none is, nothing is known, and that is not zero. */
export function notedOr(mass: Uncertain): string {
  return mass.value === 0 && expanded(mass) === 0 ? "none noted" : say(mass, true);
}
