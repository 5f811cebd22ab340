/**
 * Random histories of three phones over the journal alone: the same fields edited out of each other's sight, acts taken
 * back, settlements opened again, records deleted, brought back and weighed meanwhile, the home computer restored.
 */

import { Board, type Row } from "../../webapp/src/journal/board";
import { type Act, actsOn, deleting, takenBack } from "../../webapp/src/journal/history";
import type { Rec, Value } from "../../webapp/src/journal/types";
import { randomFrom } from "../random";

type Told = { lines: { number: number; text: string; aside: null }[]; moves: Record<string, number>; shown: object[] };
type Move = (phone: Phone) => string | null;

class Phone {
  board = new Board();
  held = new Map<string, string>();
  pulled = 0;
  /** Heads as some form showed them when it was opened. */
  focus = new Map<string, string[]>();
  n = 0;

  constructor(readonly name: string) {}

  get garage() {
    return this.board.garage();
  }

  write(kind: string, record: string, set: Record<string, Value>, base: string[]): void {
    const id = `${this.name}-${String(++this.n).padStart(4, "0")}`;
    const entry = {
      id,
      device: this.name,
      writer: this.name,
      n: this.n,
      kind,
      record,
      set,
      base,
      photos: [],
      made_at: "",
    };
    this.held.set(id, JSON.stringify(entry));
    this.board.take([this.row(id, null)]);
  }

  row(key: string, number: number | null): Row {
    const order = number ?? Number(key.split("-")[1]);
    return { key, text: this.held.get(key)!, number, aside: null, order };
  }
}

class World {
  readonly phones = ["a", "b", "c"].map((name) => new Phone(name));
  readonly moves: Record<string, number> = {};
  private lines: string[] = [];
  private backup = 0;
  private made = 0;
  private readonly all: [weight: number, name: string, move: Move][] = [
    [2, "new", (phone) => this.begin(phone)],
    [8, "edit", (phone) => this.edit(phone)],
    [2, "focus", (phone) => this.look(phone)],
    [5, "undo", (phone) => this.undo(phone, (act) => !act.begins)],
    [1, "undo a beginning", (phone) => this.undo(phone, (act) => act.begins)],
    [2, "weigh", (phone) => this.weigh(phone)],
    [2, "delete", (phone) => this.remove(phone)],
    [2, "bring back", (phone) => this.undo(phone, (act) => act.entry.set.deleted === true)],
    [3, "settle", (phone) => this.settle(phone)],
    [8, "sync", (phone) => this.sync(phone)],
    [0.5, "back up", () => this.keep()],
    [0.5, "restore", () => this.restore()],
  ];

  constructor(private readonly random: () => number) {}

  step(): void {
    let roll = this.random() * this.all.reduce((sum, [weight]) => sum + weight, 0);
    const drawn = ([weight]: readonly [number, ...unknown[]]): boolean => {
      roll -= weight;
      return roll < 0;
    };
    const [, name, move] = this.all.find(drawn) ?? this.all[0]!;
    const done = move(this.pick(this.phones)!);
    if (done !== null) this.moves[name] = (this.moves[name] ?? 0) + 1;
  }

  quiet(): Told {
    for (let round = 0; round < 2; round++) for (const phone of this.phones) this.sync(phone);
    const lines = this.lines.map((text, at) => ({ number: at + 1, text, aside: null }));
    return { lines, moves: this.moves, shown: this.phones.map(({ garage }) => shownOf([...garage.byId.values()])) };
  }

  private pick<T>(items: readonly T[]): T | undefined {
    return items[Math.floor(this.random() * items.length)];
  }

  private rec({ garage }: Phone): Rec | undefined {
    return this.pick([...garage.of("part"), ...garage.of("job")] as readonly Rec[]);
  }

  private begin(phone: Phone): string {
    const kind = this.random() < 0.5 ? "part" : "job";
    phone.write(kind, `${kind}-${++this.made}`, { name: `N${this.made}` }, []);
    return "new";
  }

