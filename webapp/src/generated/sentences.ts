// Written by `python -m tarebook.contract`. Do not edit.

/** What a standing is told in; `{name}` in a sentence is filled by core/sentences. */
export const SENTENCES = {
  "above": "{mass} above the minimum, sure to ± {within}",
  "under": "Under the minimum by {mass}, sure to ± {within}",
  "close": "Too close to call: {chance} chance that the official scale shows under the minimum",
  "probably_under": "Probably under the minimum: {chance} chance that the official scale shows under it",
  "above_as_weighed": "{mass} above the minimum by what is weighed; {moved}",
  "under_as_weighed": "Under the minimum by {mass} by what is weighed; {moved}",
  "close_as_weighed": "Too close to call by what is weighed: {chance} chance that the official scale shows under the minimum; {moved}",
  "probably_under_as_weighed": "Probably under the minimum by what is weighed: {chance} chance that the official scale shows under it; {moved}",
  "out_one": "1 part taken off since has no weight, so it may be lighter",
  "out_more": "{count} parts taken off since have no weight, so it may be lighter",
  "in_one": "1 part put on since has no weight, so it may be heavier",
  "in_more": "{count} parts put on since have no weight, so it may be heavier",
  "both_ways": "{count} parts moved since have no weight, so it may be lighter or heavier",
  "no_minimum": "The class minimum is not entered yet",
  "minimum_unread": "The class minimum cannot be read: {why}",
  "adders_unread": "What is added to the minimum cannot be read: {why}",
  "lighter": "{mass} lighter by the jobs written down, sure to ± {within}; the car itself has not been weighed yet",
  "heavier": "{mass} heavier by the jobs written down, sure to ± {within}; the car itself has not been weighed yet",
  "unweighed": "The car has not been weighed yet",
  "in_hand": "Keep {mass} in hand",
  "in_hand_none": "Nothing needs to be kept in hand",
  "gap_more": "{mass} more is in the car than written down",
  "gap_less": "{mass} less is in the car than written down",
  "gap_none": "The last two weigh-ins agree with the jobs written down"
} as const;
