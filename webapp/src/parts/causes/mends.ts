/**
 * What one tap does about a slip: the record it would be in, and what would put it right.
 *
 * What is certain once the slip is confirmed is done at once, in one act that can be taken back: a fact by a correction
 * with all else equal. What needs a figure that only a person knows opens its form.
 */
import { account } from "../../account";
import { book } from "../../answers";
import type { Code, Slip, Unit } from "../../core/causes/slip";
import type { Quantity } from "../../core/numbers/quantity";
import { pointMoved, sameDigits } from "../../core/weighing/display";
import type { Reading } from "../../core/wholeCar/weighIn";
import { garage } from "../../garage/garage";
import { deletion } from "../../garage/undo";
import type { Change } from "../../garage/write";
import type { Value } from "../../journal/types";
import { to } from "../../route";
import { relisted } from "../weighIn/relisted";
import { momentOf } from "../words/moments";
import { refName } from "../words/naming";

type Way = { label: string; href: string };
/** `changes`: all that the tap saves. */
export type Mend = Way | { label: string; changes: () => Change[] };

/** Where the slip would be; null of nothing in particular. */
export function recordOf({ code, job, part, driver, weighing, weigh_in }: Slip): Way | null {
  if (weighing) return { label: `Look at ${refName(part ?? driver)}`, href: to("weighing", weighing) };
  if (code === "unwritten" || code === "chance") return null;
  if (job && code === "twice") return { label: `Look at ${refName(job)}`, href: to("job", job) };
  if (part) return { label: `Look at ${refName(part)}`, href: to("part", part) };
  return weigh_in ? { label: "Look at that weigh-in", href: to("weigh-in", weigh_in) } : null;
}

/** What would put it right; null where nothing would. */
export function mendOf(slip: Slip): Mend | null {
  const { code, job, part, driver, scale, weighing, weigh_in, way, kg } = slip;
  switch (code) {
    case "twice":
      return deleted(slip);
    case "wrong_side":
      return {
        label: way === "done" ? `Put ${refName(job)} on its list` : `Take ${refName(job)} off its list`,
        changes: () => relisted([weigh_in!], job!, way === "done"),
      };
    case "unit":
      return inOtherUnit(slip) ?? anew(slip);
    case "other_scale":
      return { label: `It was on ${refName(scale)}`, changes: () => instead("weigh_in", weigh_in!, { scale }) };
    case "other_driver":
      return seat(weigh_in!, driver);
    case "person":
      return way === "off"
        ? seat(weigh_in!, null)
        : driver && isEmpty(weigh_in!)
          ? seat(weigh_in!, driver)
          : anew(slip);
    case "ballast":
      if (way !== "off" || book.value.weigh_ins.get(weigh_in!)?.ballast?.value !== -(kg ?? 0)) return anew(slip);
      return { label: "No ballast was in it", changes: () => instead("weigh_in", weigh_in!, { ballast: null }) };
    case "put_back":
    case "unwritten":
      return { label: "Write the job down", href: to("job", "new") };
    case "guess":
      return { label: `Weigh ${refName(part ?? driver)}`, href: to("weigh-part", part ?? driver ?? "") };
    case "wet":
      return weighing ? anew(slip) : { label: "Weigh the car again", href: to("weigh-car") };
    case "chance":
      return null;
    default:
      return anew(slip);
  }
}

/** The whole job where it is nothing but what another has too, else the part in it. */
function deleted({ job, part, kg }: Slip): Mend | null {
  const lines = account.value.jobs.get(job!)?.lines ?? [];
  const net = account.value.jobs.get(job!)?.total.mass.net.value ?? 0;
  if (lines.every(({ mass }) => mass) && Math.abs(net - (kg ?? 0)) < 1e-9) {
    return { label: `Delete ${refName(job)}`, changes: () => [deletion("job", job!)] };
  }
  const line = lines.find((each) => each.part === part);
  if (!line) return null;
  return { label: `Take ${refName(part)} out of ${refName(job)}`, changes: () => [deletion("job_part", line.id)] };
}

function seat(weighIn: string, driver: string | null): Mend {
  const set = { driver_in: driver !== null, driver };
  const label = driver ? `${refName(driver)} was in it` : "Nobody was in it";
  return { label, changes: () => instead("weigh_in", weighIn, set) };
}

const isEmpty = (weighIn: string): boolean => garage.value.one("weigh_in", weighIn)?.values.driver_in === false;

/** From the unit a reading is in, by the slip, to the one it was meant in. */
const UNITS: Readonly<Partial<Record<Unit, readonly [string, string]>>> = {
  pounds: ["kg", "lb"],
  kilograms: ["lb", "kg"],
  ounces: ["oz", "lb"],
  sixteenth: ["lb", "oz"],
  grams: ["g", "oz"],
  gram_ounces: ["oz", "g"],
};

const LOOKS = ["shown", "shown_empty", "shown_far"] as const;

/** The same digits in the unit they were meant in, or with the point where it belongs; null where that is no reading. */
function inOtherUnit({ unit, weighing, weigh_in, field }: Slip): Mend | null {
  const [kind, id] = weighing ? (["weighing", weighing] as const) : (["weigh_in", weigh_in!] as const);
  const meant: [string, string | null][] = looksOf(weighing, weigh_in, field).map(([name, shown]) => {
    return [name, unit && meantBy(shown, unit)];
  });
  if (!meant.length || meant.some(([, text]) => !text)) return null;
  const label = `Correct it: ${meant.map(([, text]) => text).join(" and ")}`;
  return { label, changes: () => instead(kind, id, Object.fromEntries(meant)) };
}

function looksOf(weighing: string | null, weighIn: string | null, field: string | null): [string, Quantity][] {
  const { weighings, weigh_ins } = book.value;
  const [part, car] = [weighings.get(weighing ?? ""), weigh_ins.get(weighIn ?? "")];
  if (part) return LOOKS.flatMap((name): [string, Quantity][] => (part[name] ? [[name, part[name]]] : []));
  const shown = car?.[field as Reading];
  return shown ? [[field!, shown]] : [];
}

function meantBy(shown: Quantity, unit: Unit): string | null {
  if (unit === "ten" || unit === "tenth") return pointMoved(shown, unit === "ten" ? 1 : -1)?.reads ?? null;
  const [from, meant] = UNITS[unit] ?? [];
  return from === shown.unit && meant ? (sameDigits(shown, meant)?.reads ?? null) : null;
}

const WHAT: Readonly<Partial<Record<Code, string>>> = {
  fuel: "the fuel",
  ballast: "the ballast",
  person: "who sat in it",
  misread: "the reading",
};

/** The form of a correction, as it was entered. */
function anew({ code, weighing, weigh_in, part, driver }: Slip): Mend | null {
  const of = part ?? driver ?? "";
  if (weighing) return { label: `Weigh ${refName(of)} again`, href: to("weigh-part", of, { replaces: weighing }) };
  if (!weigh_in) return null; // a claim is put right where it stands
  return { label: `Correct ${WHAT[code] ?? "the weigh-in"}`, href: to("weigh-car", { replaces: weigh_in }) };
}

/** A fact is never edited: the same with what was wrong put right, in its place. */
function instead(kind: "weighing" | "weigh_in", id: string, set: Record<string, Value>): Change[] {
  const rec = garage.value.one(kind, id);
  if (!rec) return [];
  const at = momentOf(rec); // a correction is no newer one: the order stays
  const all = { ...rec.values, ...(at && { at }), ...set, replaces: id };
  return [{ kind, set: Object.fromEntries(Object.entries(all).filter(([, value]) => value !== null)), base: [] }];
}
