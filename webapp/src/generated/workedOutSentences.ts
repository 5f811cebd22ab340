// Written by `python -m tarebook.contract`. Do not edit.

export const WORKED_OUT_SENTENCES = {
  heavier: "{mass} heavier than worked out, ± {within}: thicker than nominal, or a different alloy?",
  heavier_with_bolts: "{mass} heavier than worked out, ± {within}: weighed with its bolts, thicker than nominal, or a different alloy?",
  lighter: "{mass} lighter than worked out, ± {within}: thinner than nominal, more cut away, or a different alloy?",
  agree: "Agrees with what was worked out: {difference}.",
} as const;
