// Written by `python -m tarebook.contract`. Do not edit.

export const PRIORS = {
  unwritten: 0.22,
  misread: 0.06,
  wrong_side: 0.1,
  unit: 0.1,
  fuel: 0.09,
  tare: 0.07,
  twice: 0.07,
  put_back: 0.06,
  person: 0.05,
  ballast: 0.05,
  zero: 0.04,
  guess: 0.04,
  other_driver: 0.03,
  other_scale: 0.03,
  wet: 0.04,
  chance: 1.0,
} as const;

export const FACTORS = {
  pounds: 0.45359237,
  kilograms: 2.2046226218487757,
  ounces: 16.0,
  sixteenth: 0.0625,
  grams: 28.349523125,
  gram_ounces: 0.035273961949580414,
  ten: 10.0,
  tenth: 0.1,
} as const;

export const RATES = {
  pounds: 3.0,
  kilograms: 3.0,
  ten: 2.0,
  tenth: 2.0,
} as const;

export const SPREADS = {
  unwritten: [3.0, 15.0],
  misread: [2.0, 20.0],
  zero: [3.0],
  guessed: [0.6],
  quoted: [0.3],
} as const;

export const RANGES = {
  container: [0.1, 5.0],
  wet: [0.3, 6.0],
  wet_part: [0.0, 0.3],
  tank: [0.0, 60.0],
} as const;

export const SAME_PART = 3.0;
export const ALIKE = 0.15;
export const UNSPECIFIC = ["unwritten", "misread", "chance"] as const;
export const SOMEBODY = [78.0, 15.0] as const;
