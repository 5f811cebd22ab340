/** The phone's fold against the journals both languages run (`fixtures/journals/`). */

import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

import { Board, type Row, recFrom } from "../../webapp/src/journal/board";
import { fold } from "../../webapp/src/journal/fold";
import { emptyState, type FoldState, type Line, setAside } from "../../webapp/src/journal/layers";
import type { Head } from "../../webapp/src/journal/types";
import { forget } from "./older";

type Shown = { kind: string; values: object; conflicts: object; heads: readonly string[]; deleted: boolean };
type Outcome = { records: Record<string, Shown>; aside: Record<string, string> };
type Journal = {
  about: string;
  entries: { number: number; text: string; aside?: string; id?: string }[];
  expect: Outcome;
  /** By the id of a deleted record: what hangs on it and brings it back, for all who look at the whole garage. */
  brought_back?: Record<string, string[]>;
  /** What an app shows that does not know some fields, by kind. */
  older?: { without: Record<string, string[]>; expect: Outcome };
};

const FOLDER = new URL("../../fixtures/journals/", import.meta.url);
const JOURNALS = readdirSync(FOLDER).filter((name) => name.endsWith(".json"));

function journal(name: string): Journal {
  return JSON.parse(readFileSync(new URL(name, FOLDER), "utf8")) as Journal;
}

function lines({ entries }: Journal): Line[] {
  return entries.map(({ number, text, aside }) => ({ number, text, aside: aside ?? null }));
}

function distinct(claims: readonly Head[]): unknown[] {
  return claims.map((claim) => claim.value);
}

function shown(kind: string, rec: ReturnType<typeof recFrom>): Shown {
  const conflicts = Object.fromEntries(Object.entries(rec.conflicts).map(([field, heads]) => [field, distinct(heads)]));
  return { kind, values: rec.values, conflicts, heads: rec.heads, deleted: rec.deleted };
}

/** The records of a whole garage. */
function whole({ expect, brought_back = {} }: Journal): Record<string, Shown> {
  const back = Object.entries(brought_back).map(([id, names]) => {
    const rec = expect.records[id]!;
    return [
      id,
      { ...rec, deleted: false, conflicts: { ...rec.conflicts, deleted: [true, ...names.map(() => false)] } },
    ];
  });
  return { ...expect.records, ...Object.fromEntries(back) };
}

function outcome(state: FoldState): Journal["expect"] {
  const records = [...state.records].map(([id, record]) => [id, shown(record.kind, recFrom(id, record, false))]);
  const aside = setAside(state).map((kept) => [kept.name, kept.reason]);
  return { records: Object.fromEntries(records), aside: Object.fromEntries(aside) } as Journal["expect"];
}

function rowsOf(found: Journal, pulled: number): Row[] {
  return lines(found).map((line, order) => ({
    key: found.entries[order]!.id ?? (JSON.parse(line.text) as { id: string }).id,
    text: line.text,
    aside: line.aside,
    number: order < pulled ? line.number : null,
    order,
  }));
}

describe("every journal of fixtures/journals", () => {
  it("is there to be folded", () => expect(JOURNALS.length).toBeGreaterThanOrEqual(10));

  it.each(JOURNALS)("folds %s as expected", (name) => {
    const found = journal(name);
    const state = emptyState();
    fold(state, lines(found));
    expect(outcome(state)).toEqual(found.expect);
  });

  it("folds what an app knows and keeps what it does not", () => {
    const { older, ...found } = journal("unknown_field.json");
    const know = forget(older!.without);
    const state = emptyState();
    fold(state, lines(found));
    know();
    expect(outcome(state)).toEqual(older!.expect);
  });

  it.each(JOURNALS)("shows %s alike when its end is still pending on this phone", (name) => {
    const found = journal(name);
    for (let pulled = 0; pulled <= found.entries.length; pulled++) {
      const board = new Board();
      const rows = rowsOf(found, pulled);
      for (const row of rows) board.take([row]);
      const { byId, aside } = board.garage();
      const records = Object.fromEntries([...byId].map(([id, rec]) => [id, shown(rec.kind, rec)]));
      expect(records).toEqual(whole(found));
      expect(Object.fromEntries(aside.map((entry) => [entry.id, entry.reason]))).toEqual(found.expect.aside);
      expect(board.waiting).toBe(found.entries.length - pulled);
    }
  });

  it.each(JOURNALS)("shows %s alike after a rewind laid all of it over nothing and it was pulled again", (name) => {
    const found = journal(name);
    const board = new Board();
    board.take(rowsOf(found, 0));
    board.take(rowsOf(found, found.entries.length));
    const records = Object.fromEntries([...board.garage().byId].map(([id, rec]) => [id, shown(rec.kind, rec)]));
    expect(records).toEqual(whole(found));
    expect(board.waiting).toBe(0);
  });
});
