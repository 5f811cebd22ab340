/** What can be put on a scale: the parts and drivers the garage knows, the likeliest first. */
import type { KindName } from "../../journal/kinds";
import type { Rec, Value } from "../../journal/types";
import type { Offer } from "../controls/RecordPick";
import { nameOf } from "../words/naming";

const GONE: readonly Value[] = ["sold", "scrapped", "left"];
type All<K extends KindName> = readonly Rec<K>[];

/** Parts nobody has weighed yet, newest first, then the other parts, newest first, then drivers. */
export function offersFrom(parts: All<"part">, drivers: All<"driver">, weighings: All<"weighing">): Offer[] {
  const weighed = new Set(weighings.map((weighing) => weighing.values.of));
  const here = parts.filter((part) => !GONE.includes(part.values.whereabouts ?? "car")).toReversed();
  return [
    ...here.filter((part) => !weighed.has(part.id)).map((part) => offer(part, "not weighed yet")),
    ...here.filter((part) => weighed.has(part.id)).map((part) => offer(part, part.values.zone ?? "")),
    ...drivers.map((driver) => offer(driver, "driver, with gear")),
  ];
}

function offer(rec: Rec, note: string): Offer {
  const seen = rec.values.whereabouts === "yard" && "at the yard";
  return { id: rec.id, name: nameOf(rec), note: [note, seen].filter(Boolean).join(", ") };
}
