/** A price as it is typed: a plain number, at most two digits of it behind the point. */
export function priceTrouble(text: string): string | null {
  return !text || /^\d{1,9}(\.\d{1,2})?$/.test(text) ? null : "Type the price as a plain number, such as 40 or 12.50.";
}
