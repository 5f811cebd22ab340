// Written by `python -m tarebook.contract`. Do not edit.

export const LESSON_SENTENCES = {
  guessed_high: "Your guesses run {off} high, from {parts} parts: taken out.",
  guessed_low: "Your guesses run {off} low, from {parts} parts: taken out.",
  quoted_high: "Quoted weights run {off} high, from {parts} parts: taken out.",
  quoted_low: "Quoted weights run {off} low, from {parts} parts: taken out.",
} as const;
