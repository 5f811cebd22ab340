/** The form of a sheet: what it comes to, what it lacks, the records it becomes, and that a change writes only itself. */
import { describe, expect, test } from "vitest";
import { claimOf } from "../../webapp/src/core/sheet/sheetClaim";
import type { Rec, Value } from "../../webapp/src/journal/types";
import { cautionsFor } from "../../webapp/src/screens/Sheet/cautions";
import { changesOf } from "../../webapp/src/screens/Sheet/changes";
import { type Cut, emptyCut, emptyForm, formOf, type SheetForm, seenOf } from "../../webapp/src/screens/Sheet/form";
import { drawable, isBlank, missing, workedOut } from "../../webapp/src/screens/Sheet/worked";

const L = [
  ["0 mm", "0 mm"],
  ["300 mm", "0 mm"],
  ["300 mm", "100 mm"],
  ["100 mm", "100 mm"],
  ["100 mm", "250 mm"],
  ["0 mm", "250 mm"],
] as Cut["corners"];
const AROUND = { car: "c-1", lengthUnit: "mm" };

const outline = (patch: Partial<Cut>): Cut => ({
  ...emptyCut("s-1", "rectangle"),
  width: "300",
  height: "200 mm",
  ...patch,
});
const form = (patch: Partial<SheetForm> = {}): SheetForm => ({
  ...emptyForm({ sheet: "s-1", part: "p-new" }, { id: null, text: "Tray" }),
  thickness: "2 mm",
  outline: outline({}),
  ...patch,
});
const hole = (patch: Partial<Cut>): Cut => ({ ...emptyCut("h-1", "circle"), ...patch });

function claim(of: SheetForm, mass = "kg", length = "mm") {
  const { piece, found } = workedOut(of, length);
  return claimOf(piece!, found!, mass, length);
}

const rec = (id: string, kind: string, values: Record<string, Value>): Rec => ({
  id,
  kind,
  values,
  heads: [`e-${id}`],
  conflicts: {},
  pending: false,
  deleted: false,
});

type Saved = [Rec<"part">, Rec<"sheet">, ...Rec<"sheet_hole">[]];

/** The records as they stand once a new form has been saved. */
function saved(of: SheetForm): Rec[] {
  return changesOf(of, claim(of), AROUND).map(({ record, kind, set }) => {
    return rec(record!, kind, Object.fromEntries(Object.entries(set).filter(([, value]) => value !== null)));
  });
}

describe("what it comes to", () => {
  test("an L with a hole is its area times thickness times density, bare lengths in the garage's unit", () => {
    const drawn = form({ outline: outline({ form: "polygon", corners: L }), holes: [hole({ diameter: "50" })] });
    const { found, trouble } = workedOut(drawn, "mm");
    expect(trouble).toBeNull();
    // By hand: 300 × 100 + 100 × 150 mm² less π/4 × 50²; aluminium 2735 kg/m³ in the middle of its range.
    const area = 0.045 - (Math.PI / 4) * 0.05 ** 2;
    expect(found!.area.value).toBeCloseTo(area, 12);
    expect(found!.mass.value).toBeCloseTo(area * 0.002 * 2735, 12);
  });

  test("in inches too, where a gauge table lists more than steel weighs", () => {
    const steel = form({ material: "steel", how: "gauge", outline: outline({ width: "12", height: "24 in" }) });
    const { found } = workedOut(steel, "in");
    expect(found!.area.value).toBeCloseTo(2 * 0.3048 ** 2, 12);
    expect(found!.listed! / found!.mass.value).toBeCloseTo(1.024, 3);
  });
});

describe("what it lacks", () => {
  const said = (patch: Partial<SheetForm>) => missing(form(patch), "mm");

  test("nothing, or a name", () => {
    expect(said({})).toBeNull();
    expect(said({ of: { id: null, text: " " } })).toBe("Say which part it is.");
    expect(said({ of: { id: "p-1", text: "Tray" } })).toBeNull();
  });

  test("a thickness that is missing, zero, without a unit or as thick as a hand", () => {
    expect(said({ thickness: "" })).toContain("thickness is missing");
    expect(said({ thickness: "0 mm" })).toContain("cannot be zero");
    expect(said({ thickness: "2" })).toContain("2 mm or");
    expect(said({ thickness: "150 mm" })).toContain("150 mm");
  });

  test("sizes that are missing, huge or in a foreign hand", () => {
    expect(said({ outline: outline({ width: "" }) })).toContain("The width is missing.");
    expect(said({ outline: outline({ width: "30 m" }) })).toContain("30 m");
    expect(said({ outline: outline({ width: "30,5" }) })).toContain("30.5");
    expect(said({ holes: [hole({})] })).toContain("Hole 1: The diameter is missing.");
  });

  test("an outline that crosses itself, said by its sides, and a hole that lies outside", () => {
    const tie = L.toSpliced(1, 2, L[2]!, L[1]!);
    expect(said({ outline: outline({ form: "polygon", corners: tie }) })).toContain(
      "Side 1 of an outline crosses or touches side 3.",
    );
    const beside = hole({
      form: "polygon",
      corners: [
        ["310 mm", "10 mm"],
        ["320 mm", "10 mm"],
        ["310 mm", "20 mm"],
      ],
    });
    expect(said({ holes: [beside] })).toContain("Hole 1 does not lie wholly inside");
    expect(said({ holes: [hole({ diameter: "200 mm" })] })).toContain("Hole 1 does not lie wholly inside");
  });

  test("a corner half typed, and more of them than a record can hold", () => {
    expect(said({ outline: outline({ form: "polygon", corners: [...L, ["20 mm", ""]] }) })).toContain(
      "Corner 7 cannot be read",
    );
    const many = Array.from({ length: 190 }, (_, at): [string, string] => [
      `${at + 0.123456} mm`,
      `${at * at + 0.123456} mm`,
    ]);
    expect(said({ outline: outline({ form: "polygon", corners: many }) })).toContain("more room than a record has");
  });

  test("nothing is a trouble before anything is typed", () => {
    expect(isBlank(emptyForm({ sheet: "s", part: "p" }, { id: null, text: "" }))).toBe(true);
    expect(isBlank(form())).toBe(false);
  });
});

