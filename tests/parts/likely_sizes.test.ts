import { expect, test } from "vitest";
import { TABLE } from "../../webapp/src/journal/kinds";
import { unlikely, unreadable } from "../../webapp/src/parts/forms/unreadable";

const CAR = TABLE.car.fields;

test("a size no car has is refused with what is read and where to look", () => {
  const said = "“1 mm” is no size of a car: here 1 m to 6 m is read. Look for a slipped unit or digit.";
  expect(unlikely(CAR.wheelbase, "1 mm")).toBe(said);
  expect(unreadable("car", { name: "Coupe", wheelbase: "1 mm" })).toBe(`wheelbase: ${said}`);
  expect(unreadable("car", { track_front: "99 m" })).toMatch(/0\.5 m to 3 m/);
  expect(unreadable("car", { tyre_radius_rear: "0 mm" })).toMatch(/100 mm to 1000 mm/);
});

test("a likely size is taken, and what cannot be read is left to the reading itself", () => {
  expect(unlikely(CAR.wheelbase, "2420 mm")).toBeNull();
  expect(unlikely(CAR.wheelbase, "")).toBeNull();
  expect(unlikely(CAR.wheelbase, "long")).toBeNull();
  expect(unlikely(CAR.beltline, "1 mm")).toBeNull();
});
