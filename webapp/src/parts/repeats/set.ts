/** The looks of a weighing or a weigh-in with every reading of each, and what is odd among them. */
import { book, known } from "../../answers";
import type { WeighIn, Weighing } from "../../core/garage/records";
import type { Quantity } from "../../core/numbers/quantity";
import { needsThird, oddOne } from "../../core/weighing/outlier";
import { LAYOUTS, type Look, type Read, readings, rowsOf, type Scatter, scatterOf } from "../../core/weighing/repeats";
import { divisionFor, partRepeats, type ScaleModel, UNNAMED } from "../../core/weighing/scale";
import { modelFor, repeatability } from "../../core/wholeCar/weighIn";
import { methodRow } from "../weighing/methods";
import { labelOf } from "../words/fieldWords";

/** One look: `label` is empty where there is no other. `read`: the first reading first, those left out among them. */
export type LookRead = { readonly look: Look; readonly label: string; readonly read: readonly Read[] };
export type ReadSet = {
  readonly of: string;
  readonly scale: string | null;
  readonly looks: readonly LookRead[];
  /** A step of the display, kg. */
  readonly division: number;
  /** Standard deviation of one reading by what is known of the scale beside these, kg. */
  readonly repeats: number;
};

/** Of the record as it counts; null for one that does not. */
export function setRead(of: string): ReadSet | null {
  const weighing = book.value.weighings.get(of);
  const weighIn = book.value.weigh_ins.get(of);
  if (weighing) return partSet(weighing);
  return weighIn ? carSet(weighIn) : null;
}

/** The tare is read once for all: what was lifted off and on again was the part. */
function partSet(record: Weighing): ReadSet {
  const model = known.value.scales.get(record.scale ?? UNNAMED) as ScaleModel;
  const row = methodRow(record.method);
  const looks = [lookRead(record, "shown", row.second === "shown_far" ? row.first : "")];
  if (row.second === "shown_far") looks.push(lookRead(record, "shown_far", row.secondLabel));
  const division = divisionFor(model, record.shown);
  const own = looks.map(({ look }) => scatterOf(rowsOf(book.value, record, [look]), division));
  const of_parts = own.reduce(without, model.of_parts);
  return { of: record.id, scale: record.scale, looks, division, repeats: partRepeats({ ...model, of_parts }) };
}

function carSet(record: WeighIn): ReadSet {
  const model = modelFor(record, known.value);
  const names = LAYOUTS[record.layout];
  const looks = names.map((look) => lookRead(record, look, labelOf("weigh_in", look)));
  const first = looks.flatMap(({ read }) => read)[0]?.shown;
  const division = first ? divisionFor(model, first) : 0;
  const own = scatterOf(rowsOf(book.value, record, names), division, true);
  const of_car = model.of_car.freedom ? without(model.of_car, own) : model.of_car;
  const repeats = repeatability(book.value, { ...model, of_car }) / Math.sqrt(names.length);
  return { of: record.id, scale: record.scale, looks, division, repeats };
}

const lookRead = (record: Weighing | WeighIn, look: Look, label: string): LookRead => ({
  look,
  label,
  read: readings(book.value, record, look),
});

function without(all: Scatter, own: Scatter): Scatter {
  return {
    readings: all.readings - own.readings,
    freedom: all.freedom - own.freedom,
    squares: all.squares - own.squares,
  };
}

export const countedOf = ({ read }: LookRead): readonly Read[] => read.filter(({ left_out }) => !left_out);

export const isRepeated = ({ looks }: ReadSet): boolean => looks.some(({ read }) => read.length > 1);

const valuesOf = (look: LookRead) => countedOf(look).map(({ shown }) => shown.value);

/** The odd reading, which of its look's it is (the first is 1), and how far it is from the others, kg. */
export type OddRead = { look: LookRead; read: Read; nth: number; shown: Quantity; off: number };

export function oddRead({ looks, division }: ReadSet): OddRead | null {
  const odd = oddOne(looks.map(valuesOf), division);
  const look = odd && looks[odd.look];
  const read = look && countedOf(look)[odd.at];
  return read ? { look, read, nth: look.read.indexOf(read) + 1, shown: read.shown, off: odd.off } : null;
}

/** The looks of which two readings are too far apart, and how far, kg. */
export function thirdWanted({ looks, division, repeats }: ReadSet): { look: LookRead; apart: number }[] {
  return looks.flatMap((look) => {
    const values = valuesOf(look);
    return needsThird(values, division, repeats) ? [{ look, apart: Math.abs(values[0]! - values[1]!) }] : [];
  });
}
