/** Which looks at a scale were the last ones: by the time people stated, for reading only. */
import type { Rec } from "../../journal/types";
import { momentOf } from "../../parts/words/moments";

type Look = Pick<Rec<"weighing" | "weigh_in">, "id"> & { values: { at?: string } };

/** The newest first; those `replaced` by newer ones are left out. */
export function newestLooks<R extends Look>(facts: readonly R[], most: number, replaced: readonly string[]): R[] {
  const gone = new Set(replaced);
  const when = (fact: R) => Date.parse(momentOf(fact) ?? "") || 0;
  return facts
    .filter((fact) => !gone.has(fact.id))
    .map((fact) => ({ fact, when: when(fact) }))
    .sort((a, b) => b.when - a.when || (a.fact.id < b.fact.id ? 1 : -1))
    .slice(0, most)
    .map(({ fact }) => fact);
}
