/** Readings as typed, added as typed. */

const DECIMAL = /^(\d+)(?:\.(\d+))?\s*([^\d.\s]\S*)$/;

/** Two plain decimals typed in one unit ("262.8 kg", "262.8kg") as one, to the last digit; null when one is something else. */
export function sumOf(one: string, other: string): string | null {
  const [a, b] = [DECIMAL.exec(one), DECIMAL.exec(other)];
  if (!a || !b || a[3] !== b[3]) return null;
  const places = Math.max(a[2]?.length ?? 0, b[2]?.length ?? 0);
  const whole = ([, digits, decimals = ""]: RegExpExecArray) => BigInt(digits + decimals.padEnd(places, "0"));
  const sum = String(whole(a) + whole(b)).padStart(places + 1, "0");
  const at = sum.length - places;
  return `${sum.slice(0, at)}${places ? `.${sum.slice(at)}` : ""} ${a[3]}`;
}
