/** What a person entered for a weigh-in, line by line: as typed, and how that was read. */
import { say } from "../../answers";
import { showMass } from "../../core/numbers/shown";
import type { Uncertain } from "../../core/numbers/uncertain";
import { trailOf } from "../../core/wholeCar/weighed";
import { LOOKS } from "../../core/wholeCar/weighIn";
import { garage, type Rec } from "../../garage/garage";
import { type Measure, massUnit, unitOf } from "../../garage/units";
import { to } from "../../route";
import type { Fact } from "../figures/Facts";
import { refName } from "../words/naming";
import { readingOf } from "../words/reading";
import { LOOK_WORDS } from "./looks";

export function readings(rec: Rec): Fact[] {
  const unit = String(garage.value.byId.get(String(rec.values["scale"]))?.values["unit"] ?? massUnit());
  return LOOKS[rec.values["layout"] as keyof typeof LOOKS].map((name) =>
    typed("mass", LOOK_WORDS[name], rec.values[name] as string | undefined, unit),
  );
}

export function asItStood(rec: Rec): Fact[] {
  const { values } = rec;
  const rows = [
    typed("volume", "Fuel", values["fuel"] as string | undefined, unitOf("volume")),
    driverRow(rec),
    typed("mass", "Ballast", values["ballast"] as string | undefined, massUnit(), "none"),
  ];
  if (values["fuel_within"])
    rows.push(typed("volume", "Fuel good to", values["fuel_within"] as string, unitOf("volume")));
  if (values["place"]) rows.push({ name: "Where", value: String(values["place"]) });
  if (values["note"]) rows.push({ name: "Note", value: String(values["note"]) });
  return rows;
}

function driverRow({ values }: Rec): Fact {
  if (!values["driver_in"]) return { name: "Driver", value: "nobody in the seat" };
  return {
    name: "Driver",
    value: values["driver"] ? refName(values["driver"]) : "in it, not said who",
    href: to("drivers"),
  };
}

function typed(kind: Measure, name: string, text: string | undefined, unit: string, without = "not noted"): Fact {
  const reading = readingOf(kind, text ?? "", unit);
  if (reading.state === "empty") return { name, value: without };
  return { name, value: text!, under: reading.state === "read" ? `read as ${reading.words}` : reading.sentence };
}

/** From the readings to the weight: their sum, and what the scale's checks take out of it or put in. */
export function trailRows(rec: Rec, whole: Uncertain): Fact[] {
  const unit = String(garage.value.byId.get(String(rec.values["scale"]))?.values["unit"] ?? massUnit());
  const names = LOOKS[rec.values["layout"] as keyof typeof LOOKS];
  const looks = names.map((name) => readingOf("mass", String(rec.values[name] ?? ""), unit));
  const shown = looks.flatMap((look) => (look.state === "read" ? [look.value] : []));
  if (shown.length < looks.length) return [];
  const { together, taken } = trailOf(shown, whole);
  const correction = showMass(taken, massUnit(), null, true);
  const isCorrected = correction !== showMass(0, massUnit(), null, true);
  return [
    ...(shown.length > 1 ? [{ name: "Together", value: showMass(together, massUnit()) }] : []),
    ...(isCorrected ? [{ name: "Scale's correction", value: correction, under: "by its checks" }] : []),
    { name: "So it weighed", value: say(whole) },
  ];
}
