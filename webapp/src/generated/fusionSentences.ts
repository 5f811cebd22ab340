// Written by `python -m tarebook.contract`. Do not edit.

export const FUSION_SENTENCES = {
  next: "One more weigh-in on {scale}: ± {then} instead of ± {now}",
  next_same: "One more weigh-in on {scale} would hardly make it surer",
  next_platform: "a platform scale nobody has checked",
  check_by: "Check it again by about {day}",
  check_now: "Check it before the next weigh-in",
} as const;
