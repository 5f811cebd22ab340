/** What a balance says beside its figures: why one is missing, and what was taken on trust. */

import "../../laterErrors";
import { type Car, type Garage, type Warned, warned } from "../garage/records";
import type { JobNet } from "../ledger/net";
import { ballastIn } from "../wholeCar/aboard";
import { ballastNow } from "../wholeCar/weighed";
import type { Base, CarState } from "./balance";
import type { Body } from "./body";
import type { Change } from "./moved";
import type { Place } from "./place";

const UNEQUAL_TRACKS = 0.005; // of their mean: beyond it a share of the sides depends on which track is meant
const CORNERS = ["lf", "rf", "lr", "rr"] as const;

/** Why x, y, z or the corners of a state are missing. */
export function reasonsOf(car: Car | null, base: Base, body: Body, loads: CarState["loads"]): Record<string, Warned> {
  const at = { weigh_in: base.record.id };
  const found: Record<string, Warned> = {};
  if (!body.x) found.x = car?.wheelbase ? warned("axles_unknown", at) : warned("wheelbase_unknown");
  if (!body.y) found.y = car?.track_front && car.track_rear ? warned("sides_unknown", at) : warned("tracks_unknown");
  if (!body.z) found.z = warned("height_unknown");
  if (CORNERS.some((name) => !loads[name])) {
    const known = CORNERS.every((name) => base.loads.loads[name]);
    found.corners = known ? warned("cross_unknown") : warned("corners_unweighed", at);
  }
  return found;
}

/** Parts without a mass, outside the car, or at a place nobody measured. */
export function aboutJobs(
  nets: ReadonlyMap<string, JobNet>,
  jobs: readonly string[],
  places: readonly Place[],
): Warned[] {
  const unweighed = [...new Set(jobs.flatMap((job) => nets.get(job)?.unweighed ?? []))].sort();
  const astray = places.filter((place) => place.outside.length > 0);
  const rough = (
    [
      ["place_by_zone", "zone"],
      ["place_anywhere", "anywhere"],
    ] as const
  ).flatMap(([code, by]) => {
    const parts = places.filter((place) => Object.values(place.by).includes(by)).map((place) => place.part);
    return parts.length > 0 ? [warned(code, { parts })] : [];
  });
  return [
    ...(unweighed.length > 0 ? [warned("unweighed", { parts: unweighed })] : []),
    ...astray.map((place) => warned("place_outside", { part: place.part, axes: [...place.outside] })),
    ...rough,
  ];
}

export function aboutLevels(changes: readonly Change[]): Warned[] {
  const parts = [...new Set(changes.flatMap((change) => change.unsure))].sort();
  return parts.length > 0 ? [warned("level_unsure", { parts })] : [];
}

/** What the centre is of, and what of it was taken on trust. */
export function aboutCar(garage: Garage, base: Base | null): Warned[] {
  if (!base) return [];
  const { car } = garage;
  const at = { weigh_in: base.record.id };
  const fitted = ballastNow(garage);
  const isOtherwise = fitted !== null && fitted.value !== ballastIn(base.record).value;
  const [front, rear] = [car?.track_front?.value ?? 0, car?.track_rear?.value ?? 0];
  const unequal = front > 0 && rear > 0 && Math.abs(front - rear) > UNEQUAL_TRACKS * 0.5 * (front + rear);
  return [
    warned("centre_as_weighed", at),
    ...(base.height ? [base.height] : []),
    ...(isOtherwise ? [warned("balance_without_ballast", at)] : []),
    ...(unequal ? [warned("tracks_unequal")] : []),
  ];
}
