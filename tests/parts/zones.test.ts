/** Zones by name and what follows from them. The names are our own; where such parts sit is common practice, no source. */
import { expect, test } from "vitest";
import { placing, zonesNamed } from "../../webapp/src/parts/drawing/zones";

test.each([
  ["Front wheels", ["front wheels"]],
  ["Steel wheel", ["front wheels", "rear wheels"]],
  ["Spare wheel", ["boot"]],
  ["Steering wheel", ["dash"]],
  ["Front seat, left", ["cabin front"]],
  ["Rear seats", ["cabin rear"]],
  ["Fibre bonnet", ["engine bay"]],
  ["Rear bumper beam", ["tail"]],
  ["Left door glass", ["left door"]],
  ["Wheelbrace", []], // a part of a word says nothing
  ["Clip", []],
])("%s is offered %j", (name, zones) => {
  expect(zonesNamed(name)).toEqual(zones);
});

test("what sits at a wheel is unsprung and turns, but a caliper does not turn", () => {
  expect(placing("front wheels", { name: "Wheel" })).toEqual({ zone: "front wheels", unsprung: true, rotating: true });
  expect(placing("rear wheels", { name: "Brake calipers" })).toMatchObject({ unsprung: true, rotating: false });
  expect(placing("boot", { name: "Wheel" })).toEqual({ zone: "boot" });
});

test("what somebody has said of a part stays", () => {
  expect(placing("rear wheels", { name: "Arch liner", unsprung: false })).toEqual({
    zone: "rear wheels",
    rotating: true,
  });
});
