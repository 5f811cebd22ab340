/** The five ways to get a part's mass off a scale: what each is called and which readings it needs. */

export type Method = "direct" | "difference" | "container" | "batch" | "ends";
/** The second thing to type: a reading, a count, or nothing. */
export type Second = "shown_empty" | "shown_far" | "pieces" | null;

export type MethodRow = {
  method: Method;
  label: string;
  first: string;
  second: Second;
  secondLabel: string;
  hint: string;
};

export const METHODS: readonly MethodRow[] = [
  { method: "direct", label: "On the scale", first: "The scale shows", second: null, secondLabel: "", hint: "" },
  {
    method: "difference",
    label: "Holding it, minus me",
    first: "Me holding it",
    second: "shown_empty",
    secondLabel: "Me alone",
    hint: "Same shoes, same clothes, both times.",
  },
  {
    method: "container",
    label: "In a box or bucket",
    first: "Box with the part",
    second: "shown_empty",
    secondLabel: "Empty box",
    hint: "",
  },
  {
    method: "batch",
    label: "Several alike",
    first: "All together",
    second: "pieces",
    secondLabel: "How many",
    hint: "The result is for one piece.",
  },
  {
    method: "ends",
    label: "One end at a time",
    first: "One end",
    second: "shown_far",
    secondLabel: "The other end",
    hint:
      "Keep it level: one support on the scale, a block of the same height under the other, " +
      "both at the same places for both looks.",
  },
];

export function methodRow(method: Method): MethodRow {
  return METHODS.find((row) => row.method === method)!;
}
