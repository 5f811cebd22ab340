/** Completion from what the garage knows. */
import { expect, test } from "vitest";
import { matching, typedAs } from "../../webapp/src/parts/controls/picking";

const OFFERS = [
  { id: "1", name: "Spare wheel carrier" },
  { id: "2", name: "Wheel" },
  { id: "3", name: "Rear seat", note: "cabin rear" },
  { id: "4", name: "Spare wheel" },
];
const named = (text: string) => matching(OFFERS, text).map((offer) => offer.name);

test("with nothing typed everything is offered in its own order", () => {
  expect(named("")).toEqual(OFFERS.map((offer) => offer.name));
});

test("beginnings of words find a name in any order of the words", () => {
  expect(named("wh sp")).toEqual(["Spare wheel carrier", "Spare wheel"]);
});

test("the middle of a word finds nothing", () => {
  expect(named("eel")).toEqual([]);
});

test("a name typed whole comes first", () => {
  expect(named("spare wheel")[0]).toBe("Spare wheel");
});

test("the note counts as part of the name", () => {
  expect(named("cabin")).toEqual(["Rear seat"]);
});

test("a known name typed out is that record, whatever its capitals", () => {
  expect(typedAs(OFFERS, "spare wheel ")).toEqual({ id: "4", text: "spare wheel " });
  expect(typedAs(OFFERS, "spare whee").id).toBeNull();
  expect(typedAs([{ id: "1", name: "" }], " ").id).toBeNull();
});

test("of two records of one name none is taken unasked", () => {
  expect(typedAs([...OFFERS, { id: "5", name: "Wheel" }], "wheel").id).toBeNull();
});
