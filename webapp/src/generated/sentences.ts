// Written by `python -m tarebook.contract`. Do not edit.

/** What a standing is told in; `{name}` in a sentence is filled by core/sentences. */
export const SENTENCES = {
  "above": "{mass} above the minimum, sure to ± {within}",
  "under": "Under the minimum by {mass}, sure to ± {within}",
  "close": "Too close to call: {chance} chance that the official scale shows under the minimum",
  "no_minimum": "The class minimum is not entered yet",
  "minimum_unread": "The class minimum cannot be read: {why}",
  "lighter": "{mass} lighter by the jobs written down, sure to ± {within}; the car itself has not been weighed yet",
  "heavier": "{mass} heavier by the jobs written down, sure to ± {within}; the car itself has not been weighed yet",
  "unweighed": "The car has not been weighed yet",
  "in_hand": "Keep {mass} in hand",
  "in_hand_none": "Nothing needs to be kept in hand",
  "gap_more": "{mass} more is in the car than written down",
  "gap_less": "{mass} less is in the car than written down",
  "gap_none": "The last two weigh-ins agree with the jobs written down"
} as const;
