/** How records are put in order. */

/** Negative, zero or positive, by code unit: ids and dates are ASCII. */
export function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
