/**
 * A run on fuel in two sentences: how light the car gets against the minimum, and what to start with.
 *
 * The table is the server's own (`server/tarebook/core/fuel_run/fuel_words.py`), in `generated/fuelSentences`.
 */

import { FUEL_SENTENCES } from "../../generated/fuelSentences";
import type { Warned } from "../garage/records";
import { layOut, showChance, showInHand, showMass } from "../numbers/shown";
import { beyondDoubt, expanded, type Uncertain } from "../numbers/uncertain";
import { movedSince } from "../standing/sentences";
import { missed, type Said, sizeOf, teller } from "../words/said";
import type { FuelRun, Moment } from "./fuelRun";

const said = teller(FUEL_SENTENCES);
const ROUNDING = 1e-9; // of a volume: what its last bits may add is not rounded up

/** How light the car gets, or what is missing to tell. `unit`: a unit of mass. */
export function lightestSentence(run: FuelRun, unit: string): Said {
  const reason = run.reasons.weight ?? run.reasons.start;
  if (reason) return missed(reason);
  const moment = run.laps[run.worst ?? run.laps.length - 1] as Moment;
  const told = againstMinimum(run, moment, unit);
  const moved = movedSince(run.since);
  return moved ? said("as_weighed", { said: told.text, ...moved }) : told;
}

/** What to start with, or what is missing to tell. */
export function startSentence(run: FuelRun, massUnit: string, volumeUnit: string): Said {
  if (!run.least) return missed(run.reasons.least as Warned);
  if (run.least.lacking !== null) {
    const weight = run.empty.weight as Uncertain; // nothing can be lacking in a weight that cannot be told
    return said("start_never", { mass: showInHand(run.least.lacking, massUnit, expanded(weight)) });
  }
  const volume = layOut("volume", run.least.fuel * (1 - ROUNDING), volumeUnit, null, false, true).text;
  if (run.full && run.least.fuel > run.full.fuel.value) return said("start_above_tank", { volume });
  return said(run.least.decided_by === "distance" ? "start_to_arrive" : "start_to_keep", { volume });
}

function againstMinimum(run: FuelRun, { lap, weight, judged }: Moment, unit: string): Said {
  const mass = weight as Uncertain; // a run without a weight has a reason
  const told = { where: whereIs(run, lap as number), weight: showMass(mass.value, unit, expanded(mass)) };
  if (!judged) return said("lightest", told);
  const { margin, chance_under: chance } = judged;
  const side = margin.value > 0 ? "above" : "under";
  if (!beyondDoubt(margin) || (side === "above" && chance > run.risk)) {
    return said("lightest_close", { ...told, chance: showChance(chance) });
  }
  return said(`lightest_${side}`, { ...told, margin: sizeOf(margin, unit).mass });
}

function whereIs(run: FuelRun, lap: number): string {
  if (lap === 0) return FUEL_SENTENCES.at_the_start;
  const last = lap === run.laps.at(-1)?.lap;
  const code = last ? (run.runs_dry === null ? "at_the_flag" : "when_dry") : "after_lap";
  return said(code, { lap: `${lap}` }).text;
}
