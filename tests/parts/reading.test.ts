/** What stands below a field while a quantity is typed, and which text is kept. */
import { expect, test } from "vitest";
import { readingOf, typedOf } from "../../webapp/src/parts/words/reading";

test("nothing typed is nothing said", () => {
  expect(readingOf("mass", "  ", "kg")).toEqual({ state: "empty" });
});

test("a reading is said as it will be read, in both systems of units", () => {
  const reading = readingOf("mass", "6 3/8 oz", "kg");
  // 6.375 × 28.349523125 g = 180.73 g: the avoirdupois ounce is exact (international yard and pound agreement, 1959).
  expect(reading).toMatchObject({ state: "read", typed: "6 3/8 oz", unit: "oz", words: "6 3/8 oz · 0.181 kg" });
  expect((reading as { value: number }).value).toBeCloseTo(0.180728, 6);
});

test("what cannot be read gets a sentence that says what to type", () => {
  expect(readingOf("mass", "1,25", "kg")).toMatchObject({ state: "trouble", todo: expect.stringContaining("1.25") });
});

test("a bare number is kept with the unit it was read in, a whole text exactly as typed", () => {
  expect(typedOf("mass", "52", "kg")).toBe("52 kg");
  expect(typedOf("mass", "6 3/8", "oz")).toBe("6 3/8 oz");
  expect(typedOf("mass", " 0.25oz ", "kg")).toBe("0.25oz");
  expect(typedOf("volume", "10 gal", "gal_us")).toBe("10 US gal");
});

test("what cannot be read is kept as typed: nothing typed is lost", () => {
  expect(typedOf("mass", "12 psi", "kg")).toBe("12 psi");
});

test("without a unit of its own or of the field a bare number is a trouble", () => {
  expect(readingOf("mass", "1000", null)).toMatchObject({ state: "trouble" });
});
