// Written by `python -m tarebook.contract`. Do not edit.

export const FUSION_SENTENCES = {
  change_in: "{mass} went in without a note, ± {within}",
  change_out: "{mass} came out without a note, ± {within}",
  change_in_or_off: "{mass} went in without a note, ± {within}, or a weigh-in beside it is off",
  change_out_or_off: "{mass} came out without a note, ± {within}, or a weigh-in beside it is off",
  change_high: "This weigh-in shows {mass} too much, ± {within}",
  change_low: "This weigh-in shows {mass} too little, ± {within}",
  cause_put_in: "Something was put in, or put back, and not written down. Tools and a spare wheel count too.",
  cause_taken_out: "Something came out and was not written down.",
  cause_moved_unweighed: "A part that moved between has no weight and counts as nothing.",
  cause_rough_parts: "A part of the jobs between weighs something else than was guessed or quoted.",
  cause_job_list: "A job is ticked in the list of one weigh-in though it was not in the car, or is missing there.",
  cause_scale_changed: "It was weighed on another scale from then on: the difference may be the scales'.",
  cause_somebody_in: "Somebody sat in the car.",
  cause_driver_missing: "The driver was counted and was not in the car.",
  cause_fuel_misread: "The fuel was read or noted wrongly.",
  cause_not_zeroed: "A scale was not level or not set to zero, or a reading was copied wrongly.",
  cause_wrong_scale: "It stood on another scale than the one noted.",
  next: "One more weigh-in on {scale}: ± {then} instead of ± {now}",
  next_same: "One more weigh-in on {scale} would hardly make it surer",
  next_platform: "a platform scale nobody has checked",
} as const;
