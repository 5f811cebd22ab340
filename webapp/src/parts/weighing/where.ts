/** Where something was weighed, in words. */
export const WHERE = {
  garage: "In the garage",
  yard: "At the yard",
  paddock: "In the paddock",
  elsewhere: "Elsewhere",
} as const;
