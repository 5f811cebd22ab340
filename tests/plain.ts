/** Results of the core as plain JSON, alike in both languages (`tests/plain.py`), for the vectors to compare. */

import type { Quantity } from "../webapp/src/core/numbers/quantity";
import type { Ratio } from "../webapp/src/core/numbers/ratio";
import { type Uncertain, u } from "../webapp/src/core/numbers/uncertain";

const ROUNDING = 1e-9;
const NOTHING = 1e-12;

/** Exact numbers as "n/d", quantities as their exact value and unit, `u` beside sources. null is left out, not []. */
export function plain(result: unknown): unknown {
  if (result === null || typeof result !== "object") return result;
  if (Array.isArray(result)) return result.map(plain);
  if (result instanceof Map) return told(result);
  if (result instanceof Set) return [...result].sort();
  if ("n" in result && "d" in result) return text(result as Ratio);
  if ("last_digit" in result) return `${text((result as Quantity).exact)} as ${(result as Quantity).unit}`;
  if ("sources" in result && "value" in result) return { ...result, u: u(result as Uncertain) };
  return told(Object.entries(result));
}

function text({ n, d }: Ratio): string {
  return `${n}/${d}`;
}

function told(entries: Iterable<readonly [string, unknown]>): Record<string, unknown> {
  return Object.fromEntries([...entries].flatMap(([key, value]) => (value == null ? [] : [[key, plain(value)]])));
}

/** A plain result without what is rounding: what nearly cancels is gone, in every order of its terms. */
export function settled(told: unknown): unknown {
  if (Array.isArray(told)) return told.map(settled);
  if (told === null || typeof told !== "object") return told;
  if ("sources" in told && "u" in told) {
    const { value, u, sources } = told as Uncertain & { u: number };
    const parts = Object.entries(sources).filter(([, part]) => Math.abs(part) > Math.max(ROUNDING * u, NOTHING));
    return { value: some(value), u: some(u), sources: Object.fromEntries(parts) };
  }
  const entries = Object.entries(told);
  return Object.fromEntries(entries.map(([key, value]) => [key, key === "share" ? some(value) : settled(value)]));
}

function some(value: number): number {
  return Math.abs(value) < NOTHING ? 0 : value;
}
