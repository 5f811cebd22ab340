/** At the yard: which parts are on the car to be replaced, and how prices and rows are taken. */
import { expect, test } from "vitest";
import type { JobNet } from "../../webapp/src/core/ledger/net";
import { withWord } from "../../webapp/src/parts/words/naming";
import { onCar } from "../../webapp/src/screens/Donor/onCar";
import { priceTrouble } from "../../webapp/src/screens/Donor/price";

/** A job as far as it matters here: which part goes which way. */
const job = (...lines: [way: "off" | "on", part: string][]) =>
  ({ lines: lines.map(([way, part]) => ({ way, part })) }) as unknown as JobNet;

test("a part is on the car until a job in the car takes it off", () => {
  expect(onCar({ id: "lid" }, [])).toBe(true);
  expect(onCar({ id: "lid" }, [job(["off", "lid"], ["on", "alloy lid"])])).toBe(false);
  expect(onCar({ id: "lid" }, [job(["off", "lid"]), job(["on", "lid"])])).toBe(true);
});

test("a part from elsewhere is on the car once a job put it there, and not before", () => {
  expect(onCar({ id: "alloy lid", whereabouts: "shelf" }, [])).toBe(false);
  expect(onCar({ id: "alloy lid", whereabouts: "shelf" }, [job(["on", "alloy lid"])])).toBe(true);
});

test("a price is a plain number, or nothing", () => {
  expect(["", "40", "12.50"].map(priceTrouble)).toEqual([null, null, null]);
  expect(["12,50", "12.505", "40 each", "-3"].map((text) => typeof priceTrouble(text))).toEqual(
    Array(4).fill("string"),
  );
});

test("a row that was typed with its word does not get it twice", () => {
  expect(["Z", "row Z", "Row 7", "rowan tree"].map((text) => withWord("row", text))).toEqual([
    "row Z",
    "row Z",
    "Row 7",
    "row rowan tree",
  ]);
});
