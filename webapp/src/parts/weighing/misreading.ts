/** The question about looks that their display cannot have shown. */
import type { Quantity } from "../../core/numbers/quantity";
import { type Display, misread } from "../../core/weighing/display";
import type { Doubt } from "./Question";
import { misreadWords } from "./slipWords";

/**
 * About the first of them there is; null when the display can have shown them all. `also`: other ways out that a look of
 * that name has.
 */
export function misreading<N extends string, C = Partial<Record<N, string>>>(
  looks: readonly (readonly [N, Quantity])[],
  display: Display,
  also: (name: N) => Doubt<C>["likely"] = () => [],
): Doubt<Partial<Record<N, string>> | C> | null {
  for (const [name, look] of looks) {
    const found = misread(look, display);
    if (!found) continue;
    const change = (reads: string) => ({ [name]: reads }) as Partial<Record<N, string>>;
    const showed = found.likely.map(({ reads }) => ({ label: `It showed ${reads}`, change: change(reads) }));
    const likely = [...showed, ...also(name)];
    return { sort: "display", says: misreadWords(look, found, display), likely, typed: look.reads };
  }
  return null;
}
