/** The keypad's keys, one at a time: what stands in the field is what a person would have written by hand. */
import { describe, expect, test } from "vitest";
import { type Key, press, unitWritten } from "../../webapp/src/parts/controls/typing";

const write = (text: string): Key => ({ sort: "write", text });
const fraction = (text: string): Key => ({ sort: "fraction", text });
const unit = (text: string): Key => ({ sort: "unit", text });
const erase: Key = { sort: "erase" };

const typed = (...keys: Key[]) => keys.reduce(press, "");

describe("writing", () => {
  test("digits and a point stand as they were pressed", () => {
    expect(typed(write("1"), write("."), write("3"), write("5"))).toBe("1.35");
  });

  test("a fraction key stands apart from the whole number before it", () => {
    expect(typed(write("6"), fraction("3/8"), unit("oz"))).toBe("6 3/8 oz");
    expect(typed(fraction("1/2"), unit("oz"))).toBe("1/2 oz");
  });

  test("a fraction pressed after the unit belongs to the number before it", () => {
    expect(typed(write("6"), unit("oz"), fraction("3/8"))).toBe("6 3/8 oz");
    expect(press("9 US gal", fraction("1/2"))).toBe("9 1/2 US gal");
  });

  test("space and over write the fractions that have no key", () => {
    expect(typed(write("6"), write(" "), write("5"), write("/"), write("1"), write("6"))).toBe("6 5/16");
  });

  test("a digit after a unit begins the smaller unit's number", () => {
    expect(typed(write("3"), unit("lb"), write("4"), write("."), write("5"), unit("oz"))).toBe("3 lb 4.5 oz");
  });
});

describe("units", () => {
  test("a second unit key takes the place of the first", () => {
    expect(typed(write("6"), unit("lb"), unit("oz"))).toBe("6 oz");
    expect(typed(write("9"), unit("US gal"), unit("L"))).toBe("9 L");
  });

  test("a unit on an empty field writes nothing", () => {
    expect(typed(unit("kg"))).toBe("");
  });

  test("the unit written last is the one in force", () => {
    expect(unitWritten("3 lb 4.5 oz")).toBe("oz");
    expect(unitWritten("10 US gal ")).toBe("US gal");
    expect(unitWritten("6 3/8")).toBeNull();
  });
});

describe("erasing", () => {
  test("takes a unit whole", () => {
    expect(press("6 3/8 oz", erase)).toBe("6 3/8");
    expect(press("9 US gal", erase)).toBe("9");
  });

  test("takes a fraction whole", () => {
    expect(press("6 3/8", erase)).toBe("6");
    expect(press("3/8", erase)).toBe("");
  });

  test("takes digits one at a time", () => {
    expect(press("1.35", erase)).toBe("1.3");
    expect(press("", erase)).toBe("");
  });
});
