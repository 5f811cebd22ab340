// What the looks of the door page amount to. Pure, so that it can be tested without a phone.

const APART_MS = 6 * 3600 * 1000;

/**
 * Which of the page's texts fits.
 * looks: {named, trustedByName, trustedByAddress, reached} each true or false: the name is found; TLS works under the
 * name; TLS works under an address; this page's own server still answers.
 */
export function verdict(looks) {
  if (looks.trustedByName) return "trusted";
  if (!looks.reached) return "alone";
  if (looks.trustedByAddress) return looks.named ? "unlike" : "no_name";
  return looks.named ? "untrusted" : "neither";
}

/** How far two clocks are apart, in words; null when certificates do not mind. */
export function apart(here, there) {
  const hours = Math.abs(here - there) / 3600000;
  if (hours * 3600000 < APART_MS) return null;
  if (hours < 48) return `${Math.round(hours)} hours`;
  return hours < 24 * 730 ? `${Math.round(hours / 24)} days` : `${Math.round(hours / 24 / 365.25)} years`;
}
