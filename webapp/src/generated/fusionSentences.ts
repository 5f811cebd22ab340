// Written by `python -m tarebook.contract`. Do not edit.

export const FUSION_SENTENCES = {
  next: "One more weigh-in on {scale}: ± {then} instead of ± {now}",
  next_same: "One more weigh-in on {scale} would hardly make it surer",
  next_platform: "a platform scale nobody has checked",
  lower_weigh_in: "Weigh the car on {of}: ± {with_it} instead of ± {now}, {minutes} min",
  lower_weigh_in_zeroed: "Set the zero, weigh the car on {of}: ± {with_it} instead of ± {now}, {minutes} min",
  lower_weigh_in_checked_zeroed: "Check {of} with {against}, set the zero, weigh the car: ± {with_it} instead of ± {now}, {minutes} min",
  lower_weigh_in_fuel: "Fill or drain the tank, weigh on {of}: ± {with_it} instead of ± {now}, {minutes} min",
  lower_check: "Check {of} with {against}: ± {with_it} instead of ± {now}, {minutes} min",
  lower_weigh: "Weigh {of} on {on}: ± {with_it} instead of ± {now}, {minutes} min",
  check_by: "Check it again by about {day}",
  check_now: "Check it before the next weigh-in",
} as const;
