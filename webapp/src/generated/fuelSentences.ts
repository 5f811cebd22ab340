// Written by `python -m tarebook.contract`. Do not edit.

export const FUEL_SENTENCES = {
  at_the_start: "at the start",
  at_the_flag: "at the flag",
  after_lap: "after lap {lap}",
  when_dry: "when the tank runs dry, in lap {lap}",
  lightest: "Lightest {where}: {weight}",
  lightest_above: "Lightest {where}: {weight}, {margin} above the minimum",
  lightest_under: "Lightest {where}: {weight}, {margin} under the minimum",
  lightest_close: "Lightest {where}: {weight}; {chance} chance that the official scale shows under the minimum",
  as_weighed: "{said}, by what is weighed; {moved}",
  start_to_keep: "Start with at least {volume} to keep enough in hand at the flag",
  start_to_arrive: "Start with at least {volume} to reach the flag",
  start_above_tank: "The run asks for {volume} at the start, more than the tank holds",
  start_never: "Even with a full tank the car has {mass} too little in hand at the flag",
} as const;
