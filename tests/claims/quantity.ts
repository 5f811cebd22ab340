/** What the vectors of core/numbers/quantity run in TypeScript. */

import * as quantity from "../../webapp/src/core/numbers/quantity";
import type { Ratio } from "../../webapp/src/core/numbers/ratio";
import { sumAsRead, type Term } from "../../webapp/src/core/numbers/sumAsRead";
import type { Claims } from "../vectors";

/** A reading as JSON; its exact value as the text of a fraction. */
function plain({ exact, value, unit, reads, last_digit }: quantity.Quantity): object {
  return { exact: text(exact), value, unit, reads, last_digit };
}

function text(exact: Ratio): string {
  return `${exact.n}/${exact.d}`;
}

export const claims: Claims = {
  "quantity.read_mass": (given) => plain(quantity.readMass(given.text, given.default_unit, given.positive)),
  "quantity.read_length": (given) => plain(quantity.readLength(given.text, given.default_unit, given.positive)),
  "quantity.read_position": (given) => plain(quantity.readPosition(given.text, given.default_unit)),
  "quantity.read": (given) => plain(quantity.read(given.kind, given.text, given.default_unit, given.positive)),
  "quantity.read_number": (given) => text(quantity.readNumber(given.text)),
  "quantity.sum_as_read": (given) => {
    const term = (each: string): Term => [quantity.readMass(each.replace("-", "")), each.startsWith("-") ? -1 : 1];
    return sumAsRead(given.texts.map(term));
  },
};
