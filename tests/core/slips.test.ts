/** Which readings are asked about, and with which slip: counted on builds without slips and on slips planted in them. */
import { describe, expect, test } from "vitest";
import { readGarage } from "../../webapp/src/core/garage/garage";
import type { Weighing } from "../../webapp/src/core/garage/records";
import { readMass } from "../../webapp/src/core/numbers/quantity";
import { misread } from "../../webapp/src/core/weighing/display";
import { knownOf, knownOfCar, type Lore, loreOf } from "../../webapp/src/core/weighing/known";
import { aboutScale, type Slipped, slipIn, slipInLoads, slipsIn } from "../../webapp/src/core/weighing/slips";
import { masses } from "../../webapp/src/core/weighing/weighing";
import { randomFrom } from "../random";
import { type Build, honestBuild, KG, type Look, type Unit } from "./honest_builds";

type World = Lore;
const worldOf = (lists: Record<string, unknown>): World => {
  const garage = readGarage(lists);
  return loreOf(garage, masses(garage));
};

/** The slip that is asked about, were `shown` read instead. */
function asked(world: World, id: string, shown?: string): Slipped | null {
  const kept = world.garage.weighings.get(id) as Weighing;
  const weighing = shown ? { ...kept, shown: readMass(shown) } : kept;
  return slipIn(weighing, ...aboutScale(world, weighing), knownOf(world, weighing));
}

describe("simulated builds", () => {
  const BUILDS = 30;
  const PARTS = 40;
  const random = randomFrom(20261129);
  const builds: [Build, World][] = Array.from({ length: BUILDS }, () => honestBuild(random, PARTS)).map((build) => [
    build,
    worldOf(build.lists),
  ]);
  const each = builds.flatMap(([build, world]) => build.looks.map((look) => [world, look] as const));
  const ways = [...new Set(each.map(([, { how }]) => how))].sort();

  test("at most one honest reading in thirty is asked about, of every kind of knowledge", () => {
    const told: string[] = [];
    let all = 0;
    for (const way of ways) {
      const looks = each.filter(([, { how }]) => how === way);
      const questioned = looks.filter(([world, { id }]) => asked(world, id) || isMisread(world, id)).length;
      all += questioned;
      told.push(`${way} ${questioned}/${looks.length}`);
      expect(questioned / looks.length, way).toBeLessThan(1 / 20);
    }
    console.log(
      `Honest readings asked about: ${all} of ${each.length} (1 in ${Math.round(each.length / all)}): ${told.join(", ")}`,
    );
    expect(all / each.length).toBeLessThan(1 / 30);
  });

  const PLANTED: [string, (look: Look) => string | null][] = [
    ["pounds for kilograms", ({ digits, unit }) => swapped(digits, unit, "lb", "kg")],
    ["kilograms for pounds", ({ digits, unit }) => swapped(digits, unit, "kg", "lb")],
    ["ounces for pounds", ({ digits, unit }) => swapped(digits, unit, "oz", "lb")],
    ["ounces for grams", ({ digits, unit }) => swapped(digits, unit, "oz", "g")],
    ["grams for ounces", ({ digits, unit }) => swapped(digits, unit, "g", "oz")],
    ["ten times", ({ digits, unit }) => `${(Number(digits) * 10).toFixed(3)} ${unit}`],
    ["a tenth", ({ digits, unit }) => `${(Number(digits) / 10).toFixed(4)} ${unit}`],
    ["a hundred times", ({ digits, unit }) => `${(Number(digits) * 100).toFixed(3)} ${unit}`],
  ];

  test("planted slips are asked about by what is known alone, and the reading offered is the true one", () => {
    for (const [name, slipped] of PLANTED) {
      const tried = each.filter(([, look]) => look.how !== "nothing" && slipped(look) !== null);
      const found = tried.map(([world, look]) => [asked(world, look.id, slipped(look) as string), look] as const);
      const caught = found.filter(([slip]) => slip !== null);
      const right = caught.filter(([slip, { kg }]) => Math.abs((slip?.mass as number) / kg - 1) < 0.05).length;
      const told = ways
        .filter((way) => way !== "nothing")
        .map((way) => {
          const of = found.filter(([, { how }]) => how === way);
          return `${way} ${Math.round((100 * of.filter(([slip]) => slip).length) / of.length)} %`;
        });
      console.log(
        `${name}: ${caught.length} of ${tried.length} asked about (${Math.round((100 * caught.length) / tried.length)} %), ` +
          `the true reading offered in ${right}: ${told.join(", ")}`,
      );
      expect(tried.length, name).toBeGreaterThan(100);
      expect(caught.length / tried.length, name).toBeGreaterThan(0.7);
      expect(right / caught.length, name).toBeGreaterThan(0.9);
    }
  });
});

