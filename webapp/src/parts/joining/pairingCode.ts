/** The one-time code that joins a browser to a garage: found in a link, or typed by hand. */
import { decoded } from "../../route";

/** The code in a pairing link or in an address hash; null when there is none. */
export function codeIn(text: string): string | null {
  const found = /#\/?pair=([^&\s]+)/.exec(text);
  return found ? decoded(found[1]!) : null;
}

/** A code without its link; null for what cannot be one. */
export function bareCode(text: string): string | null {
  const bare = text.replaceAll(/\s/g, "");
  return /^[\w-]{4,80}$/.test(bare) ? bare : null;
}
