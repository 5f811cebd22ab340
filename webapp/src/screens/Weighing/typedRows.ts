/** What a person entered for a weighing, line by line: as typed, and how that was read. */
import { garage, type Rec } from "../../garage/garage";
import { massUnit } from "../../garage/units";
import type { Fact } from "../../parts/figures/Facts";
import { type Method, methodRow } from "../../parts/weighing/methods";
import { readingOf } from "../../parts/words/reading";

const PLACES: Record<string, string> = {
  garage: "In the garage",
  yard: "At the yard",
  paddock: "In the paddock",
  elsewhere: "Elsewhere",
};

export function typedRows(rec: Rec): Fact[] {
  const { values } = rec;
  const row = methodRow(values["method"] as Method);
  const unit = String(garage.value.byId.get(String(values["scale"]))?.values["unit"] ?? massUnit());
  const rows: Fact[] = [look(row.first, String(values["shown"]), unit)];
  if (row.second === "pieces") rows.push({ name: row.secondLabel, value: String(values["pieces"] ?? "not said") });
  else if (row.second) rows.push(look(row.secondLabel, String(values[row.second] ?? ""), unit));
  if (values["with_bolts"] !== undefined)
    rows.push({ name: "Bolts", value: values["with_bolts"] ? "included" : "not included" });
  if (values["place"]) rows.push({ name: "Where", value: PLACES[String(values["place"])] ?? String(values["place"]) });
  if (values["note"]) rows.push({ name: "Note", value: String(values["note"]) });
  return rows;
}

function look(name: string, text: string, unit: string): Fact {
  const reading = readingOf("mass", text, unit);
  const under =
    reading.state === "read"
      ? `read as ${reading.words}`
      : reading.state === "trouble"
        ? reading.sentence
        : "not typed";
  return { name, value: text, under };
}
