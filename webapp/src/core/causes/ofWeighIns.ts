/** Slips at a weigh-in: who sat in it, what was on board, what was noted of it, and what the scales were like. */

import { RANGES, SOMEBODY, SPREADS } from "../../generated/slipPriors";
import { u } from "../numbers/uncertain";
import { densityOf } from "../wholeCar/fuel";
import type { Weighed } from "../wholeCar/weighed";
import { LOOKS } from "../wholeCar/weighIn";
import type { Looks, Shape } from "./looks";
import { UNITS } from "./ofWeighings";
import { tryOtherScales } from "./otherScale";
import type { Code, Of, Tried } from "./slip";
import type { Trail } from "./trail";

const MANY_BLOCKS = 8;
const AS_BEFORE = 2; // how much likelier an amount that was there before is than one more block
const ASKED = 0.3; // how much rarer a unit slips in a weigh-in, which is asked about, than in a part

export function tryWeighIns(trail: Trail, looks: Looks, tried: Tried): void {
  trail.counted.forEach((weighed, look) => {
    const at = new At(looks, tried, looks.singles[look] as Shape, weighed.record.id);
    for (const each of [driver, fuel, ballast, reading, asItStood]) each(trail, weighed, at);
  });
  tryOtherScales(trail, looks, tried);
  looks.steps.forEach((step, gap) => {
    const [weigh_in, until] = [gap, gap + 1].map((look) => trail.counted[look]?.record.id ?? null);
    for (const spread of SPREADS.unwritten) {
      tried.add(looks.about(step, 0, spread), "unwritten", { weigh_in: weigh_in ?? null, until: until ?? null });
    }
  });
}

/** Tries slips that put so much too much into one look. */
class At {
  constructor(
    readonly looks: Looks,
    readonly tried: Tried,
    readonly shape: Shape,
    readonly weigh_in: string,
  ) {}

  about(code: Code, size: number, doubt = 0, of: Of = {}, weight = 1): void {
    const { weigh_in } = this;
    this.tried.add(this.looks.about(this.shape, size, doubt), code, { weigh_in, kg: size || null, ...of }, weight);
  }

  between(code: Code, low: number, high: number): void {
    this.tried.add(this.looks.between(this.shape, low, high), code, { weigh_in: this.weigh_in });
  }
}

/** Another than noted; nobody; somebody beside. */
function driver({ garage, known }: Trail, { record, aboard }: Weighed, at: At): void {
  const others = [...garage.drivers.keys()].flatMap((each) => {
    const mass = known.of.get(each)?.mass;
    return each !== record.driver && mass ? [{ driver: each, mass }] : [];
  });
  const noted = record.driver_in === false ? null : record.driver;
  if (noted !== null && aboard.driver) {
    const sat = aboard.driver.value;
    at.about("person", -sat, u(aboard.driver), { driver: noted, way: "off" });
    for (const each of others) {
      at.about("other_driver", each.mass.value - sat, u(each.mass), { driver: each.driver });
    }
  } else if (record.driver_in !== false && others.length) {
    return; // anybody known, or nobody: the look's own doubt holds that
  }
  at.about("person", ...SOMEBODY, { way: "on" });
  for (const each of others) at.about("person", each.mass.value, u(each.mass), { driver: each.driver, way: "on" });
}

/** Anything between empty and full. */
function fuel({ garage: { car } }: Trail, { record }: Weighed, at: At): void {
  if (!record.fuel) return;
  const density = densityOf(car?.fuel_kind ?? null);
  const middle = 0.5 * (density.low + density.high);
  const noted = record.fuel.value * middle;
  const tank = car?.tank_size ? car.tank_size.value * middle : RANGES.tank[1];
  at.between("fuel", -noted, Math.max(0, tank - noted));
}

/** As much as at another weigh-in, or none; or so many blocks more at a place. */
function ballast({ garage, counted }: Trail, weighed: Weighed, at: At): void {
  const noted = notedIn(weighed);
  for (const kg of [...new Set([0, ...counted.map(notedIn)])].sort((a, b) => a - b)) {
    if (kg !== noted) at.about("ballast", kg - noted, 0, { way: kg > noted ? "on" : "off" }, AS_BEFORE);
  }
  for (const { id, block, most, fitted } of garage.ballast_places.values()) {
    const many = block ? Math.min(MANY_BLOCKS, Math.max(most ?? 0, fitted ?? 0, 1)) : 0;
    for (let blocks = 1; blocks <= many; blocks++) {
      at.about("ballast", blocks * (block?.value ?? 0), 0, { place: id, way: "on" });
    }
  }
}

const notedIn = ({ record }: Weighed): number => record.ballast?.value ?? 0;

/** One of the readings in another unit. */
function reading(_trail: Trail, { record, loads }: Weighed, at: At): void {
  const through = 1 + loads.gain.value;
  for (const name of LOOKS[record.layout]) {
    const shown = record[name];
    if (!shown) continue;
    for (const { unit, factor, rate } of UNITS) {
      at.about("unit", ((1 - factor) * shown.value) / through, 0, { field: name, unit }, ASKED * rate);
    }
  }
}

function asItStood(_trail: Trail, _weighed: Weighed, at: At): void {
  at.between("wet", ...RANGES.wet);
  for (const code of ["zero", "misread"] as const) for (const spread of SPREADS[code]) at.about(code, 0, spread);
}
