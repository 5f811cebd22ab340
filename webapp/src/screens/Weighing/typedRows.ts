/** What a person entered for a weighing, line by line: as typed, and how that was read. */
import { garage, type Rec } from "../../garage/garage";
import { massUnit } from "../../garage/units";
import type { Fact } from "../../parts/figures/Facts";
import { methodRow } from "../../parts/weighing/methods";
import { WHERE } from "../../parts/weighing/where";
import { readingOf } from "../../parts/words/reading";

export function typedRows({ values }: Rec<"weighing">): Fact[] {
  const { shown = "", with_bolts: bolts, place, note } = values;
  const row = methodRow(values.method);
  const unit = garage.value.one("scale", values.scale)?.values.unit ?? massUnit();
  const rows: Fact[] = [look(row.first, shown, unit)];
  if (row.second === "pieces") rows.push({ name: row.secondLabel, value: String(values.pieces ?? "not said") });
  else if (row.second) rows.push(look(row.secondLabel, values[row.second] ?? "", unit));
  if (bolts !== undefined) rows.push({ name: "Bolts", value: bolts ? "included" : "not included" });
  if (place) rows.push({ name: "Where", value: WHERE[place] });
  if (note) rows.push({ name: "Note", value: note });
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
