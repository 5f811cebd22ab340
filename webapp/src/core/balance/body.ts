/**
 * A rigid body and what loads put on it or taken off it do: mass, centre of gravity, yaw inertia.
 *
 *     centre      (M c + Σ m r) / (M + Σ m), m counted negative where it comes off; in each axis alike
 *     yaw         ΔI = Σ m (|ρ|² + k) − |Σ m ρ|² / M',  ρ = r − c horizontally, M' = M + Σ m
 *
 * The yaw inertia is about the body's own centre, before about the old one, after about the new one. For a single point
 * mass this is ∓ m M / (M ∓ m) d², which m d² alone (about the old centre) is not. k is the load's own radius of
 * gyration squared: (l² + w²) / 12 of a plate. The absolute inertia of a car is unknown; the change needs only its mass
 * and centre.
 *
 * The doubt of every mass, place and of the body itself is carried to first order, with what they share. The
 * derivatives are short about the new centre: with D = Σ m ρ / M', ∂ΔI/∂m = |ρ − D|² + k, ∂ΔI/∂r = 2 m (ρ − D),
 * ∂ΔI/∂M = |D|² and ∂ΔI/∂c = −2 M D.
 */

import { derived, divide, fsum, multiply, total, type Uncertain } from "../numbers/uncertain";

/** `mass` in kg, negative where it comes off; its centre in m, an axis null when unknown. `own`: k in m². */
export type Load = {
  readonly mass: Uncertain;
  readonly x: Uncertain | null;
  readonly y: Uncertain | null;
  readonly z: Uncertain | null;
  readonly own: number;
};

/** `mass` in kg and the centre of gravity in m, an axis null when unknown. */
export type Body = {
  readonly mass: Uncertain;
  readonly x: Uncertain | null;
  readonly y: Uncertain | null;
  readonly z: Uncertain | null;
};

/** Radius of gyration squared, m², of a plate of this length (along x) and width (along y) about its centre. */
export function ownOf(length: number, width: number): number {
  return (length * length + width * width) / 12;
}

/** The body with the loads on it. Nothing has a centre where nothing is left: then every axis is null. */
export function changed(body: Body, loads: readonly Load[]): Body {
  const masses = [body.mass, ...loads.map((load) => load.mass)];
  const mass = total(masses);
  if (mass.value <= 0) return { mass, x: null, y: null, z: null };
  const along = (axis: "x" | "y" | "z") => centreOf(masses, [body[axis], ...loads.map((load) => load[axis])], mass);
  return { mass, x: along("x"), y: along("y"), z: along("z") };
}

function centreOf(
  masses: readonly Uncertain[],
  arms: readonly (Uncertain | null)[],
  mass: Uncertain,
): Uncertain | null {
  const known = arms.filter((arm) => arm !== null);
  if (known.length < arms.length) return null;
  return divide(total(masses.map((each, at) => multiply(each, known[at] as Uncertain))), mass);
}

/** How the loads change the body's yaw inertia, kg m²; null when an x or y is unknown or nothing is left. */
export function yawChange(body: Body, loads: readonly Load[]): Uncertain | null {
  const mass = total([body.mass, ...loads.map((load) => load.mass)]).value;
  const [x, y] = [body.x, body.y];
  if (!x || !y || mass <= 0 || loads.some((load) => !load.x || !load.y)) return null;
  const arms = loads.map((load) => ({
    load,
    m: load.mass.value,
    x: (load.x as Uncertain).value - x.value,
    y: (load.y as Uncertain).value - y.value,
  }));
  const shiftX = fsum(arms.map((arm) => arm.m * arm.x)) / mass;
  const shiftY = fsum(arms.map((arm) => arm.m * arm.y)) / mass;
  const shift = shiftX * shiftX + shiftY * shiftY;
  const aboutOld = fsum(arms.map((arm) => arm.m * (arm.x * arm.x + arm.y * arm.y + arm.load.own)));
  const items = [body.mass, x, y];
  const partials = [shift, -2 * body.mass.value * shiftX, -2 * body.mass.value * shiftY];
  for (const arm of arms) {
    const [farX, farY] = [arm.x - shiftX, arm.y - shiftY];
    items.push(arm.load.mass, arm.load.x as Uncertain, arm.load.y as Uncertain);
    partials.push(farX * farX + farY * farY + arm.load.own, 2 * arm.m * farX, 2 * arm.m * farY);
  }
  return derived(aboutOld - mass * shift, items, partials);
}
