/**
 * What hangs on what: a weighing on its part, a loose end on its job. What is deleted takes along what hangs on it.
 *
 * Its deletion names in `hung` all that hung on it as far as its writer knew. Something else that stands and hangs on it
 * was made by somebody who had not seen the deletion, and a deletion never beats work it has not seen: the record counts
 * as standing, an open conflict, until a person decides. The server's twin is `tarebook/journal/hanging.py`.
 */

import { KINDS } from "./kinds";
import type { RecordState } from "./layers";

/** The fields of each kind by which its records hang on others. */
const LEADS_UP: Readonly<Record<string, readonly string[]>> = Object.fromEntries(
  Object.entries(KINDS).map(([kind, { fields }]) => {
    const up = Object.entries(fields).filter(([, { type, required, hangs }]) => type === "ref" && (required || hangs));
    return [kind, up.map(([name]) => name)];
  }),
);

/** What a record hangs on. */
export function above({ kind, fields }: RecordState): string[] {
  const names = (LEADS_UP[kind] ?? []).map((name) => fields[name]?.[0]?.value ?? null);
  return names.filter((name) => name !== null) as string[];
}

/** Whether all who deleted a record, or wrote on it, hold it deleted. */
export function isDeleted({ fields }: RecordState): boolean {
  const claims = fields.deleted ?? [];
  return claims.length > 0 && claims.every((claim) => claim.value === true);
}

/** Which records hang on which, of all that were ever told; it reads the records themselves where it is asked. */
export class Hanging {
  private readonly below = new Map<string, Set<string>>();

  constructor(private readonly recordOf: (id: string) => RecordState | undefined) {}

  add(id: string, record: RecordState): void {
    for (const name of above(record)) this.below.set(name, (this.below.get(name) ?? new Set()).add(id));
  }

  /** What hangs on a record and stands. */
  on(id: string): string[] {
    return [...(this.below.get(id) ?? [])].filter((name) => this.isOn(id, name) && !this.isGone(name)).sort();
  }

  /** What hangs on a deleted record, stands, and was not known to any who deleted it. */
  unseen(id: string, record: RecordState): string[] {
    const said = (record.fields.hung ?? []).map((claim) => claim.value).filter((value) => value !== null);
    if (said.length === 0 || !isDeleted(record)) return [];
    const hung = new Set((said as string[][]).flat());
    return this.on(id).filter((name) => !hung.has(name));
  }

  private isOn(id: string, name: string): boolean {
    const record = this.recordOf(name);
    return record !== undefined && above(record).includes(id);
  }

  private isGone(name: string): boolean {
    const record = this.recordOf(name);
    return record === undefined || (isDeleted(record) && this.unseen(name, record).length === 0);
  }
}
