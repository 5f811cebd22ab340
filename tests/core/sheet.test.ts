/** Sheet stock on the phone: its laws hold whatever is drawn. */

import fc from "fast-check";
import { expect, test } from "vitest";
import { u } from "../../webapp/src/core/numbers/uncertain";
import { apart, crossing, twiceArea } from "../../webapp/src/core/sheet/polygon";
import { sheet } from "../../webapp/src/core/sheet/sheet";
import { readPiece } from "../../webapp/src/core/sheet/sheetPiece";

const spot = fc.tuple(fc.bigInt(-30n, 30n), fc.bigInt(-30n, 30n));
const outlines = fc.array(spot, { minLength: 3, maxLength: 9 });
const sizes = fc.integer({ min: 10, max: 2000 });

function massOf(record: object): { value: number; u: number } {
  const found = sheet(readPiece({ id: "p", material: "steel", thickness: "1 mm", ...record }));
  if (!("mass" in found)) throw new Error(found.code);
  return { value: found.mass.value, u: u(found.mass) };
}

test("where an outline starts and which way it runs changes neither its area nor whether it crosses itself", () => {
  fc.assert(
    fc.property(outlines, (outline) => {
      const turned = [...outline.slice(1), ...outline.slice(0, 1)];
      const reversed = [...outline].reverse();
      expect(twiceArea(turned)).toBe(twiceArea(outline));
      expect(twiceArea(reversed)).toBe(-twiceArea(outline));
      expect([crossing(turned) === null, crossing(reversed) === null]).toEqual([
        crossing(outline) === null,
        crossing(outline) === null,
      ]);
    }),
  );
});

test("outlines far from each other are apart, and none is apart from itself", () => {
  fc.assert(
    fc.property(outlines, (outline) => {
      expect(
        apart(
          outline,
          outline.map(([x, y]) => [x + 100n, y] as const),
        ),
      ).toBe(true);
      expect(apart(outline, outline)).toBe(false);
    }),
  );
});

test("twice the width is twice the mass, and holes as large as half the piece leave half", () => {
  fc.assert(
    fc.property(sizes, sizes, (width, height) => {
      const one = massOf({ width: `${width} mm`, height: `${height} mm` });
      const two = massOf({ width: `${2 * width} mm`, height: `${height} mm` });
      const holes = [{ width: `${width} mm`, height: `${height / 2} mm`, count: 2 }];
      const left = massOf({ width: `${2 * width} mm`, height: `${height} mm`, holes });
      expect(two.value).toBeCloseTo(2 * one.value, 9);
      expect(left.value).toBeCloseTo(one.value, 9);
      expect(one.u).toBeGreaterThan(0);
    }),
  );
});
