/** What the ballast screen says in words, and how percentages and rough places become what is kept. */
import { describe, expect, test } from "vitest";
import { uncertain } from "../../webapp/src/core/numbers/uncertain";
import { fractionOf, percentOf } from "../../webapp/src/parts/words/percent";
import { SPOTS, typedAt } from "../../webapp/src/screens/Ballast/spots";
import {
  changeWords,
  crossFact,
  heightFact,
  missingIn,
  movesSentence,
  shareFact,
} from "../../webapp/src/screens/Ballast/words";

const named = (id: string) => ({ a: "Boot floor", b: "Left footwell" })[id] ?? id;

describe("percentages", () => {
  const pairs = [
    ["52.5", "0.525"],
    ["52", "0.52"],
    ["5", "0.05"],
    ["0.5", "0.005"],
    ["100", "1.00"],
    ["48.125", "0.48125"],
  ] as const;

  test("become exact fractions and come back as they were typed", () => {
    for (const [percent, fraction] of pairs) {
      expect(fractionOf(percent)).toBe(fraction);
      expect(percentOf(fraction)).toBe(percent);
    }
  });

  test("of a fraction with fewer digits are whole", () => {
    expect([percentOf("0.5"), percentOf("1"), percentOf("0")]).toEqual(["50", "100", "0"]);
  });

  test("that are half typed or no numbers stay as typed", () => {
    for (const text of ["", "52.", "52,5", "fifty", "-3"])
      expect([fractionOf(text), percentOf(text)]).toEqual([text, text]);
  });
});

describe("what to move", () => {
  test("comes out before other blocks go in", () => {
    expect(movesSentence({ b: 2, a: -1 }, named)).toBe("Take 1 from “Boot floor”, put 2 in “Left footwell”.");
    expect(movesSentence({}, named)).toBe("");
  });

  test("is said at each place", () => {
    expect(changeWords(0, 4)).toBe("none fitted yet");
    expect(changeWords(2, 4)).toBe("2 fitted now: put 2 more in");
    expect(changeWords(3, 0)).toBe("3 fitted now: take 3 out");
    expect(changeWords(3, 3)).toBe("3 fitted, as they should be");
    expect(changeWords(3, 3, true)).toBe("3 fitted, as the nearest has it");
  });
});

describe("what the car comes to", () => {
  test("a share, what is wanted and what it is without", () => {
    const fact = shareFact(
      "Front",
      uncertain(0.528, { pads: 0.0005 }),
      uncertain(0.531, { pads: 0.0005 }),
      [0.52, 0.53],
    );
    expect(fact).toEqual({
      name: "Front",
      value: "52.80 ± 0.10 %",
      under: "wanted 52.0 % to 53.0 % · 53.10 ± 0.10 % without ballast",
    });
    expect(shareFact("Left", uncertain(0.5), null, [0, 0.505]).under).toBe("wanted at most 50.5 %");
    expect(shareFact("Left", uncertain(0.5), null, [0.495, 1]).under).toBe("wanted at least 49.5 %");
    expect(shareFact("Left", null, null, null).value).toBe("not known");
  });

  test("a centre that comes down, goes up, stays, or is not known", () => {
    const told = (height: number | null, before: number | null) =>
      heightFact({ height } as never, { height: before } as never, "mm").value;
    expect([told(0.508, 0.512), told(0.515, 0.512), told(0.512, 0.512), told(null, 0.5)]).toEqual([
      "4 mm lower",
      "3 mm higher",
      "as high as before",
      "height not known",
    ]);
  });

  test("cross weight only where the roll stiffness is known", () => {
    expect(crossFact({ cross_load: null } as never, "kg")).toEqual([]);
    expect(crossFact({ cross_load: 0.01 } as never, "kg")[0]?.value).toBe("next to no change");
    expect(crossFact({ cross_load: -0.36 } as never, "kg")[0]?.value).toBe("−0.36 kg on right front and left rear");
  });

  test("what is missing in the garage's own unit", () => {
    expect(missingIn("lb", [{ code: "ballast_short", data: { kg: 1, text: "1.00 kg" } }])[0]?.data.text).toBe(
      "2.20 lb",
    );
  });
});

test("a common place sets what the car's size tells, ahead and left with a minus", () => {
  const nose = SPOTS.find(({ name }) => name === "Nose")!;
  const left = SPOTS.find(({ name }) => name === "Left footwell")!;
  expect(typedAt(nose, { wheelbase: 2.4, track: 1.4, unit: "mm" })).toEqual({
    name: "Nose",
    x: "-480 mm",
    y: "0 mm",
    z: "350 mm",
  });
  expect(typedAt(left, { wheelbase: null, track: 1.4, unit: "in" })).toEqual({
    name: "Left footwell",
    y: "-15.5 in",
    z: "7.0 in",
  });
});
