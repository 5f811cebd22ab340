/** A history folded by the phone's fold, for a comparison with the server's: every record and every reason, at its end. */

import { fold } from "../../webapp/src/journal/fold";
import { emptyState, type Line } from "../../webapp/src/journal/layers";

export function plainly(lines: readonly Line[]) {
  const state = emptyState();
  fold(state, lines);
  const records = [...state.records].map(([name, { kind, heads, fields }]) => {
    const held = Object.entries(fields).map(([field, claims]) => [
      field,
      claims.map(({ entry, value }) => [entry, value]),
    ]);
    return [name, [kind, heads, Object.fromEntries(held)]];
  });
  const reasons = [...state.kept.values()].map(({ name, reason }) => [name, reason]);
  return { records: Object.fromEntries(records), reasons: Object.fromEntries(reasons) };
}
