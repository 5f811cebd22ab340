/**
 * How high the centre of gravity of a weighed car lies: by lifting an axle, by another lift carried over, or assumed.
 *
 * The newest lift of the weigh-in itself counts. Without one the newest of another weigh-in does: the jobs between the
 * two lists of jobs are put on that car or taken off it (`core/balance/moved`, `core/balance/body`), and with them the
 * doubt of every mass and place; so are the fuel, the driver and the ballast by which the two differ, as far as both
 * were noted. With no lift at all the height is assumed from the track: ten measured road vehicles of the NHTSA NCAP
 * 2004 rollover tests have a static stability factor of 1.12 to 1.59, h = t / (2 SSF).
 */

import "../../laterErrors";
import { type Car, type Garage, type Lift, type Warned, type WeighIn, warned } from "../garage/records";
import type { JobNet } from "../ledger/net";
import { rectangular, subtract, type Uncertain, uncertain } from "../numbers/uncertain";
import type { Masses } from "../weighing/weighing";
import { driverIn, fuelIn } from "../wholeCar/aboard";
import { loadsOf } from "../wholeCar/weighIn";
import { type Aboard, placeAboard } from "./aboard";
import { changed, type Load } from "./body";
import { liftOf, liftsInOrder } from "./lift";
import { movedBetween, type Sizes } from "./moved";
import { meanTrack } from "./place";

const ASSUMED_HEIGHT = [0.38, 0.07] as const; // middle and half-width in mean tracks
/** In m, middle and half-width, of a tank, seat or ballast without a height: common practice, no source. */
const LOW = [0.35, 0.25] as const;
type Nets = ReadonlyMap<string, JobNet>;

/** `value` (m) above the ground; null when not even the track is known. `note`: what it rests on. */
export type Height = { readonly value: Uncertain | null; readonly note: Warned | null };

/** Of the car of a weigh-in as it stood there. `nets`: of every job; `sizes`: as `core/balance/moved` takes them. */
export function heightOf(garage: Garage, record: WeighIn, nets: Nets, known: Masses, sizes: Sizes = {}): Height {
  const lifts = liftsInOrder(garage).reverse();
  const own = lifts.filter((each) => each.weigh_in === record.id);
  for (const each of [...own, ...lifts.filter((other) => other.weigh_in !== record.id)]) {
    const isOwn = each.weigh_in === record.id;
    const height = liftOf(garage, each, known).height;
    const value = height && !isOwn ? carried(garage, each, height, record, nets, known, sizes) : height;
    const data = { lift: each.id, weigh_in: each.weigh_in };
    if (value) return { value, note: warned(isOwn ? "height_by_lift" : "height_carried", data) };
  }
  return assumed(garage.car);
}

/** The height of the car of another weigh-in, with the jobs of this one; null when nobody confirmed either list. */
function carried(
  garage: Garage,
  lift: Lift,
  z: Uncertain,
  to: WeighIn,
  nets: Nets,
  known: Masses,
  sizes: Sizes,
): Uncertain | null {
  const lifted = garage.weigh_ins.get(lift.weigh_in) as WeighIn;
  const { loads, x_cg: x, y_cg: y } = loadsOf(garage, lifted, known);
  if (!lifted.jobs || !to.jobs || !loads.total) return null;
  const moves = movedBetween(garage, nets, lifted.jobs, to.jobs, sizes).map(({ load }) => load);
  return changed({ mass: loads.total, x, y, z }, [...moves, ...exchanged(garage, lifted, to, known)]).z;
}

/** What was on board at one weigh-in comes out, what was at the other goes in; what was not noted is the same. */
function exchanged(garage: Garage, then: WeighIn, to: WeighIn, known: Masses): Load[] {
  const [before, after] = [aboard(garage, then, known), aboard(garage, to, known)];
  return (["tank", "driver", "ballast"] as const).flatMap((what) => {
    const [old, new_] = [before[what], after[what]];
    return old && new_ ? [loadOf(garage.car, what, subtract(new_, old))] : [];
  });
}

function aboard(garage: Garage, record: WeighIn, known: Masses): Record<Aboard, Uncertain | null> {
  const ballast = uncertain(record.ballast?.value ?? 0);
  return { tank: fuelIn(garage, record), driver: driverIn(garage, record, known), ballast };
}

function loadOf(car: Car | null, what: Aboard, mass: Uncertain): Load {
  const place = placeAboard(car, what);
  const [middle, within] = LOW;
  return { ...place, mass, z: place.z ?? uncertain(middle, { [`place:${what}:z`]: rectangular(within) }) };
}

function assumed(car: Car | null): Height {
  const track = meanTrack(car);
  if (track === null) return { value: null, note: null };
  const [middle, within] = ASSUMED_HEIGHT;
  const value = uncertain(middle * track, { "assumed:height": rectangular(within * track) });
  return { value, note: warned("height_assumed") };
}
