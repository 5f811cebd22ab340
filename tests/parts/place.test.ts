/** A place by tape measure: its side apart from its length, and no farther than a car is long. */
import { expect, test } from "vitest";
import { placed, placeTrouble, placeWords, sidesOf } from "../../webapp/src/parts/words/place";

test("a minus, typed by a keyboard or written by the app, is a side", () => {
  expect(sidesOf("-600 mm")).toEqual({ far: "600 mm", minus: true });
  expect(sidesOf("− 2 ft")).toEqual({ far: "2 ft", minus: true });
  expect(sidesOf("600")).toEqual({ far: "600", minus: false });
});

test("a length and its side make what is kept, and nothing stays nothing", () => {
  expect(placed("600 mm", true)).toBe("-600 mm");
  expect(placed("600 mm", false)).toBe("600 mm");
  expect(placed(" ", true)).toBe(" ");
});

test("either side can be read, and beyond ten metres it is no place in a car", () => {
  expect(placeTrouble("-600", "mm")).toBeNull();
  expect(placeTrouble("", "mm")).toBeNull();
  expect(placeTrouble("10 m", "mm")).toBeNull();
  expect(placeTrouble("-10.001 m", "mm")).toContain("more than a car is long");
  expect(placeTrouble("60", "ft")).toContain("more than a car is long");
  expect(placeTrouble("12 psi", "mm")).toContain("psi");
});

test("a place is said in words, never with a minus", () => {
  const words = placeWords({ zone: "nose", x: "-600 mm", y: "330 mm" });
  expect(words).toBe("nose, 600 mm ahead of the front axle, 330 mm right of the centreline");
  expect(placeWords({ name: "Seat" })).toBeNull();
});
