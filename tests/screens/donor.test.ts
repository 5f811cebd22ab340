/** At the yard: how prices and rows are taken. */
import { expect, test } from "vitest";
import { withWord } from "../../webapp/src/parts/words/naming";
import { priceTrouble } from "../../webapp/src/screens/Donor/price";

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