  private look(phone: Phone): string | null {
    const rec = this.rec(phone);
    if (rec) phone.focus.set(rec.id, rec.heads);
    return rec?.id ?? null;
  }

  private edit(phone: Phone): string | null {
    const rec = this.rec(phone);
    if (!rec) return null;
    const value = String(Math.floor(this.random() * 4));
    const set: Record<string, Value> = this.random() < 0.7 ? { note: value } : { note: value, name: `N${value}` };
    phone.write(rec.kind, rec.id, set, phone.focus.get(rec.id) ?? rec.heads);
    phone.focus.delete(rec.id);
    return rec.id;
  }

  private weigh(phone: Phone): string | null {
    const part = this.pick(phone.garage.of("part"));
    if (!part) return null;
    const shown = `${1 + Math.floor(this.random() * 9)} kg`;
    phone.write("weighing", `weighing-${++this.made}`, { of: part.id, method: "direct", shown }, []);
    return part.id;
  }

  private remove(phone: Phone): string | null {
    const rec = this.rec(phone);
    if (!rec) return null;
    phone.write(rec.kind, rec.id, deleting(rec.kind, phone.garage.hung(rec.id)), rec.heads);
    return rec.id;
  }

  private undo(phone: Phone, wanted: (act: Act) => boolean): string | null {
    const rec = this.pick([...phone.garage.byId.values()]);
    const acts = rec ? actsOn(phone.garage.folded(), rec.id).filter((act) => act.stands.length > 0 && wanted(act)) : [];
    const act = this.pick(acts);
    if (!act) return null;
    const changes = takenBack(act, phone.garage.hung(act.entry.record));
    for (const { kind, record, set, base } of changes) phone.write(kind, record, set, base);
    return act.entry.id;
  }

  private settle(phone: Phone): string | null {
    const rec = this.pick([...phone.garage.byId.values()].filter(({ conflicts }) => Object.keys(conflicts).length > 0));
    const [field, heads] = this.pick(Object.entries(rec?.conflicts ?? {})) ?? [];
    if (!rec || !field) return null;
    const { value } = this.pick(heads!)!;
    const gone = field === "deleted" && value === true;
    const set = gone ? deleting(rec.kind, phone.garage.hung(rec.id)) : { [field]: value };
    phone.write(rec.kind, rec.id, set, rec.heads);
    return rec.id;
  }

  private sync(phone: Phone): string {
    const there = new Set(this.lines);
    this.lines.push(...[...phone.held.values()].filter((text) => !there.has(text)));
    const fresh = this.lines.slice(phone.pulled).map((text, at) => {
      const { id } = JSON.parse(text) as { id: string };
      phone.held.set(id, text);
      return phone.row(id, phone.pulled + at + 1);
    });
    phone.pulled = this.lines.length;
    phone.board.take(fresh);
    return "sync";
  }

  private keep(): string {
    this.backup = this.lines.length;
    return "backup";
  }

  /** The journal is that of the backup again: every phone lays all it holds over it, and sends what is not there. */
  private restore(): string | null {
    if (this.backup === this.lines.length) return null;
    this.lines = this.lines.slice(0, this.backup);
    for (const phone of this.phones) {
      phone.board = new Board();
      phone.pulled = 0;
      phone.board.take([...phone.held.keys()].map((key) => phone.row(key, null)));
    }
    return "restore";
  }
}

function shownOf(records: readonly Rec[]): object {
  const told = records.map(({ id, kind, values, heads, conflicts, deleted }) => {
    const sides = Object.entries(conflicts).map(([field, claims]) => [field, claims.map(({ value }) => value)]);
    return [id, { kind, values, heads, conflicts: Object.fromEntries(sides), deleted }];
  });
  return Object.fromEntries(told);
}

export function twoPeople({ seed, steps }: { seed: number; steps: number }): Told {
  const world = new World(randomFrom(seed));
  for (let step = 0; step < steps; step++) world.step();
  return world.quiet();
}