describe("the records it becomes", () => {
  test("a new part with what it is worked out at, its sheet and its holes, and a job's part where it came from one", () => {
    const made = form({ holes: [hole({ diameter: "25", count: 12 })], within: "1" });
    const changes = changesOf(made, claim(made), { ...AROUND, job: "j-1", way: "off" });
    expect(changes.map(({ kind }) => kind)).toEqual(["part", "sheet", "sheet_hole", "job_part"]);
    const [part, sheet, round, moved] = changes;
    expect(part).toMatchObject({
      record: "p-new",
      base: [],
      set: { name: "Tray", car: "c-1", claim_basis: "worked_out", claim_from: "2 mm aluminium, 541.1 cm²" },
    });
    expect(sheet).toMatchObject({
      record: "s-1",
      base: [],
      set: {
        part: "p-new",
        material: "aluminium",
        form: "rectangle",
        width: "300 mm",
        height: "200 mm",
        thickness: "2 mm",
        measured: false,
        within: "1 mm",
      },
    });
    expect(round).toMatchObject({ record: "h-1", set: { sheet: "s-1", form: "circle", diameter: "25 mm", count: 12 } });
    expect(moved!.set).toEqual({ job: "j-1", part: "p-new", way: "off" });
  });

  test("a part that is there keeps its name and gets the weight", () => {
    const of = form({ of: { id: "p-1", text: "Tray" } });
    expect(Object.keys(changesOf(of, claim(of), AROUND)[0]!.set).sort()).toEqual([
      "claim",
      "claim_basis",
      "claim_from",
      "claim_within",
    ]);
  });

  test("opened again it is the same form, and saved again nothing is written", () => {
    const drawn = form({
      outline: outline({ form: "polygon", corners: L, width: "", height: "" }),
      holes: [hole({ diameter: "50 mm", count: 2 })],
    });
    const [part, sheet, ...holes] = saved(drawn) as Saved;
    const start = { ...emptyForm({ sheet: "s-2", part: "p-2" }, { id: "p-new", text: "Tray" }), seen: seenOf([part]) };
    const again = formOf(start, sheet, holes);
    expect(again).toMatchObject({
      sheet: "s-1",
      thickness: "2 mm",
      how: "sold",
      outline: { form: "polygon", corners: L },
      holes: [{ diameter: "50 mm", count: 2 }],
    });
    expect(changesOf(again, claim(again), AROUND)).toEqual([]);
  });

  test("a change is written alone, as a change to what was seen; a hole left out is closed, and the weight follows", () => {
    const [part, sheet, ...holes] = saved(form({ holes: [hole({ diameter: "50 mm" })] })) as Saved;
    const opened = formOf(
      { ...emptyForm({ sheet: "s-2", part: "p-2" }, { id: "p-new", text: "Tray" }), seen: seenOf([part]) },
      sheet,
      holes,
    );
    const changed = { ...opened, thickness: "3 mm", holes: [], closed: ["h-1"] };
    const changes = changesOf(changed, claim(changed), AROUND);
    expect(changes.slice(1)).toEqual([
      { kind: "sheet", record: "s-1", base: ["e-s-1"], set: { thickness: "3 mm" } },
      { kind: "sheet_hole", record: "h-1", base: ["e-h-1"], set: { deleted: true } },
    ]);
    expect(changes[0]).toMatchObject({
      kind: "part",
      base: ["e-p-new"],
      set: { claim_from: "3 mm aluminium, 600.0 cm²" },
    });
  });

  test("a material of one's own keeps its name and density", () => {
    const own = form({ material: "", own: "cork", density_low: "240", density_high: "260" });
    const [, sheet] = changesOf(own, claim(own), AROUND);
    expect(sheet!.set).toMatchObject({ material: "cork", density_low: "240", density_high: "260" });
    expect(formOf(own, rec("s-1", "sheet", sheet!.set) as Rec<"sheet">, [])).toMatchObject({
      material: "",
      own: "cork",
    });
  });
});

test("a piece is drawn while a hole of it is still being typed, and not before it has an outline", () => {
  expect(drawable(form({ holes: [hole({}), hole({ diameter: "20" })] }), "mm")!.holes).toHaveLength(1);
  expect(drawable(form({ outline: outline({ form: "polygon", corners: L.slice(0, 2) }) }), "mm")).toBeNull();
  expect(drawable(form({ thickness: "" }), "mm")?.outline.form).toBe("rectangle");
});

test("every material is cut with care for eyes and hands, fibre and wood with care for lungs as well", () => {
  expect(cautionsFor("steel").join(" ")).toMatch(/eye, ear and hand.*deburr/s);
  for (const material of ["carbon_laminate", "glass_laminate", "birch_plywood"])
    expect(cautionsFor(material).join(" ")).toContain("dust");
  expect(cautionsFor("lead").join(" ")).toContain("poison");
  expect(cautionsFor("").join(" ")).toContain("not known here");
});
