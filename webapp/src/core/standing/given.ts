/** What every part of the standing is made from, read from the garage once. */

import type { ClassSheet, Garage, WeighIn } from "../garage/records";
import { jobNets, jobsInCar } from "../ledger/net";
import type { Nets } from "../ledger/since";
import type { Masses } from "../weighing/weighing";
import { aboard } from "../wholeCar/aboard";
import { type Condition, chosenSheet, conditionOf } from "../wholeCar/condition";
import { inOrder, type Now, nowOf, type Weighed } from "../wholeCar/weighed";
import { loadsOf } from "../wholeCar/weighIn";

/** `weighed`: the weigh-ins in order; `sheet`: of the class asked for, else the newest, with its `condition`. */
export type Given = {
  readonly garage: Garage;
  readonly known: Masses;
  readonly nets: Nets;
  readonly sheet: ClassSheet | null;
  readonly condition: Condition;
  readonly weighed: readonly Weighed[];
  readonly now: Now;
};

export function givenBy(garage: Garage, known: Masses, classSheet: string | null = null): Given {
  const sheet = chosenSheet(garage, classSheet);
  return {
    garage,
    known,
    nets: jobNets(garage, known),
    sheet,
    condition: conditionOf(garage, sheet, known),
    weighed: inOrder(garage).map((record) => weighedOf(garage, record, known)),
    now: nowOf(garage),
  };
}

function weighedOf(garage: Garage, record: WeighIn, known: Masses): Weighed {
  const loads = loadsOf(garage, record, known);
  return { record, loads, jobs: jobsThen(garage, record), aboard: aboard(garage, record, known) };
}

/** The jobs stored with a weigh-in. Without a list there is nothing to confirm only while no job was ever fitted. */
function jobsThen(garage: Garage, record: WeighIn): readonly string[] | null {
  if (record.jobs === null) return jobsInCar(garage, "event").length > 0 ? null : [];
  return record.jobs.filter((job) => garage.jobs.has(job));
}
