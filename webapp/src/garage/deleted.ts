/**
 * Deleted records that the core reads all the same: by withdrawn corrections it knows what took the place of what, and what
 * was weighed on a scale or with a driver stays weighed.
 */

import { computed } from "@preact/signals";
import { OUTLIVES_DELETION } from "../core/garage/garage";
import type { KindName } from "../journal/kinds";
import type { Rec } from "../journal/types";
import { garage } from "./garage";

const all = computed(() =>
  [...garage.value.byId.values()].filter(
    ({ deleted, values, kind }) => deleted && (values.replaces || OUTLIVES_DELETION.has(kind)),
  ),
);

export function readThoughDeleted(kind: KindName): readonly Rec[] {
  return all.value.filter((rec) => rec.kind === kind);
}
