/** Which parts are on the car to be replaced. */
import { expect, test } from "vitest";
import type { JobNet } from "../../webapp/src/core/ledger/net";
import { onCar } from "../../webapp/src/core/ledger/onCar";

/** A job as far as it matters here: which part goes which way. */
const job = (...lines: [way: "off" | "on", part: string][]) =>
  ({ lines: lines.map(([way, part]) => ({ way, part })) }) as unknown as JobNet;

test("a part is on the car until a job in the car takes it off", () => {
  expect(onCar({ id: "lid" }, [])).toBe(true);
  expect(onCar({ id: "lid" }, [job(["off", "lid"], ["on", "alloy lid"])])).toBe(false);
  expect(onCar({ id: "lid" }, [job(["off", "lid"]), job(["on", "lid"])])).toBe(true);
});

test("a part from elsewhere is on the car once a job put it there, and not before", () => {
  expect(onCar({ id: "alloy lid", whereabouts: "shelf" }, [])).toBe(false);
  expect(onCar({ id: "alloy lid", whereabouts: "shelf" }, [job(["on", "alloy lid"])])).toBe(true);
});
