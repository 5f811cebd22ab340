/** The drawing of a sheet is to scale, holds all of it, and a tap on the pad lands where it says. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { read } from "../../webapp/src/core/numbers/quantity";
import { readPiece } from "../../webapp/src/core/sheet/sheetPiece";
import { drawingOf, edgeOf, type Line, type Spot, sidesOf, WIDTH } from "../../webapp/src/parts/sheet/geometry";
import {
  cornerAt,
  EDGE,
  FIELDS,
  fieldFor,
  SIDE,
  STEPS,
  scaleOf,
  snapped,
  spotsOf,
  toPad,
} from "../../webapp/src/screens/Sheet/pad";

const millimetres = fc.integer({ min: 5, max: 3000 });
const L = "0 mm, 0 mm; 300 mm, 0 mm; 300 mm, 100 mm; 100 mm, 100 mm; 100 mm, 250 mm; 0 mm, 250 mm";

function spotsIn(line: Line): readonly Spot[] {
  if ("spots" in line) return line.spots;
  const {
    middle: [x, y],
    radius,
  } = line;
  return [
    [x - radius, y - radius],
    [x + radius, y + radius],
  ];
}

describe("the drawing", () => {
  test("holds the outline and every hole, to one scale both ways", () => {
    fc.assert(
      fc.property(millimetres, millimetres, fc.array(millimetres, { maxLength: 5 }), (width, height, diameters) => {
        const holes = diameters.map((diameter) => ({
          form: "circle" as const,
          diameter: `${diameter / 10} mm`,
          count: 12,
        }));
        const drawing = drawingOf(readPiece({ id: "p", width: `${width} mm`, height: `${height} mm`, holes }));
        const { box, scale } = drawing;
        expect((box.right - box.left) / scale).toBeCloseTo(width / 1000, 9);
        expect((box.bottom - box.top) / scale).toBeCloseTo(height / 1000, 9);
        for (const [at, { line }] of drawing.loose.entries()) {
          expect((line as { radius: number }).radius * 2).toBeCloseTo((diameters[at]! / 10_000) * scale, 9);
        }
        for (const [x, y] of [drawing.outline, ...drawing.loose.map(({ line }) => line)].flatMap(spotsIn)) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(WIDTH);
          expect(y).toBeLessThanOrEqual(drawing.height);
        }
      }),
    );
  });

  test("up is up, and each side has its true length", () => {
    const drawing = drawingOf(readPiece({ id: "p", form: "polygon", corners: L }));
    expect(sidesOf(drawing).map(({ metres }) => Math.round(metres * 1000))).toEqual([300, 100, 200, 150, 100, 250]);
    const [first, , , , , last] = spotsIn(drawing.outline);
    expect(last![1]).toBeLessThan(first![1]);
  });

  test("the length of a side stands inside, whichever way round the corners run", () => {
    for (const corners of [L, L.split("; ").reverse().join("; ")]) {
      const bottom = sidesOf(drawingOf(readPiece({ id: "p", form: "polygon", corners }))).find(
        ({ metres }) => Math.abs(metres - 0.3) < 1e-9,
      );
      expect(bottom!.inward[1]).toBeCloseTo(-1, 9);
    }
  });

  test("a drawn hole lies where it is drawn, also beside the outline, where nothing is cut off", () => {
    const holes = [{ form: "polygon" as const, corners: "350 mm, 20 mm; 400 mm, 20 mm; 350 mm, 60 mm" }];
    const drawing = drawingOf(readPiece({ id: "p", form: "polygon", corners: L, holes }));
    const [corner] = spotsIn(drawing.placed[0]!);
    expect((corner![0] - drawing.box.left) / drawing.scale).toBeCloseTo(0.35, 9);
    expect((drawing.box.bottom - corner![1]) / drawing.scale).toBeCloseTo(0.02, 9);
    expect(Math.max(...spotsIn(drawing.placed[0]!).map(([x]) => x))).toBeLessThanOrEqual(WIDTH);
  });

  test("holes without a place do not lie on each other", () => {
    const holes = [30, 40, 20, 50, 60, 10].map((size) => ({ width: `${size} mm`, height: `${size} mm` }));
    const { loose } = drawingOf(readPiece({ id: "p", width: "300 mm", height: "100 mm", holes }));
    const boxes = loose.map(({ line }) => spotsIn(line));
    for (const [at, one] of boxes.entries()) {
      for (const other of boxes.slice(at + 1)) {
        const apart = ([0, 1] as const).some(
          (k) =>
            Math.max(...one.map((s) => s[k])) <= Math.min(...other.map((s) => s[k])) ||
            Math.max(...other.map((s) => s[k])) <= Math.min(...one.map((s) => s[k])),
        );
        expect(apart).toBe(true);
      }
    }
  });

  test("a circle to draw a hole in is the circle itself", () => {
    for (const [x, y] of edgeOf(readPiece({ id: "p", form: "circle", diameter: "200 mm" }).outline))
      expect(Math.hypot(x - 0.1, y - 0.1)).toBeCloseTo(0.1, 12);
  });
});

describe("the pad", () => {
  test("a tap becomes the nearest step as a person would type it, and a corner lies where it was tapped", () => {
    fc.assert(
      fc.property(
        fc.constantFrom("mm", "in"),
        fc.nat(4),
        fc.nat(3),
        fc.nat(SIDE),
        fc.nat(SIDE),
        (unit, width, fine, x, y) => {
          const [field, step] = [FIELDS[unit]![width]!, STEPS[unit]![fine]!];
          const scale = scaleOf(field, unit);
          const [across, up] = snapped([x, y], scale, unit, step).map((text) => read("length", text).value) as [
            number,
            number,
          ];
          const one = read("length", `${step} ${unit}`).value;
          expect(Math.abs(across / one - Math.round(across / one))).toBeLessThan(1e-9);
          const [backX, backY] = toPad([across, up], scale);
          const reach = (one * scale) / 2 + 1e-6;
          const inside = (place: number, low: number, high: number) => Math.min(Math.max(place, low), high);
          expect(Math.abs(backX - inside(x, EDGE, SIDE - 10))).toBeLessThanOrEqual(reach);
          expect(Math.abs(backY - inside(y, 10, SIDE - EDGE))).toBeLessThanOrEqual(reach);
        },
      ),
    );
  });

  test("a finger finds the nearest corner within its own width, and none further off", () => {
    const scale = scaleOf(500, "mm");
    const corners = spotsOf(
      [
        ["0 mm", "0 mm"],
        ["20 mm", "0 mm"],
        ["half", "0 mm"],
      ],
      "mm",
    );
    expect(cornerAt(toPad([0.018, 0], scale), corners, scale)).toBe(1);
    expect(cornerAt(toPad([0.4, 0.4], scale), corners, scale)).toBeNull();
  });

  test("the field holds what is drawn already", () => {
    expect(fieldFor([], "mm")).toBe(500);
    expect(fieldFor([[0.3, 1.2], null], "mm")).toBe(2000);
    expect(fieldFor([[0.12, 0.1]], "mm")).toBe(200);
    expect(fieldFor([[1, 1]], "in")).toBe(40);
    expect(fieldFor([[5, 1]], "mm")).toBe(2000);
  });
});
