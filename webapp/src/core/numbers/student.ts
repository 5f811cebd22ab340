/** Student's t for a whole number of degrees of freedom, as a finite sum (Abramowitz & Stegun, 26.7.3 and 26.7.4). */

/** The probability that |T| is larger than |t|. `freedom`: 1 or more. */
export function studentBeyond(t: number, freedom: number): number {
  const across = Math.abs(t) / Math.sqrt(freedom + t * t);
  const along2 = freedom / (freedom + t * t);
  let [term, within] = [1, 0];
  for (let k = freedom % 2; k < freedom - 1; k += 2) {
    within += term;
    term *= (along2 * (k + 1)) / (k + 2);
  }
  if (freedom % 2 === 0) return Math.max(0, 1 - across * within);
  const angle = Math.atan(Math.abs(t) / Math.sqrt(freedom));
  return Math.max(0, 1 - (2 / Math.PI) * (angle + across * Math.sqrt(along2) * within));
}
