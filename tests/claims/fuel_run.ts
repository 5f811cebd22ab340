/** What the vectors of core/fuelRun and core/fuelRun/fuelWords run in TypeScript. */

import { type FuelRun, fuelRun } from "../../webapp/src/core/fuelRun/fuelRun";
import { lightestSentence, startSentence } from "../../webapp/src/core/fuelRun/fuelWords";
import { readGarage } from "../../webapp/src/core/garage/garage";
import { read } from "../../webapp/src/core/numbers/quantity";
import { plain, settled } from "../plain";
import type { Claims, Given } from "../vectors";

function runOf(given: Given): FuelRun {
  const volumes = ["start", "start_within", "per_lap", "per_lap_within"].flatMap((name) => {
    return given[name] === undefined ? [] : [[name, read("volume", given[name])]];
  });
  const { garage, laps, class_sheet = null } = given;
  return fuelRun(readGarage(garage), { ...Object.fromEntries(volumes), laps, class_sheet });
}

export const claims: Claims = {
  "fuel_run.fuel_run": (given) => settled(plain(runOf(given))),
  "fuel_words.sentences": (given) => {
    const run = runOf(given);
    return plain([lightestSentence(run, given.unit), startSentence(run, given.unit, given.volume_unit)]);
  },
};
