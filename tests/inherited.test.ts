/**
 * An entry may come from anyone's program and name anything: a kind, a field, a value, a device or a record called as
 * what every object inherits (`toString`, `__proto__`) is only a name.
 */
import { expect, test } from "vitest";
import demo from "../server/tarebook/demo/garage.json";
import { ballastChoice } from "../webapp/src/core/ballast/ballastRecords";
import { readGarage } from "../webapp/src/core/garage/garage";
import { standing } from "../webapp/src/core/standing/standing";
import { type ErrorCode, describe as told } from "../webapp/src/errors";
import { unitWord } from "../webapp/src/garage/units";
import { Board, type Row } from "../webapp/src/journal/board";
import type { KindName } from "../webapp/src/journal/kinds";
import type { Value } from "../webapp/src/journal/types";
import { deviceName } from "../webapp/src/parts/words/deviceNames";
import { fieldWord, valueWords } from "../webapp/src/parts/words/fieldWords";
import { kindWord } from "../webapp/src/parts/words/naming";
import { changesOf } from "../webapp/src/screens/Sheet/changes";
import { emptyForm as emptySheet } from "../webapp/src/screens/Sheet/form";
import { emptyForm, jobsIn } from "../webapp/src/screens/WeighCar/form";

const NAMES = Object.getOwnPropertyNames(Object.prototype).sort();
const each = test.each(NAMES.map((name) => ({ name })));

const row = (order: number, kind: string, record: string, set: string, device = "d"): Row => ({
  key: `e${order}`,
  // Written by hand: an object literal would take `__proto__` for its prototype.
  text: `{"id":"e${order}","device":"${device}","writer":"w","n":${order},"kind":"${kind}","record":"${record}","set":${set},"base":[]}`,
  number: order,
  aside: null,
  order,
});

each("$name is said as it is, whatever it is a name of", ({ name }) => {
  const words = name.replaceAll("_", " ");
  expect([kindWord(name), fieldWord(name, name), unitWord(name)]).toEqual([words, words, name]);
  expect(deviceName(name)).toBe("another device");
  expect([valueWords(name, "name", "x"), valueWords("job", name, "x")]).toEqual(["x", "x"]);
  expect(valueWords("garage", "mass_unit", name)).toBe(words);
});

each("a value with a member called $name is said as it came", ({ name }) => {
  const value = JSON.parse(`{"${name}":1}`) as Value;
  expect(valueWords("job", "name", value)).toBe(`{"${name}":1}`);
  expect(valueWords("job", "hazards", [value] as unknown as Value)).toBe(`{"${name}":1}`);
});

each(
  "a reason or refusal called $name, which this app does not know, is told as one of a newer version",
  ({ name }) => {
    expect(told(name as ErrorCode)).toMatchObject({ code: name, sentence: told("app_older").sentence });
  },
);

each("a kind $name is set aside, a record $name is a record, and a field $name hurts neither", ({ name }) => {
  const board = new Board();
  const known = row(2, "job", name, '{"name":"Seats"}', name);
  board.take([row(1, name, "r1", '{"name":"x"}'), known, row(3, "job", "r3", `{"name":"Mats","${name}":"x"}`)]);
  const { aside, byId, of } = board.garage();
  expect(aside[0]).toMatchObject({ reason: "unknown_kind", entry: { kind: name } });
  expect(byId.get(name)?.values).toEqual({ name: "Seats" });
  expect(of(name as KindName)).toEqual([]);
  expect(of("job").length + aside.length).toBe(3);
  for (const { values } of of("job"))
    expect(Object.values(values).every((value) => typeof value === "string")).toBe(true);
});

each("a job $name is in the car only when it is offered or ticked", ({ name }) => {
  const form = emptyForm("w", { layout: "corners", unit: "kg", scale: "", trim: "road", place: "" });
  expect(jobsIn(form, new Set(), [name])).toEqual([]);
});

each("a sheet and its part called $name are new until they were seen", ({ name }) => {
  const form = { ...emptySheet({ sheet: name, part: "new" }, { id: name, text: "Tray" }), closed: [name] };
  for (const { base } of changesOf(form, {} as never, { car: null, lengthUnit: "mm" })) expect(base ?? []).toEqual([]);
});

test("the demo's weight and ballast are the same when its places and weigh-ins are called so", () => {
  const names = ["__proto__", "constructor", "toString", "valueOf"];
  const called = new Map(["ballast_places", "weigh_ins"].flatMap((kind) => named(kind as "weigh_ins", names)));
  const [plain, other] = [demo, calling(demo, called)].map((lists) => {
    const garage = readGarage(lists as Record<string, unknown>);
    return { now: standing(garage), choice: ballastChoice(garage, { minimum: 1000 }) };
  }) as [Reckoned, Reckoned];
  expect(other.now.weight?.value).toBe(plain.now.weight?.value);
  expect(other.now.warnings.map(({ code }) => code)).toEqual(plain.now.warnings.map(({ code }) => code));
  expect(Object.keys(plain.choice.moves).length).toBe(4);
  const moves = Object.entries(plain.choice.moves).map(([id, count]) => [called.get(id), count]);
  expect(Object.entries(other.choice.moves)).toEqual(moves);
});

type Reckoned = { now: ReturnType<typeof standing>; choice: ReturnType<typeof ballastChoice> };

/** A name for each id of a kind, in the same order. */
function named(kind: "ballast_places" | "weigh_ins", names: readonly string[]): [string, string][] {
  const ids = demo[kind].map(({ id }) => id).sort();
  return ids.map((id, at) => [id, names[at]!]);
}

function calling(value: unknown, called: ReadonlyMap<string, string>): unknown {
  if (typeof value === "string") return called.get(value) ?? value;
  if (Array.isArray(value)) return value.map((item) => calling(item, called));
  if (!(value instanceof Object)) return value;
  return Object.fromEntries(Object.entries(value).map(([field, inside]) => [field, calling(inside, called)]));
}
