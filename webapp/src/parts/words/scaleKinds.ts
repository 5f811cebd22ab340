/**
 * The kinds of scale in words, and the division a person most likely meets on each (common practice, no source): a
 * start that is shown and can be typed over, because the division on the scale itself is what counts.
 */
export type ScaleKind = "kitchen" | "hanging" | "bathroom" | "bench" | "corner_pads" | "axle_pads" | "platform";
type Usual = { unit: string; division: string };
export type ScaleKindRow = { kind: ScaleKind; label: string; name: string; metric: Usual; imperial: Usual };

const usual = (unit: string, division: string): Usual => ({ unit, division });

export const SCALE_KINDS: readonly ScaleKindRow[] = [
  {
    kind: "kitchen",
    label: "Kitchen scale",
    name: "Kitchen scale",
    metric: usual("g", "1 g"),
    imperial: usual("oz", "0.1 oz"),
  },
  {
    kind: "hanging",
    label: "Hanging scale",
    name: "Hanging scale",
    metric: usual("kg", "0.01 kg"),
    imperial: usual("lb", "0.1 lb"),
  },
  {
    kind: "bathroom",
    label: "Bathroom scale",
    name: "Bathroom scale",
    metric: usual("kg", "0.1 kg"),
    imperial: usual("lb", "0.2 lb"),
  },
  {
    kind: "bench",
    label: "Bench scale",
    name: "Bench scale",
    metric: usual("kg", "0.01 kg"),
    imperial: usual("lb", "0.02 lb"),
  },
  {
    kind: "corner_pads",
    label: "Four corner scales",
    name: "Corner scales",
    metric: usual("kg", "0.5 kg"),
    imperial: usual("lb", "1 lb"),
  },
  {
    kind: "axle_pads",
    label: "Axle scales",
    name: "Axle scales",
    metric: usual("kg", "1 kg"),
    imperial: usual("lb", "1 lb"),
  },
  {
    kind: "platform",
    label: "Drive-on platform",
    name: "Platform scale",
    metric: usual("kg", "1 kg"),
    imperial: usual("lb", "2 lb"),
  },
];

export function scaleKindWord(kind: string): string {
  return SCALE_KINDS.find((row) => row.kind === kind)?.label ?? kind;
}

/** The usual division and unit for people who weigh in `massUnit`. */
export function usualFor(row: ScaleKindRow, massUnit: string): Usual {
  return massUnit === "kg" || massUnit === "g" ? row.metric : row.imperial;
}
