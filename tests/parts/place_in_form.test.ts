/** What a finger on the car writes into a part's form: the axes its view shows, and how well a finger knows them. */
import { expect, test } from "vitest";
import { readGarage } from "../../webapp/src/core/garage/garage";
import { setFromFinger } from "../../webapp/src/parts/drawing/placeInForm";
import { shapeOf } from "../../webapp/src/parts/drawing/shape";
import { sideView, topView } from "../../webapp/src/parts/drawing/view";
import type { Form } from "../../webapp/src/parts/forms/form";

const SHAPE = shapeOf(
  readGarage({
    cars: [{ id: "c", wheelbase: "2420 mm", length: "3720 mm", width: "1600 mm", front_overhang: "690 mm" }],
  }).car,
)!;
const [TOP, SIDE] = [topView(SHAPE), sideView(SHAPE)];
const SPOT = { x: 1.2368, y: -0.334, z: 0.507 };

function written(before: Record<string, string>, view: typeof TOP): Record<string, unknown> {
  const fields: Record<string, unknown> = { ...before };
  setFromFinger(
    {
      text: (field: string) => String(fields[field] ?? ""),
      set: (field: string, value: unknown) => (fields[field] = value),
    } as Form<"part">,
    SPOT,
    view,
  );
  return fields;
}

test("from above it sets how far back and which side, and leaves the height alone", () => {
  expect(written({}, TOP)).toEqual({ x: "1240 mm", y: "−330 mm", place_within: "60 mm" });
});

test("from the left it sets how far back and how high, and leaves the side alone", () => {
  expect(written({ y: "12 mm" }, SIDE)).toEqual({ x: "1240 mm", y: "12 mm", z: "510 mm", place_within: "70 mm" });
});

test("what is known by a finger is no longer as good as the tape measure was", () => {
  expect(written({ x: "1237 mm", y: "-330 mm", z: "0.5 m", place_within: "5 mm" }, TOP).place_within).toBe("60 mm");
});

test("an axis that was known worse keeps its doubt, unless it is set anew", () => {
  expect(written({ z: "500 mm", place_within: "150 mm" }, TOP).place_within).toBe("150 mm");
  expect(written({ x: "1 m", y: "0 mm", place_within: "150 mm" }, TOP).place_within).toBe("60 mm");
});
