/** Corrections that were withdrawn: they count no more, yet by them it is known what took the place of what. */

import { computed } from "@preact/signals";
import type { KindName } from "../journal/kinds";
import type { Rec } from "../journal/types";
import { garage } from "./garage";

const all = computed(() => [...garage.value.byId.values()].filter((rec) => rec.deleted && rec.values.replaces));

export function withdrawn(kind: KindName): readonly Rec[] {
  return all.value.filter((rec) => rec.kind === kind);
}
