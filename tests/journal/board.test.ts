/** The garage in memory: what screens may rely on from one moment to the next. */

import { describe, expect, it } from "vitest";

import { Board, type Row } from "../../webapp/src/journal/board";

function row(order: number, record: string, set: object, more: Partial<Row> = {}): Row {
  const entry = {
    id: `e${order}`,
    device: "d",
    writer: "w",
    n: order,
    kind: "job",
    record,
    set,
    base: [] as string[],
    photos: [],
  };
  return {
    key: entry.id,
    text: JSON.stringify({ ...entry, base: order > 9 ? ["e1"] : [] }),
    number: null,
    aside: null,
    order,
    ...more,
  };
}

describe("the board", () => {
  it("lists a kind in the order of ids, without what was deleted; by id deleted ones are still found", () => {
    const board = new Board();
    board.take([row(2, "b", { name: "B" }), row(1, "a", { name: "A" }), row(3, "c", { name: "C", deleted: true })]);
    const garage = board.garage();
    expect(garage.of("job").map((rec) => rec.id)).toEqual(["a", "b"]);
    expect(garage.byId.get("c")).toMatchObject({ deleted: true, values: { name: "C" } });
    expect(garage.of("part")).toEqual([]);
  });

  it("keeps the same objects for what did not change, and leaves an older garage as it was", () => {
    const board = new Board();
    board.take([row(1, "a", { name: "A" }, { number: 1 }), row(2, "b", { name: "B" }, { number: 2 })]);
    const before = board.garage();
    const listed = before.of("job");
    board.take([row(10, "a", { name: "A again" })]);
    const after = board.garage();
    expect(after.byId.get("b")).toBe(before.byId.get("b"));
    expect(after.byId.get("a") === before.byId.get("a")).toBe(false);
    expect(before.byId.get("a")!.values.name).toBe("A");
    expect(before.of("job")).toBe(listed);
    expect(after.of("part")).toBe(after.of("part"));
  });

  it("marks as pending what this phone wrote, until it has come back", () => {
    const board = new Board();
    board.take([row(1, "a", { name: "A" })]);
    expect(board.garage().byId.get("a")!.pending).toBe(true);
    expect(board.waiting).toBe(1);
    board.take([row(1, "a", { name: "A" }, { number: 1 })]);
    expect(board.garage().byId.get("a")!.pending).toBe(false);
    expect(board.waiting).toBe(0);
  });

  it("drops a record whose only entry was set aside over there", () => {
    const board = new Board();
    board.take([row(1, "a", { name: "A" })]);
    board.take([row(1, "a", { name: "A" }, { number: 1, aside: "stranger" })]);
    expect(board.garage().byId.size).toBe(0);
    expect(board.garage().aside).toMatchObject([{ id: "e1", reason: "stranger", number: 1 }]);
  });

  it("takes the same rows twice without harm, and says that they bring nothing new", () => {
    const board = new Board();
    const rows = [row(1, "a", { name: "A" }, { number: 1 }), row(2, "b", { name: "B" })];
    expect(board.take(rows)).toBe(true);
    expect(board.take(rows)).toBe(false);
    expect(board.garage().of("job")).toHaveLength(2);
    expect(board.garage().aside).toEqual([]);
  });

  it("shows both values of a conflict, the standing one among the values", () => {
    const board = new Board();
    board.take([row(1, "a", { name: "A" }, { number: 1 })]);
    board.take([row(10, "a", { hours: "1" }, { number: 2 }), row(11, "a", { hours: "2" })]);
    const rec = board.garage().byId.get("a")!;
    expect(rec.values.hours).toBe("1");
    expect(rec.conflicts.hours!.map(({ entry, value }) => [entry, value])).toEqual([
      ["e10", "1"],
      ["e11", "2"],
    ]);
  });
});
