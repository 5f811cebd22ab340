/** Something to do that would lower the doubt of the weight, and by how much (found by `core/standing/lowerDoubt`). */

export type First = "checked" | "zeroed" | "fuel";

/**
 * One thing to do and its `minutes`.
 *
 * `way`: "weigh_in" on scale `of` (null: a platform nobody knows), `first` seen to "zeroed" or "fuel", or "checked" and
 * "zeroed"; "check" of scale `of`, as there `against` so many kg; "weigh" the part or driver `of` on the scale `on`.
 */
export type Doing = {
  readonly way: "weigh_in" | "check" | "weigh";
  readonly of: string | null;
  readonly on: string | null;
  readonly first: readonly First[];
  readonly against: number | null;
  readonly minutes: number;
};

/** With the standard uncertainty of the weight now and once it is done, kg. */
export type Lowering = Doing & { readonly u_now: number; readonly u_then: number };
