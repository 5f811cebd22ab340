/** The list of what was weighed last. */
import { expect, test } from "vitest";
import type { Rec } from "../../webapp/src/journal/types";
import { newestLooks } from "../../webapp/src/screens/Weigh/newestLooks";

const look = (id: string, values: Rec["values"]) => ({ id, values }) as unknown as Rec;

test("the newest look comes first by the time stated, whatever its zone or its id", () => {
  const looks = [
    look("c", { at: "2026-05-02T09:30+02:00" }), // 07:30 UTC
    look("a", { at: "2026-05-02T08:00+00:00" }),
    look("b", { at: "2026-05-01" }),
    look("017f22e2-79b0-7cc3-98c4-dc0c0c07398f", {}), // made 2022-02-22
  ];
  expect(newestLooks(looks, 3, []).map(({ id }) => id)).toEqual(["a", "c", "b"]);
});

test("a replaced reading is not among them", () => {
  const looks = [look("a", { at: "2026-05-02" }), look("b", { at: "2026-05-03" })];
  expect(newestLooks(looks, 5, ["a"]).map(({ id }) => id)).toEqual(["b"]);
});
