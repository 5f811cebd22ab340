/** Sheet stock on the phone: its laws hold whatever is drawn. */

import fc from "fast-check";
import { expect, test } from "vitest";
import { u } from "../../webapp/src/core/numbers/uncertain";
import { apart, crossing, type Spot, twiceArea } from "../../webapp/src/core/sheet/polygon";
import { listedOver, type SheetMass, sheet } from "../../webapp/src/core/sheet/sheet";
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

const triangles = fc.tuple(spot, spot, spot).filter((corners) => twiceArea(corners) !== 0n);
const sum = ([ax, ay]: Spot, [bx, by]: Spot): Spot => [ax + bx, ay + by];
const less = ([ax, ay]: Spot, [bx, by]: Spot): Spot => [ax - bx, ay - by];

test("a corner on a side changes nothing, and a side that runs back over another is found", () => {
  fc.assert(
    fc.property(triangles, ([a, b, c]) => {
      // Of twice the size, so that the middle of a side is on the grid.
      const [one, two, three, middle] = [sum(a, a), sum(b, b), sum(c, c), sum(a, b)];
      expect(crossing([one, two, three])).toBeNull();
      expect(crossing([one, middle, two, three])).toBeNull();
      expect(crossing([one, two, middle, three])).toEqual([0, 1]);
      expect(crossing([middle, three, one, two])).toEqual([0, 2]);
      expect(crossing([two, middle, three, one])).toEqual([0, 3]);
    }),
  );
});

test("outlines of which one only touches a side of the other are not apart", () => {
  fc.assert(
    fc.property(triangles, ([a, b, c]) => {
      const outline = [sum(a, a), sum(b, b), sum(c, c)];
      const touch = sum(a, b); // the middle of a side; the others lie across that side
      const across = less(sum(touch, touch), sum(c, c));
      const other = [touch, across, sum(across, less(b, a))] as const;
      const moved = other.map((each) => sum(each, less(across, touch)));
      for (const turned of [other, [other[1], other[2], touch], [other[2], touch, across]]) {
        expect([apart(outline, turned), apart(turned, outline)]).toEqual([false, false]);
      }
      expect([apart(outline, moved), apart(moved, outline)]).toEqual([true, true]);
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

test("a gauge table that lists more than comes out is told so, and one that says the same is not", () => {
  const gauge = (number: number, table: string) => {
    const piece = { id: "p", material: "steel", width: "300 mm", height: "200 mm", gauge: number, gauge_table: table };
    return listedOver(sheet(readPiece(piece)) as SheetMass);
  };
  // The makers' table reckons 41.82 lb a square foot and inch of thickness, which is 2.4 % more than steel weighs.
  expect(gauge(16, "msg")).toBeCloseTo(41.82 / ((7850 * 0.3048 ** 2 * 0.0254) / 0.45359237) - 1, 3);
  expect(gauge(18, "ussg")).toBeNull();
});
