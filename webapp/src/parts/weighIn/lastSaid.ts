/** What was said last of who sat in the car and of the fuel, as it was typed: offered again, never taken unasked. */

import { book } from "../../answers";
import { isDriverSaid } from "../../core/wholeCar/aboard";
import { inOrder } from "../../core/wholeCar/weighed";

export type LastSaid = { fuel: string; driver_in: boolean | null; driver: string | null };

export function lastSaid(): LastSaid {
  const weighIns = inOrder(book.value);
  const seat = weighIns.findLast(isDriverSaid);
  const fuel = weighIns.findLast((each) => each.fuel)?.fuel?.reads ?? "";
  return { fuel, driver_in: seat ? (seat.driver_in ?? true) : null, driver: seat?.driver ?? null };
}
