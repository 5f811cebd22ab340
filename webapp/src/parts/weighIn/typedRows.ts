/** What a person entered for a weigh-in, line by line: as typed, and how that was read. */
import { book, say } from "../../answers";
import { showMass } from "../../core/numbers/shown";
import { sumAsRead } from "../../core/numbers/sumAsRead";
import type { Uncertain } from "../../core/numbers/uncertain";
import { counted, mean } from "../../core/weighing/repeats";
import { trailOf } from "../../core/wholeCar/weighed";
import { LOOKS } from "../../core/wholeCar/weighIn";
import { garage, type Rec } from "../../garage/garage";
import { type Measure, massUnit, unitOf } from "../../garage/units";
import { to } from "../../route";
import type { Fact } from "../figures/Facts";
import { choiceWord, labelOf } from "../words/fieldWords";
import { refName } from "../words/naming";
import { readingOf } from "../words/reading";

type WeighIn = Rec<"weigh_in">;

/** The looks it has by its layout, and the unit of its scale. */
function looksOf({ values }: WeighIn) {
  const unit = garage.value.one("scale", values.scale)?.values.unit ?? massUnit();
  return { unit, names: LOOKS[values.layout ?? "total"] };
}

export function readings(rec: WeighIn): Fact[] {
  const { unit, names } = looksOf(rec);
  return names.map((name) => typed("mass", labelOf("weigh_in", name), rec.values[name], unit));
}

export function asItStood({ values }: WeighIn): Fact[] {
  const { ready, fuel, fuel_within: within, ballast, place, note } = values;
  const rows = [
    typed("volume", "Fuel", fuel, unitOf("volume")),
    driverRow(values),
    typed("mass", "Ballast", ballast, massUnit(), "none"),
  ];
  if (within) rows.push(typed("volume", "Fuel good to", within, unitOf("volume")));
  if (ready)
    rows.push({
      name: "Seen to before",
      value: ready.map((each) => choiceWord("weigh_in", "ready", each)).join(", ") || "nothing",
    });
  if (place) rows.push({ name: "Where", value: place });
  if (note) rows.push({ name: "Note", value: note });
  return rows;
}

function driverRow({ driver_in: isIn, driver }: WeighIn["values"]): Fact {
  if (isIn === false) return { name: "Driver", value: "nobody in the seat" };
  const unnamed = isIn ? "in it, not said who" : "not said whether anybody sat in it";
  return { name: "Driver", value: driver ? refName(driver) : unnamed, href: to("drivers") };
}

function typed(kind: Measure, name: string, text: string | undefined, unit: string, without = "not noted"): Fact {
  const reading = readingOf(kind, text ?? "", unit);
  if (reading.state === "empty") return { name, value: without };
  return { name, value: text!, under: reading.state === "read" ? `read as ${reading.words}` : reading.sentence };
}

/** The readings added up as they were typed. */
function asReadOf({ id }: WeighIn): string | undefined {
  const record = book.value.weigh_ins.get(id);
  if (book.value.repeats_of.has(id)) return undefined; // means, which nobody read
  const looks = record ? LOOKS[record.layout].map((name) => record[name]) : [];
  const sum = sumAsRead(looks.flatMap((look) => (look ? [[look, 1] as const] : [])));
  return sum ? `as read: ${sum}` : undefined;
}

/** From the readings to the weight: their sum, and what the scale's checks take out of it or put in. */
export function trailRows(rec: WeighIn, whole: Uncertain): Fact[] {
  const { unit, names } = looksOf(rec);
  const looks = names.map((name) => readingOf("mass", rec.values[name] ?? "", unit));
  const record = book.value.weigh_ins.get(rec.id);
  const again =
    record && book.value.repeats_of.has(rec.id) ? names.map((name) => counted(book.value, record, name)) : [];
  const once = looks.flatMap((look) => (look.state === "read" ? [look.value] : []));
  const shown = again.length ? again.filter(({ length }) => length).map(mean) : once;
  if (shown.length < looks.length) return [];
  const { together, taken } = trailOf(shown, whole);
  const correction = showMass(taken, massUnit(), null, true);
  const isCorrected = correction !== showMass(0, massUnit(), null, true);
  return [
    ...(shown.length > 1 ? [{ name: "Together", value: showMass(together, massUnit()), under: asReadOf(rec) }] : []),
    ...(isCorrected ? [{ name: "Scale's correction", value: correction, under: "by its checks" }] : []),
    { name: "So it weighed", value: say(whole) },
  ];
}
