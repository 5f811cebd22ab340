/** What can be put on a scale: the parts and drivers the garage knows, the likeliest first. */
import type { Rec } from "../../journal/types";
import type { Offer } from "../../parts/controls/RecordPick";

const GONE = ["sold", "scrapped", "left"];

/** Parts nobody has weighed yet, newest first, then the other parts, newest first, then drivers. */
export function offersFrom(parts: readonly Rec[], drivers: readonly Rec[], weighings: readonly Rec[]): Offer[] {
  const weighed = new Set(weighings.map((weighing) => weighing.values["of"]));
  const here = parts.filter((part) => !GONE.includes(String(part.values["whereabouts"]))).toReversed();
  return [
    ...here.filter((part) => !weighed.has(part.id)).map((part) => offer(part, "not weighed yet")),
    ...here.filter((part) => weighed.has(part.id)).map((part) => offer(part, String(part.values["zone"] ?? ""))),
    ...drivers.map((driver) => offer(driver, "driver, with gear")),
  ];
}

function offer(rec: Rec, note: string): Offer {
  const atYard = rec.values["whereabouts"] === "yard";
  return {
    id: rec.id,
    name: String(rec.values["name"] ?? ""),
    note: atYard ? `${note ? `${note}, ` : ""}at the yard` : note,
  };
}
