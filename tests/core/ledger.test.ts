/** However the ledger is cut, it is one ledger; what is put back is gone from it; no data breaks it. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readGarage } from "../../webapp/src/core/garage/garage";
import { compare } from "../../webapp/src/core/ledger/compare";
import { type Ledger, ledger } from "../../webapp/src/core/ledger/ledger";
import { add, ratio, ZERO } from "../../webapp/src/core/numbers/ratio";
import { subtract, total, type Uncertain, u } from "../../webapp/src/core/numbers/uncertain";
import { masses } from "../../webapp/src/core/weighing/weighing";
import { plain } from "../plain";
import { GARAGES, type Lists, SHUFFLED, WILD } from "./garages";

function read(lists: object): Ledger {
  return ledger(readGarage(lists as Record<string, unknown>));
}

function net(found: Ledger): Uncertain {
  return found.now.mass.net;
}

/** Equal but for the last digits, in value and in every source: what they do not share is nothing. */
function same(one: Uncertain, other: Uncertain): boolean {
  const rest = subtract(one, other);
  const size = Math.max(1, Math.abs(one.value), u(one));
  return Math.abs(rest.value) < 1e-12 * size && u(rest) < 1e-12 * size;
}

function always<T>(given: fc.Arbitrary<T>, holds: (given: T) => unknown): void {
  fc.assert(
    fc.property(given, (each) => {
      if (holds(each) === false) throw new Error("does not hold");
    }),
    { numRuns: 100 },
  );
}

/** Every weighing entered wrongly first, and then replaced. */
function corrected(lists: Lists): Lists {
  const weighings = lists.weighings ?? [];
  const wrong = weighings.map((one) => ({ ...one, id: `wrong-${one.id}`, shown: "31 kg" }));
  return { ...lists, weighings: [...wrong, ...weighings.map((one) => ({ ...one, replaces: `wrong-${one.id}` }))] };
}

/** Every job done again the other way round. */
function undone(lists: Lists): Lists {
  const { jobs = [], job_parts = [] } = lists;
  const turned = job_parts.map((line) => {
    const way = line.way === "off" ? "on" : "off";
    return { ...line, id: `un-${line.id}`, job: `un-${line.job}`, way };
  });
  const again = jobs.map((job) => ({ ...job, id: `un-${job.id}` }));
  return { ...lists, jobs: [...jobs, ...again], job_parts: [...job_parts, ...turned] };
}

describe("the ledger", () => {
  test("takes any data without throwing", () => {
    always(WILD, (wild) => {
      read(wild);
      compare(readGarage(wild), "a", "b");
    });
  });

  test("is the same whatever the order of the records", () => {
    always(SHUFFLED, ([lists, other]) => {
      expect(plain(read(other))).toEqual(plain(read(lists)));
    });
  });

  test("adds up by stage, by zone and by job", () => {
    always(GARAGES, (lists) => {
      const found = read(lists);
      const stages = total(found.by_stage.map((stage) => stage.states.fitted.mass.net));
      const zones = total(found.by_zone.map((zone) => zone.mass.net));
      const jobs = total(found.in_car.map((id) => found.jobs.get(id)?.total.mass.net as Uncertain));
      return same(stages, net(found)) && same(zones, net(found)) && same(jobs, net(found));
    });
  });

  test("adds up over what stays and what is put in for the event", () => {
    always(GARAGES, (lists) => {
      const found = read({ ...lists, trim: "event" });
      const { both, event } = found.by_trim;
      return same(total([both.mass.net, event.mass.net]), net(found)) && same(both.mass.net, net(read(lists)));
    });
  });

  test("ends where its last step ends", () => {
    always(GARAGES, (lists) => {
      const found = read(lists);
      const last = found.cumulative.at(-1) ?? { value: 0, u: 0 };
      expect(last.value).toBeCloseTo(net(found).value, 11);
      expect(last.u).toBeCloseTo(u(net(found)), 9);
    });
  });

  test("is empty and beyond doubt once everything is put back", () => {
    always(GARAGES, (lists) => {
      expect(net(read(undone(lists)))).toEqual({ value: 0, sources: {} });
    });
  });

  test("never counts a weighing that was replaced", () => {
    always(GARAGES, (lists) => {
      expect(plain(read(corrected(lists)))).toEqual(plain(read(lists)));
    });
  });

  test("keeps money to the cent", () => {
    always(fc.array(fc.integer({ min: 0, max: 10 ** 9 }), { maxLength: 20 }), (cents) => {
      const text = (all: number) => `${Math.floor(all / 100)}.${String(all % 100).padStart(2, "0")}`;
      const jobs = cents.map((all, at) => ({ id: `j${at}`, state: "fitted", money: text(all) }));
      const sum = cents.map((all) => ratio(BigInt(all), 100n)).reduce(add, ZERO);
      expect(read({ jobs }).now.effort.money).toEqual(sum);
    });
  });
});

describe("a mass", () => {
  test("lies among the readings it is the mean of", () => {
    always(GARAGES, (lists) => {
      for (const { mass, readings } of masses(readGarage(lists)).of.values()) {
        const values = readings.map((reading) => reading.value);
        if (!mass || values.length === 0) continue;
        expect(mass.value).toBeGreaterThanOrEqual(Math.min(...values) * (1 - 1e-12));
        expect(mass.value).toBeLessThanOrEqual(Math.max(...values) * (1 + 1e-12));
      }
    });
  });

  test("of a part weighed twice alike is that of the part weighed once", () => {
    always(fc.integer({ min: 1, max: 4000 }), (shown) => {
      const weighing = { of: "p", method: "direct", scale: "k", shown: `${shown} g` };
      const lists = { parts: [{ id: "p" }], scales: [{ id: "k", kind: "kitchen", division: "1 g" }] };
      const massOf = (ids: string[]) =>
        masses(readGarage({ ...lists, weighings: ids.map((id) => ({ id, ...weighing })) })).of.get("p")?.mass;
      expect(massOf(["w1", "w2", "w3"])).toEqual(massOf(["w1"]));
    });
  });
});
