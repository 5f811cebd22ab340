/**
 * The division a person most likely meets on each kind of scale (common practice, no source): a start that is shown and
 * can be typed over, because the division on the scale itself is what counts.
 */
import type { Values } from "../../journal/kinds";

export type ScaleKind = NonNullable<Values<"scale">["kind"]>;

const METRIC = ["kg", "g"];
const USUAL = {
  kitchen: { name: "Kitchen scale", metric: ["g", "1 g"], imperial: ["oz", "0.1 oz"] },
  hanging: { name: "Hanging scale", metric: ["kg", "0.01 kg"], imperial: ["lb", "0.1 lb"] },
  bathroom: { name: "Bathroom scale", metric: ["kg", "0.1 kg"], imperial: ["lb", "0.2 lb"] },
  bench: { name: "Bench scale", metric: ["kg", "0.01 kg"], imperial: ["lb", "0.02 lb"] },
  corner_pads: { name: "Corner scales", metric: ["kg", "0.5 kg"], imperial: ["lb", "1 lb"] },
  axle_pads: { name: "Axle scales", metric: ["kg", "1 kg"], imperial: ["lb", "1 lb"] },
  platform: { name: "Platform scale", metric: ["kg", "1 kg"], imperial: ["lb", "2 lb"] },
} as const satisfies Record<ScaleKind, { name: string; metric: readonly string[]; imperial: readonly string[] }>;

/** What a scale of a kind is most likely, for people who weigh in `massUnit`. */
export function usualScale(kind: ScaleKind, massUnit: string) {
  const { name, metric, imperial } = USUAL[kind];
  const [unit, division] = METRIC.includes(massUnit) ? metric : imperial;
  return { kind, name, unit, division };
}
