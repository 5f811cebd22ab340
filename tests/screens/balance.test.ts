/** The balance as the screen says it: in words, in cells, as marks, and while one of them moves. */
import { expect, test } from "vitest";
import { balance } from "../../webapp/src/core/balance/balance";
import { readGarage } from "../../webapp/src/core/garage/garage";
import { uncertain } from "../../webapp/src/core/numbers/uncertain";
import { masses } from "../../webapp/src/core/weighing/weighing";
import { aboutCar, reasonsOf } from "../../webapp/src/screens/Balance/reasons";
import { centreOf, centresWith, statesOf, tell } from "../../webapp/src/screens/Balance/told";
import {
  axisCell,
  cell,
  movedWords,
  notedOr,
  shareCell,
  shareWords,
  withoutDoubt,
  yawWords,
} from "../../webapp/src/screens/Balance/words";

const GARAGE = {
  cars: [{ id: "c", wheelbase: "2420 mm", track_front: "1430 mm", track_rear: "1430 mm", beltline: "880 mm" }],
  scales: [{ id: "pads", kind: "corner_pads", division: "0.2 kg", repeatability: "0.2 kg" }],
  parts: [
    {
      id: "spare",
      name: "Spare wheel",
      x: "2.71 m",
      y: "0.1 m",
      z: "430 mm",
      claim: "13.4 kg",
      claim_basis: "worked_out",
    },
    {
      id: "lead",
      name: "Lead battery",
      x: "-120 mm",
      y: "-410 mm",
      z: "700 mm",
      claim: "12.9 kg",
      claim_basis: "quoted",
    },
    { id: "pane", name: "Pane", x: "1.4 m", y: "0 mm", z: "1.2 m", claim: "9 kg", claim_basis: "guessed" },
  ],
  jobs: [
    { id: "j1", state: "fitted" },
    { id: "j2", state: "fitted" },
    { id: "j3", state: "chosen" },
  ],
  job_parts: [
    { id: "a", job: "j1", part: "spare", way: "off" },
    { id: "b", job: "j2", part: "lead", way: "off" },
    { id: "e", job: "j3", part: "pane", way: "off" },
  ],
  weigh_ins: [
    {
      id: "w",
      layout: "corners",
      trim: "road",
      scale: "pads",
      jobs: ["j1"],
      lf: "262.8 kg",
      rf: "255.2 kg",
      lr: "204.6 kg",
      rr: "197.8 kg",
    },
  ],
};

function told(given: object = GARAGE, jobs: readonly string[] | null = null) {
  const garage = readGarage({ ...given });
  return tell(garage, masses(garage), jobs);
}

const spaced = (words: string | null) => words?.replaceAll("\u00a0", " ");

test("shares are said with what they were, and only once where nothing changed", () => {
  const { balance } = told();
  // By hand: front 518.0 of 920.4 kg; with the spare back in 518.0 + 13.4 (1 − 2.71/2.42) of 933.8; the battery out besides −12.9 (1 + 0.12/2.42).
  expect(spaced(shareWords(balance, "front", "start", "now"))).toBe(
    "55.59 ± 0.09 % on the front wheels, was 55.30 ± 0.06 %",
  );
  expect(spaced(shareWords(balance, "front", null, "after"))).toMatch(/^55\.\d+ ± 0\.\d+ % on the front wheels$/);
  expect(spaced(shareWords(balance, "left", "weighed", "weighed"))).toBe("50.78 ± 0.03 % on the left wheels");
});

test("the centre's way is said by direction, and what the doubt hides is left out", () => {
  const { balance } = told();
  expect(spaced(movedWords(balance, "start", "now", "mm"))).toMatch(
    /^The centre of gravity went .* mm (forward|rearward|to the right)/,
  );
  expect(movedWords(balance, "now", "now", "mm")).toBe("The centre of gravity has not moved by more than the doubt");
  expect(movedWords(told({}).balance, "start", "now", "mm")).toBeNull();
});

test("a centre nobody can tell is not said to rest", () => {
  const { balance } = told();
  const blind = (...axes: ("x" | "y" | "z")[]) => {
    const now = balance.states.now!;
    const body = { ...now.body, ...Object.fromEntries(axes.map((axis) => [axis, null])) };
    return movedWords({ ...balance, states: { now: { ...now, body } } }, "now", "now", "mm");
  };
  expect(blind("x", "y", "z")).toBe("It cannot be told how the centre of gravity moved");
  expect(blind("x")).toMatch(/^The centre of gravity has not moved by more than the doubt across it/);
});

