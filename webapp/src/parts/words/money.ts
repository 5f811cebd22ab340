/** The garage's money sign. */
import { garage } from "../../garage/garage";

export function currency(): string {
  return garage.value.of("garage")[0]?.values.currency ?? "";
}
