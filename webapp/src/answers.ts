/**
 * What the core says of the garage now: read after a change, when a screen first asks, then remembered.
 *
 * `lists` is the garage in the core's own dialect (plain records by plural kind), so that a half-typed weighing can be laid over
 * it and asked about before it is saved. Nothing here sums, rounds or decides: that is the core's.
 */
import { computed, signal } from "@preact/signals";
import { readGarage } from "./core/garage/garage";
import { showMass } from "./core/numbers/shown";
import { expanded, type Uncertain } from "./core/numbers/uncertain";
import { standing } from "./core/standing/standing";
import { masses } from "./core/weighing/weighing";
import { chosenCar } from "./garage/choices";
import { readThoughDeleted } from "./garage/deleted";
import { garage } from "./garage/garage";
import { massUnit } from "./garage/units";
import { type KindName, TABLE } from "./journal/kinds";
import type { Rec, Value } from "./journal/types";

export type Plain = { id: string } & Record<string, Value>;
export type Lists = Record<string, Plain[]>;
export type Trim = "event" | "road";

/** The trim the figures are for; the minimum is an event's matter, so that comes first. */
export const trim = signal<Trim>("event");

const plain = (rec: Rec): Plain => ({ ...rec.values, id: rec.id });
const gone = (rec: Rec): Plain => ({ ...plain(rec), deleted: true });

export const lists = computed<Lists>(() => {
  const kinds = (Object.keys(TABLE) as KindName[]).filter((kind) => kind !== "verdict");
  const listed = (kind: KindName) => [...garage.value.of(kind).map(plain), ...readThoughDeleted(kind).map(gone)];
  return Object.fromEntries(kinds.map((kind) => [`${kind}s`, listed(kind)]));
});

/** The car looked at: the one chosen on this phone, else the first. */
export const car = computed<Rec<"car"> | null>(() => {
  const cars = garage.value.of("car");
  return cars.find((each) => each.id === chosenCar.value) ?? cars[0] ?? null;
});

const ofCar = <K extends "class_sheet" | "job" | "weigh_in" | "stage">(kind: K) =>
  computed<Rec<K>[]>(() => {
    const isOf = ({ values }: Rec<K>) => !values.car || values.car === car.value?.id;
    return garage.value.of(kind).filter(isOf);
  });

export const sheets = ofCar("class_sheet");
export const jobs = ofCar("job");
export const weighIns = ofCar("weigh_in");
const unsortedStages = ofCar("stage");
export const stages = computed(() =>
  [...unsortedStages.value].sort((a, b) => (a.values.rank ?? 1e9) - (b.values.rank ?? 1e9)),
);

/** The garage as the core reads it, with `over` laid on top: records not saved yet. */
export function bookWith(over: Lists = {}, inTrim: Trim = trim.value) {
  const laid = Object.fromEntries(
    Object.entries(over).map(([name, records]) => [name, laidOver(lists.value[name] ?? [], records)]),
  );
  return readGarage({ ...lists.value, ...laid, car: car.value?.id, trim: inTrim });
}

function laidOver(records: Plain[], over: Plain[]): Plain[] {
  const ids = new Set(over.map((record) => record.id));
  return [...records.filter((record) => !ids.has(record.id)), ...over];
}

export const book = computed(() => bookWith());
export const known = computed(() => masses(book.value));
export const stand = computed(() => standing(book.value, known.value));

/** A mass with its 95 % interval, in the garage's unit. */
export const say = (mass: Uncertain, signed = false): string =>
  showMass(mass.value, massUnit(), expanded(mass), signed);
/** The minimum in the garage's unit: as the class writes it, when that is the same unit and nothing is added for this car. */
export const minimumWords = computed<string | null>(() => {
  const { minimum, condition } = stand.value;
  const sheet = condition.class_sheet ? book.value.class_sheets.get(condition.class_sheet) : undefined;
  if (minimum == null || !sheet?.minimum) return null;
  const isTyped = !sheet.adders && sheet.minimum.unit === massUnit();
  return isTyped ? sheet.minimum.reads : showMass(minimum, massUnit());
});

export const interval = (mass: Uncertain) => ({ value: mass.value, within: expanded(mass) });
