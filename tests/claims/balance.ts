/** What the vectors of core/balance (with body, place, lift and loadTransfer) run in TypeScript. */

import { balance } from "../../webapp/src/core/balance/balance";
import { type Body, changed, type Load, yawChange } from "../../webapp/src/core/balance/body";
import { lift, liftOf, liftsInOrder, outlook } from "../../webapp/src/core/balance/lift";
import { powerOf, transfer } from "../../webapp/src/core/balance/loadTransfer";
import { placeOf } from "../../webapp/src/core/balance/place";
import { readGarage } from "../../webapp/src/core/garage/garage";
import { type Kind, read } from "../../webapp/src/core/numbers/quantity";
import type { Uncertain } from "../../webapp/src/core/numbers/uncertain";
import { plain, settled } from "../plain";
import type { Claims, Given } from "../vectors";

function uncertainOf(given: Given): Uncertain | null {
  return given ? { value: given.value, sources: given.sources ?? {} } : null;
}

function bodyOf({ mass, x, y, z }: Given): Body {
  return { mass: uncertainOf(mass) as Uncertain, x: uncertainOf(x), y: uncertainOf(y), z: uncertainOf(z) };
}

function loadOf(given: Given): Load {
  return { ...bodyOf(given), own: given.own ?? 0 };
}

function typed(kind: Kind, text: string | undefined) {
  return text === undefined ? null : read(kind, text);
}

function readLift({
  garage,
  front,
  rear,
  tilted,
  height,
  height_within,
  raised = "rear",
  scale = null,
}: Given): unknown {
  return lift(readGarage(garage), {
    front: typed("mass", front),
    rear: typed("mass", rear),
    tilted: typed("mass", tilted),
    height: typed("length", height),
    height_within: typed("length", height_within),
    raised,
    scale,
  });
}

function placesOf({ garage: given }: Given): unknown {
  const garage = readGarage(given);
  return [...garage.parts.values()].map((part) => plain(placeOf(garage.car, part, part.count ?? 1)));
}

export const claims: Claims = {
  "balance.balance": ({ garage, jobs, weigh_in, height, sizes }) => {
    return settled(plain(balance(readGarage(garage), { jobs, weighIn: weigh_in, height: uncertainOf(height), sizes })));
  },
  "body.changed": ({ body, loads }) => plain(changed(bodyOf(body), loads.map(loadOf))),
  "body.yaw_change": ({ body, loads }) => plain(yawChange(bodyOf(body), loads.map(loadOf))),
  "place.place_of": placesOf,
  "lift.lift": (given) => plain(readLift(given)),
  "lift.lift_of": ({ garage: given }) => {
    const garage = readGarage(given);
    return plain(liftsInOrder(garage).map((record) => ({ id: record.id, ...liftOf(garage, record) })));
  },
  "lift.outlook": ({ garage, weigh_in, raised, scale }) => plain(outlook(readGarage(garage), weigh_in, raised, scale)),
  "load_transfer.power_of": (given) => plain(powerOf(readGarage(given).car)),
  "load_transfer.transfer": ({ body, track, wheelbase, lateral_g, longitudinal_g, power }) => {
    return plain(
      transfer(bodyOf(body), uncertainOf(track), uncertainOf(wheelbase), lateral_g, longitudinal_g, power ?? null),
    );
  },
};
