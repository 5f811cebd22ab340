/** Which cautions a job's words and parts propose, against lists of names with the cautions wanted. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { hazardsOf } from "../../webapp/src/screens/Job/hazards";

type Names = Record<string, string[]>;
const { ours, fresh, apart, other, may } = JSON.parse(
  readFileSync(new URL("./caution_names.json", import.meta.url), "utf8"),
) as Record<"ours" | "fresh" | "apart" | "other" | "may", Names>;
const DANGEROUS = [
  "airbags and tensioners",
  "lifting",
  "fuel",
  "battery",
  "cutting structure",
  "refrigerant",
  "seats and belts",
];

test.each([
  ["ours", ours, 120, 6],
  ["fresh", fresh, 60, 3],
  ["apart", apart, 60, 5], // whose hand allowed for no second opinion: too much in five, too little in none
  ["other", other, 60, 3],
] as const)(
  "of the names %s, almost all get the cautions wanted, and none misses a dangerous one",
  (_, names, many, most) => {
    const all = Object.entries(names).map(([name, wanted]) => ({ name, wanted, got: hazardsOf(name) as string[] }));
    const isRight = ({ name, wanted, got }: (typeof all)[number]) =>
      wanted.every((each) => got.includes(each)) &&
      got.every((each) => wanted.includes(each) || may[name]?.includes(each));
    const wrong = all.filter((each) => !isRight(each));
    const missed = all.flatMap(({ name, wanted, got }) =>
      wanted.filter((each) => DANGEROUS.includes(each) && !got.includes(each)).map((each) => `${name}: ${each}`),
    );
    expect(all).toHaveLength(many);
    expect(missed).toEqual([]);
    expect(wrong.length, JSON.stringify(wrong, null, 1)).toBeLessThanOrEqual(most);
  },
);

test("a part of the job brings its own caution, by its name and by its place", () => {
  expect(hazardsOf("Weight off, first evening")).toEqual([]);
  expect(hazardsOf("Weight off, first evening", [{ name: "Passenger airbag" }])).toEqual(["airbags and tensioners"]);
  expect(hazardsOf("Weight off, first evening", [{ name: "Plastic tray", zone: "underneath rear" }])).toEqual([
    "lifting",
  ]);
});

test("a harmless name of one part does not switch off the caution of another", () => {
  expect(hazardsOf("Tools out", [{ name: "Battery charger" }, { name: "Battery" }])).toEqual(["battery"]);
});
