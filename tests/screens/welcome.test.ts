/** The first start: a minimum or a scale's steps that cannot be read stop it, leaving them out does not. */
import { expect, test } from "vitest";
import { minimumTrouble, type Start, scaleTrouble } from "../../webapp/src/screens/Welcome/form";

const start = (patch: Partial<Start> = {}): Start => ({
  car: "Coupe",
  massUnit: "lb oz",
  minimum: "",
  kind: "kitchen",
  unit: "oz",
  division: "",
  ...patch,
});

test("the minimum may wait, but what is typed must be a mass", () => {
  expect(minimumTrouble(start())).toBeNull();
  expect(minimumTrouble(start({ minimum: "2150" }))).toBeNull();
  expect(minimumTrouble(start({ minimum: "12 psi" }))).toContain("psi");
  expect(minimumTrouble(start({ minimum: "0" }))).toContain("The class minimum: ");
});

test("the steps of the scale at hand likewise, and those of no scale never", () => {
  expect(scaleTrouble(start())).toBeNull();
  expect(scaleTrouble(start({ division: "0.1" }))).toBeNull();
  expect(scaleTrouble(start({ division: "fine" }))).toContain("The steps: ");
  expect(scaleTrouble(start({ division: "0" }))).toContain("The steps: ");
  expect(scaleTrouble(start({ kind: null, unit: null, division: "fine" }))).toBeNull();
});

test("a display without its scale is never dropped in silence", () => {
  expect(scaleTrouble(start({ kind: null }))).toContain("what kind of scale");
});
