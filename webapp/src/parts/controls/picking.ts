/** Which known record a person means by the letters typed so far. */

export type Offer = { id: string; name: string; note?: string };
export type Picked = { id: string | null; text: string };

/** The words typed, and the one record that is called exactly so; of two of one name none is taken unasked. */
export function typedAs(offers: readonly Offer[], text: string): Picked {
  const whole = text.trim().toLowerCase();
  const [only, ...others] = offers.filter((offer) => offer.name.trim().toLowerCase() === whole);
  return { id: only && whole && !others.length ? only.id : null, text };
}

/** Records whose name has a word beginning with each word typed; a whole name first, else in the order offered. */
export function matching(offers: readonly Offer[], text: string): Offer[] {
  const wanted = words(text);
  const found = offers.filter((offer) => {
    const has = words(`${offer.name} ${offer.note ?? ""}`);
    return wanted.every((word) => has.some((each) => each.startsWith(word)));
  });
  const whole = text.trim().toLowerCase();
  return [
    ...found.filter((offer) => offer.name.toLowerCase() === whole),
    ...found.filter((offer) => offer.name.toLowerCase() !== whole),
  ];
}

function words(text: string): string[] {
  return text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean);
}
