/** What a doubt is made of, gathered by what its sources are called. */
import { type Uncertain, u, uncertain } from "./uncertain";

const NO_DIGIT = 1e-4; // of the widest doubt: a smaller one changes no digit anybody sees

/** The item's doubt by what its sources are called, the widest first, without those that change no digit. */
export function doubtsBy(
  { sources }: Uncertain,
  called: (source: string) => string,
): { name: string; u: number; first: string }[] {
  const groups = new Map<string, string[]>();
  for (const source of Object.keys(sources))
    groups.set(called(source), [...(groups.get(called(source)) ?? []), source]);
  const doubts = [...groups].map(([name, some]) => {
    return {
      name,
      u: u(uncertain(0, Object.fromEntries(some.map((each) => [each, sources[each]!])))),
      first: some[0]!,
    };
  });
  const least = NO_DIGIT * Math.max(0, ...doubts.map((doubt) => doubt.u));
  return doubts.filter((doubt) => doubt.u > least).sort((a, b) => b.u - a.u);
}
