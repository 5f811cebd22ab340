/** The drawing of the car: to scale, there and back, names apart, marks by area, and what a finger writes down. */
import { expect, test } from "vitest";
import { placeOf } from "../../webapp/src/core/balance/place";
import { readGarage } from "../../webapp/src/core/garage/garage";
import { labelsOf, spread, wrapped } from "../../webapp/src/parts/drawing/labels";
import { centresOf, halfOf, type Mark, markPath, shownIn, spotOf, under } from "../../webapp/src/parts/drawing/marks";
import { sideLines, topLines } from "../../webapp/src/parts/drawing/outline";
import { fingerText, fingerWithin, placePhrases, spotWords } from "../../webapp/src/parts/drawing/placeWords";
import { scaleWords, shapeOf } from "../../webapp/src/parts/drawing/shape";
import { type Spot, sideView, topView } from "../../webapp/src/parts/drawing/view";

const CAR = {
  id: "c",
  wheelbase: "2420 mm",
  track_front: "1430 mm",
  track_rear: "1400 mm",
  tyre_radius_front: "290 mm",
  beltline: "880 mm",
  length: "3720 mm",
  width: "1600 mm",
  height: "1290 mm",
  front_overhang: "690 mm",
};
const carOf = (car: object) => readGarage({ cars: [{ id: "c", ...car }] }).car;
const SHAPE = shapeOf(carOf(CAR))!;
const VIEWS = [topView(SHAPE), sideView(SHAPE)] as const;

function mark(key: string, mass: number, spot: Partial<Spot>, rest: Partial<Mark> = {}): Mark {
  const at = { x: 1, y: 0, z: 0.4, ...spot };
  return {
    key,
    part: key,
    name: key,
    mass,
    says: "",
    brief: "",
    planned: false,
    spot: at,
    half: { x: 0, y: 0, z: 0 },
    apart: 0,
    ...rest,
  };
}

test("the car's own dimensions are drawn, and nothing is called assumed", () => {
  expect(SHAPE).toMatchObject({
    front: -0.69,
    rear: 3.0300000000000002,
    half: 0.8,
    height: 1.29,
    radiusRear: 0.29,
    assumed: [],
  });
  expect(scaleWords(SHAPE)).toContain("own dimensions");
});

test("what nobody measured is drawn in proportion to the wheelbase, and said", () => {
  const shape = shapeOf(carOf({ wheelbase: "2400 mm" }))!;
  expect(shape.front).toBeCloseTo(-0.72);
  expect(shape.beltline).toBeNull();
  expect(shape.assumed).toEqual(["overhang", "tracks", "length", "width", "height", "tyres"]);
  expect(scaleWords(shape)).toContain("overhang, tracks, length, width, height and tyres drawn as on most small cars");
});

test("without a wheelbase, or with one of nothing, nothing is drawn", () => {
  expect(shapeOf(carOf({ length: "3720 mm" }))).toBeNull();
  expect(shapeOf(carOf({ wheelbase: "0 mm" }))).toBeNull();
  expect(shapeOf(null)).toBeNull();
});

test("a point of either view leads back to the spot it shows", () => {
  const spot = { x: 1.7, y: -0.4, z: 0.35 };
  for (const view of VIEWS) {
    const back = view.toSpot(...view.toPoint(spot), spot);
    for (const axis of ["x", "y", "z"] as const) expect(back[axis]).toBeCloseTo(spot[axis], 12);
  }
});

test("from above the front is up and left is left; from its left the front is left and up is up", () => {
  const [top, side] = VIEWS;
  const from = (view: typeof top, spot: Partial<Spot>) => view.toPoint({ x: 1, y: 0, z: 0.5, ...spot });
  expect(from(top, { x: 0 })[1]).toBeLessThan(from(top, { x: 2 })[1]);
  expect(from(top, { y: -0.5 })[0]).toBeLessThan(from(top, { y: 0.5 })[0]);
  expect(from(side, { x: 0 })[0]).toBeLessThan(from(side, { x: 2 })[0]);
  expect(from(side, { z: 1 })[1]).toBeLessThan(from(side, { z: 0.2 })[1]);
});

test("a long low car and a short high one both fit the width and leave room for names", () => {
  for (const dimensions of [
    { length: "4900 mm", width: "1500 mm" },
    { length: "2600 mm", width: "1900 mm", wheelbase: "1800 mm" },
  ]) {
    const shape = shapeOf(carOf({ ...CAR, ...dimensions }))!;
    for (const view of [topView(shape), sideView(shape)]) {
      const [left, top, width, height] = view.body;
      expect(left).toBeGreaterThanOrEqual(view.side === "top" ? 80 : 10);
      expect(left + width).toBeLessThanOrEqual(view.width - left + 1e-9);
      expect(top + height).toBeLessThanOrEqual(view.height);
    }
  }
});

test("no line of the outline leaves the car's own length", () => {
  for (const [view, lines] of [
    [VIEWS[0], topLines(SHAPE, VIEWS[0])],
    [VIEWS[1], sideLines(SHAPE, VIEWS[1])],
  ] as const) {
    const numbers = lines.body.match(/-?\d+(\.\d+)?/g)!.map(Number);
    const along = numbers.filter((_, i) => i % 2 === (view.side === "top" ? 1 : 0));
    const [from, long] = view.side === "top" ? [view.body[1], view.body[3]] : [view.body[0], view.body[2]];
    expect(Math.min(...along)).toBeGreaterThanOrEqual(from - 0.1);
    expect(Math.max(...along)).toBeLessThanOrEqual(from + long + 0.1);
  }
});

