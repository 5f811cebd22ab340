/** A share is kept as the plain fraction the core reads ("0.525") and shown and typed as a percentage ("52.5"), exactly. */

const DECIMAL = /^(\d{1,12})(?:\.(\d{1,7}))?$/;

/** The fraction behind a percentage; what is no plain number stays as typed, for the form to say so. */
export function fractionOf(percent: string): string {
  const [whole, rest] = digitsOf(percent);
  if (whole === null) return percent;
  const padded = whole.padStart(3, "0");
  return `${leading(padded.slice(0, -2))}.${padded.slice(-2)}${rest}`;
}

/** The percentage of a fraction. */
export function percentOf(fraction: string): string {
  const [whole, rest] = digitsOf(fraction);
  if (whole === null) return fraction;
  const padded = rest.padEnd(2, "0");
  const after = padded.slice(2);
  return `${leading(whole + padded.slice(0, 2))}${after && `.${after}`}`;
}

function digitsOf(text: string): [string, string] | [null, null] {
  const found = DECIMAL.exec(text.trim());
  return found ? [found[1] as string, found[2] ?? ""] : [null, null];
}

function leading(digits: string): string {
  return digits.replace(/^0+(?=\d)/, "");
}
