/** What does not fit, told: between which weigh-ins, how much, and what it most likely is. */

import type { Fusion } from "../fusion/fusion";
import { besideOthers, sizeOf } from "../fusion/inquiry";
import { Candidates, lookOf } from "../fusion/misfit";
import { BEYOND_CHANCE } from "../fusion/naming";
import { at } from "../fusion/precision";
import type { Uncertain } from "../numbers/uncertain";
import type { Weighed } from "../wholeCar/weighed";
import { type Asked, type Cause, causesOf, causesOfAll } from "./search";

/**
 * Something named that does not fit: `size` kg more in the car than written down.
 *
 * `kind` "step": it went in or came out between the weigh-ins `first` and `second`; at least between `earliest` and
 * `latest` (95 %). "outlier": the weigh-in `first`, which is `second` too, is off by itself. "either": a step next to the
 * first or the last weigh-in, or that weigh-in is off; the weights cannot tell. `causes`: likeliest first; where
 * one slip explains all that is named, they are the same of each.
 */
export type Change = {
  readonly kind: "step" | "outlier" | "either";
  readonly first: string;
  readonly second: string;
  readonly earliest: string;
  readonly latest: string;
  readonly size: Uncertain;
  readonly causes: readonly Cause[];
};

/** What is named, in order of time. */
export function changesOf(asked: Asked, fusion: Fusion): Change[] {
  const count = fusion.values.length;
  const when = (name: number) => (name < count - 1 ? name : lookOf(count, name));
  const names = [...fusion.names].sort((a, b) => when(a) - when(b) || a - b);
  const together = names.length > 1 ? causesOfAll(asked, fusion, fusion.leading.told.beside) : null;
  return names.map((name) => changeOf(asked, fusion, name, together));
}

function changeOf(asked: Asked, fusion: Fusion, name: number, together: Cause[] | null): Change {
  const { counted } = fusion.evidence;
  const count = counted.length;
  const size = sizeOf(fusion, name);
  const causes = together ?? causesOf(asked, fusion, besideOthers(fusion, name));
  const idOf = (look: number) => (counted[look] as Weighed).record.id;
  if (name >= count - 1) {
    const here = idOf(lookOf(count, name));
    return { kind: "outlier", first: here, second: here, earliest: here, latest: here, size, causes };
  }
  const [low, high] = within(fusion, name);
  return {
    kind: name === 0 || name === count - 2 ? "either" : "step",
    first: idOf(name),
    second: idOf(name + 1),
    earliest: idOf(low),
    latest: idOf(high + 1),
    size,
    causes,
  };
}

/** The first and the last step that fit nearly as well as the named one. */
function within(fusion: Fusion, name: number): [number, number] {
  const { values, told } = fusion.leading;
  const { better } = new Candidates(besideOthers(fusion, name), values, told.least);
  const enough = at(better, name) - BEYOND_CHANCE;
  const near = [...better.keys()].slice(0, values.length - 1).filter((n) => at(better, n) >= enough);
  return [Math.min(...near), Math.max(...near)];
}