test("the area of a mark stands for its mass, circle or square", () => {
  const radius = (path: string) => Number(/a([\d.]+)/.exec(path)![1]);
  const side = (path: string) => Number(/h([\d.]+)/.exec(path)![1]);
  const off = (kg: number) => radius(markPath({ mass: -kg, apart: 0 }, 20, VIEWS[1]));
  expect(off(20) ** 2 / off(5) ** 2).toBeCloseTo(4);
  expect(side(markPath({ mass: 5, apart: 0 }, 20, VIEWS[1])) ** 2).toBeCloseTo(Math.PI * off(5) ** 2);
});

test("a pair of wheels is drawn at both wheels from above, each with half the area", () => {
  const pair = mark("wheels", -16, {}, { apart: 0.7 });
  expect(centresOf(pair, VIEWS[0])).toHaveLength(2);
  expect(centresOf(pair, VIEWS[1])).toHaveLength(1);
  expect(markPath(pair, 16, VIEWS[0]).match(/a/g)).toHaveLength(4);
});

test("a finger finds the marks within its reach, the nearest first, and either wheel of a pair", () => {
  const [top] = VIEWS;
  const marks = [
    mark("far", -9, { x: 2.9 }),
    mark("near", -1, { x: 1.05 }),
    mark("at", -2, {}),
    mark("wheels", -16, { x: 0 }, { apart: 0.7 }),
  ];
  expect(under(marks, top, top.toPoint({ x: 1, y: 0, z: 0 }), 1).map(({ key }) => key)).toEqual(["at", "near"]);
  expect(under(marks, top, top.toPoint({ x: 0, y: 0.68, z: 0 }), 1).map(({ key }) => key)).toEqual(["wheels"]);
});

test("a mark whose place a view cannot show is left out of it", () => {
  const marks = [mark("no side", -1, { y: NaN }), mark("whole", -2, {})];
  expect(shownIn(marks, VIEWS[0]).map(({ key }) => key)).toEqual(["whole"]);
  expect(shownIn(marks, VIEWS[1])).toHaveLength(2);
});

test("places that are wanted too near each other are spread, and stay inside", () => {
  expect(spread([10, 12, 14, 95], 10, 0, 100)).toEqual([10, 20, 30, 95]);
  expect(spread([90, 92, 94], 10, 0, 95)).toEqual([75, 85, 95]);
  expect(spread([], 10, 0, 95)).toEqual([]);
});

test("names are of the heaviest only, none over another, left and right as the marks sit", () => {
  const many = Array.from({ length: 60 }, (_, i) =>
    mark(`p${i}`, -(i + 1), { x: 1 + i / 1000, y: i % 2 ? 0.4 : -0.4 }),
  );
  const labels = labelsOf(many, VIEWS[0]);
  expect(labels.map(({ mark: { key } }) => key).sort()).toEqual([
    "p52",
    "p53",
    "p54",
    "p55",
    "p56",
    "p57",
    "p58",
    "p59",
  ]);
  for (const anchor of ["start", "end"]) {
    const tops = labels
      .filter((label) => label.anchor === anchor)
      .map(({ at }) => at[1])
      .sort((a, b) => a - b);
    expect(tops).toHaveLength(4);
    for (const [i, top] of tops.slice(1).entries()) expect(top - tops[i]!).toBeGreaterThanOrEqual(42);
  }
});

test("a long name takes two short lines and an ellipsis", () => {
  expect(wrapped("Spare wheel")).toEqual(["Spare wheel"]);
  expect(wrapped("Passenger seat")).toEqual(["Passenger", "seat"]);
  expect(wrapped("Air-conditioning compressor")).toEqual(["Air-conditi…"]);
  expect(wrapped("Fixed-back seat with rails")).toEqual(["Fixed-back", "seat with r…"]);
});

test("a finger writes no finer than it can mean, with its side in words", () => {
  expect(fingerText(1.2368, "mm")).toBe("1240 mm");
  expect(fingerText(-0.334, "in")).toBe("−13.0 in");
  expect(fingerWithin(VIEWS[0], "mm")).toBe("60 mm");
  expect(spotWords({ x: -0.19, y: -0.43, z: 0.69 }, "mm")).toBe(
    "190 mm ahead of the front axle\n430 mm left of the centreline\n690 mm above the ground",
  );
  expect(spotWords({ x: 1, y: 0.2, z: NaN }, "mm")).toBe(
    "1000 mm behind the front axle\n200 mm right of the centreline",
  );
});

test("a place is said with how far off it may be, as its zone or somebody's word has it", () => {
  const { car, parts } = readGarage({
    cars: [CAR],
    parts: [
      { id: "a", x: "1240 mm", y: "-330 mm", z: "500 mm", place_within: "60 mm" },
      { id: "b", zone: "boot" },
      { id: "w", zone: "rear wheels", count: 2 },
    ],
  });
  const place = (id: string, count = 1) => placeOf(car, parts.get(id)!, count);
  const phrases = (id: string, count = 1) =>
    placePhrases(place(id, count), "mm").map((phrase) => phrase.replaceAll("\u00a0", " "));
  expect(phrases("a")).toEqual([
    "1240 ± 60 mm behind the front axle",
    "330 ± 60 mm left of the centreline",
    "500 ± 60 mm above the ground",
  ]);
  expect(phrases("b")[1]).toBe("on the centreline, ± 500 mm");
  expect(phrases("w", 2)[1]).toBe("one at each side");
  expect(halfOf(place("a")).x).toBeCloseTo(0.06, 12);
  expect(spotOf(placeOf(null, parts.get("b")!, 1)).x).toBeNaN();
});
