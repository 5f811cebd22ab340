/** When a reading is far from what a part weighed before. */
import { describe, expect, test } from "vitest";
import { uncertain } from "../../webapp/src/core/numbers/uncertain";
import { farFrom } from "../../webapp/src/core/weighing/far";

describe("a second look is asked for", () => {
  const before = uncertain(10, { "round:a": 0.05 });

  test("beyond three standard uncertainties and a twentieth of the mass", () => {
    expect(farFrom(before, uncertain(10.6, { "round:b": 0.05 }))?.value).toBeCloseTo(0.6);
    expect(farFrom(before, uncertain(9.4, { "round:b": 0.05 }))?.value).toBeCloseTo(-0.6);
  });

  test("not for a rough scale, and not for a small difference between fine ones", () => {
    expect(farFrom(before, uncertain(10.6, { "round:b": 0.5 }))).toBeNull();
    expect(farFrom(before, uncertain(10.4, { "round:b": 0.001 }))).toBeNull();
  });
});
