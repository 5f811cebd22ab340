/** The standing as the steelyard draws it. */
import { interval } from "../../answers";
import type { Standing } from "../../core/standing/standing";
import type { Interval, SteelyardProps } from "./Steelyard";

type Arm = Pick<SteelyardProps, "start" | "minimum" | "now"> & { weighIns: Interval[] };

export function armOf(standing: Standing): Arm {
  return {
    start: standing.start?.weight.value ?? null,
    minimum: standing.minimum,
    now: standing.weight && interval(standing.weight),
    weighIns: standing.history.flatMap((past) => (past.weight ? [interval(past.weight)] : [])),
  };
}