test("a change in yaw inertia is judged only beyond its doubt", () => {
  expect(yawWords({ value: -20, sources: { a: 4 } })).toBe("turns in more willingly");
  expect(yawWords({ value: 20, sources: { a: 4 } })).toBe("turns in less willingly");
  expect(yawWords({ value: -20, sources: { a: 12 } })).toBe("no change that could be told");
  expect(yawWords({ value: 0, sources: {} })).toBe("no change that could be told");
});

test("a cell has its figure and how sure it is apart, the side in words", () => {
  expect(cell("912.4 ± 1.2 kg")).toEqual(["912.4", "± 1.2 kg"]);
  expect(cell("15 lb 6 oz ± 2 oz")).toEqual(["15 lb 6 oz", "± 2 oz"]);
  expect(cell(null)).toEqual(["—", ""]);
  const { now } = told().balance.states;
  expect(shareCell(now, "front")).toEqual(["55.59", "± 0.09 %"]);
  expect(axisCell(now, "y", "mm")[1]).toMatch(/left$/);
  expect(axisCell(undefined, "x", "mm")).toEqual(["—", ""]);
});

test("a mass is cut short without its doubt, whatever its unit", () => {
  expect(withoutDoubt("−14.22 ± 0.04 kg")).toBe("−14.22 kg");
  expect(withoutDoubt("−15 lb 6 oz ± 2 oz")).toBe("−15 lb 6 oz");
  expect(withoutDoubt("0.00 kg")).toBe("0.00 kg");
});

test("every weight that a job moves is a mark, what is only chosen told apart", () => {
  const marks = told().marks.map(({ name, mass, planned }) => [name, mass, planned]);
  expect(marks).toEqual([
    ["Spare wheel", -13.4, false],
    ["Lead battery", -12.9, false],
    ["Pane", -9, true],
  ]);
});

test("only the jobs asked for are planned, and without any the state after is not drawn", () => {
  expect(told(GARAGE, []).marks.some(({ planned }) => planned)).toBe(false);
  expect(statesOf(told(GARAGE, [])).map(({ name }) => name)).toEqual(["Start", "Now"]);
  expect(statesOf(told()).map(({ name }) => name)).toEqual(["Start", "Now", "After"]);
});

test("while a part moves, every centre is where the whole balance would find it", () => {
  const before = told();
  for (const [part, place] of [
    ["lead", { x: "1.9 m", y: "0.5 m", z: "300 mm" }],
    ["spare", { x: "-0.3 m", y: "-0.2 m", z: "900 mm" }],
    ["pane", { x: "2 m", y: "0.3 m", z: "400 mm" }],
  ] as const) {
    const garage = readGarage({
      ...GARAGE,
      parts: GARAGE.parts.map((each) => (each.id === part ? { ...each, ...place } : each)),
    });
    const [whole, mark] = [balance(garage, {}, masses(garage)), before.marks.find((each) => each.part === part)!];
    const to = {
      x: garage.parts.get(part)!.x!.value,
      y: garage.parts.get(part)!.y!.value,
      z: garage.parts.get(part)!.z!.value,
    };
    const moved = centresWith(before, part, mark.spot, to);
    for (const name of ["start", "now", "after"] as const)
      for (const axis of ["x", "y", "z"] as const)
        expect(moved[name]![axis], `${part} ${name} ${axis}`).toBeCloseTo(whole.states[name]!.body[axis]!.value, 10);
  }
});

test("a car nobody weighed, and a wheelbase of nothing, each give a sentence and no blank", () => {
  expect(reasonsOf(told({ ...GARAGE, weigh_ins: [] }).balance).map(({ code }) => code)).toEqual(["no_weigh_in"]);
  const zero = { ...GARAGE, cars: [{ ...GARAGE.cars[0], wheelbase: "0 mm" }] };
  expect(reasonsOf(told(zero).balance).map(({ code }) => code)).toEqual(["wheelbase_unknown"]);
  expect(aboutCar(readGarage(zero).warnings).map(({ code, data }) => [code, data.field])).toEqual([
    ["quantity_zero", "wheelbase"],
  ]);
  const bare = { ...GARAGE, cars: [{ id: "c" }] };
  expect(
    reasonsOf(told(bare).balance)
      .map(({ code }) => code)
      .sort(),
  ).toEqual(["height_unknown", "tracks_unknown", "wheelbase_unknown"]);
  expect(centreOf(told(bare), "now")!.spot.x).toBeNaN();
});

test("unsprung weight of parts nobody has noted as such is unknown, and not nothing", () => {
  expect(notedOr(uncertain(0))).toBe("none noted");
});
