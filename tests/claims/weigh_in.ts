/** What the vectors of core/wholeCar/weighIn (with fuel, condition and tradeScale) run in TypeScript. */

import { readGarage } from "../../webapp/src/core/garage/garage";
import { tolerance } from "../../webapp/src/core/weighing/tradeScale";
import { fuelMass } from "../../webapp/src/core/wholeCar/fuel";
import { weighIn } from "../../webapp/src/core/wholeCar/weighIn";
import { plain } from "../plain";
import type { Claims } from "../vectors";

export const claims: Claims = {
  "weigh_in.weigh_in": ({ garage, id, class_sheet }) => plain(weighIn(readGarage(garage), id, undefined, class_sheet)),
  "fuel.fuel_mass": ({ volume, kind, within, source }) => plain(fuelMass(volume, kind, within, source)),
  "trade_scale.tolerance": ({ accuracy_class, division, load }) => tolerance(accuracy_class, division, load),
};