const isMisread = (world: World, id: string): boolean => {
  const weighing = world.garage.weighings.get(id) as Weighing;
  return misread(weighing.shown, aboutScale(world, weighing)[1]) !== null;
};
/** What is typed when the display shows `shows` and the thumb says `typed`; null for other displays. */
const swapped = (digits: string, unit: Unit, shows: Unit, typed: Unit): string | null =>
  unit === shows && Number(digits) * KG[typed] < 20_000 ? `${digits} ${typed}` : null;

describe("one reading", () => {
  const lists = (weighings: object[], claim: object = {}) => ({
    scales: [{ id: "s", kind: "bench", unit: "kg", division: "0.1 kg" }],
    drivers: [{ id: "d", name: "Anna" }],
    parts: [
      { id: "old", name: "Seat", claim: "14 kg", claim_basis: "worked_out" },
      { id: "p", name: "Spare wheel", ...claim },
      { id: "twin", name: "Shell", instead_of: "old" },
      { id: "hook", name: "Tow hook" },
      { id: "strap", name: "Tow strap", instead_of: "hook" },
    ],
    weighings: weighings.map((weighing, n) => ({ id: `w${n}`, of: "p", method: "direct", ...weighing })),
  });
  const slip = (weighings: object[], claim: object = {}) => {
    const found = asked(worldOf(lists(weighings, claim)), `w${weighings.length - 1}`);
    return found && [found.slip, found.against.why, Number(found.mass.toFixed(2))];
  };
  const LB_AS_KG = { sort: "unit", from: "kg", to: "lb" };

  test("pounds read as kilograms, against a quote of the part", () => {
    const quoted = { claim: "6 kg", claim_basis: "quoted" };
    expect(slip([{ shown: "13.2 kg" }], quoted)).toEqual([LB_AS_KG, "itself", 5.99]);
    expect(slip([{ shown: "6.6 kg" }], quoted)).toBeNull();
    expect(slip([{ shown: "9 kg" }], quoted)).toBeNull(); // half as much again: odd, and no slip explains it
  });

  test("weak knowledge asks less: the same reading is left alone beside a guess half way between", () => {
    expect(slip([{ shown: "13.2 kg" }], { claim: "9 kg", claim_basis: "guessed" })).toBeNull();
    expect(slip([{ shown: "13.2 kg" }], { claim: "6 kg", claim_basis: "guessed" })?.[0]).toEqual(LB_AS_KG);
  });

  test("what nothing is known of is not asked about", () => {
    expect(slip([{ shown: "132 kg" }])).toBeNull();
  });

  test("a point left out, where the display could have shown the other reading", () => {
    const quoted = { claim: "6 kg", claim_basis: "quoted" };
    expect(slip([{ shown: "59 kg", scale: "s" }], quoted)).toEqual([{ sort: "point", places: -1 }, "itself", 5.9]);
    expect(slip([{ shown: "0.6 kg", scale: "s" }], quoted)).toEqual([{ sort: "point", places: 1 }, "itself", 6]);
    expect(slip([{ shown: "59.9 kg", scale: "s" }], quoted)).toBeNull(); // 5.99 kg is no step of 0.1 kg
  });

  test("both looks of a difference in the wrong unit, or one of them", () => {
    const quoted = { claim: "6 kg", claim_basis: "quoted" };
    const held = { method: "difference", shown: "181.6 kg", shown_empty: "168.4 kg" };
    expect(slip([held], quoted)).toEqual([LB_AS_KG, "itself", 5.99]);
    const mixed = { method: "difference", shown: "82.4 kg", shown_empty: "7.64 kg" };
    expect(slip([mixed], quoted)).toEqual([{ sort: "point", places: 1 }, "itself", 6]);
  });

  test("against the part it is to replace, which is most often heavier", () => {
    expect(slip([{ of: "twin", shown: "19 kg" }])).toEqual([LB_AS_KG, "twin", 8.62]);
    expect(slip([{ of: "twin", shown: "6 kg" }])).toBeNull();
  });

  test("what its scale cannot tell from nothing explains no reading", () => {
    const strap = { of: "strap", shown: "0.21 kg" };
    expect(slip([strap, { of: "hook", shown: "2.9 kg", scale: "s" }])).toBeNull(); // 2.9 g, on steps of 100 g
  });

  test("against what people weigh", () => {
    expect(slip([{ of: "d", shown: "182 kg" }])).toEqual([LB_AS_KG, "person", 82.55]);
    expect(slip([{ of: "d", shown: "118 kg" }])).toBeNull();
    expect(slip([{ of: "d", shown: "52 kg" }])).toBeNull();
  });

  test("stored readings are found by the same rule, one of each part, and never again once found right", () => {
    const { garage, masses: known } = worldOf(
      lists([{ shown: "13.2 kg" }, { shown: "6 kg" }], { claim: "6 kg", claim_basis: "quoted" }),
    );
    const found = (...right: string[]) => slipsIn(garage, known, new Set(right)).map(({ weighing }) => weighing.id);
    expect(found()).toEqual(["w0"]);
    expect(found("w0")).toEqual([]);
  });

  test("against an earlier reading of it, and a claim that backs one of the two", () => {
    expect(slip([{ shown: "6 kg" }, { shown: "13.2 kg" }])).toEqual([LB_AS_KG, "itself", 5.99]);
    expect(slip([{ shown: "13.2 kg" }, { shown: "6 kg" }], { claim: "6 kg", claim_basis: "quoted" })).toBeNull();
  });
});

