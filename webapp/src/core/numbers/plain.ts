/** Plain sums, one term after the other, so that both languages have the same digits. */

export function plainSum(terms: readonly number[]): number {
  return terms.reduce((sum, term) => sum + term, 0);
}

/** The sum of products over the shorter of the two. */
export function dot(a: readonly number[], b: readonly number[]): number {
  const size = Math.min(a.length, b.length);
  let total = 0;
  for (let i = 0; i < size; i++) total += (a[i] as number) * (b[i] as number);
  return total;
}