describe("the looks of a whole car", () => {
  const ANY = { unit: null, division: null, capacity: null };
  const loads = (shown: string[], weight: number | null, minimum: number | null = null) => {
    const found = slipInLoads(
      shown.map((each) => readMass(each)),
      ANY,
      knownOfCar(weight, minimum),
    );
    return found && [found.slip, ...found.looks.map(({ reads }) => reads)];
  };

  test("all of them pounds read as kilograms, against what it weighs or its class's minimum", () => {
    const slip = { sort: "unit", from: "kg", to: "lb" };
    expect(loads(["2090 kg"], 950)).toEqual([slip, "2090 lb"]);
    expect(loads(["1030 kg", "1060 kg"], null, 920)).toEqual([slip, "1030 lb", "1060 lb"]);
    expect(loads(["1030 kg"], null, 920)).toBeNull();
  });

  test("one corner with its point forgotten", () => {
    expect(loads(["230.5 kg", "2315 kg", "241 kg", "238.5 kg"], 940)).toEqual([
      { sort: "point", places: -1 },
      ...["230.5 kg", "231.5 kg", "241 kg", "238.5 kg"],
    ]);
  });

  test("a car that lost or gained as much as a driver is not asked about", () => {
    expect(loads(["860 kg"], 950)).toBeNull();
    expect(loads(["1040 kg"], 950)).toBeNull();
  });
});
