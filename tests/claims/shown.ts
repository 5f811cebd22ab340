/** What the vectors of core/numbers/shown run in TypeScript. */

import { read } from "../../webapp/src/core/numbers/quantity";
import * as first from "../../webapp/src/core/numbers/shown";
import * as later from "../../webapp/src/core/numbers/shownLater";
import { sizeOf } from "../../webapp/src/core/words/said";
import type { Claims } from "../vectors";

const shown = { ...first, ...later };

export const claims: Claims = {
  "shown.show_mass": ({ kg, unit, U, signed }) => shown.showMass(kg, unit, U, signed),
  "shown.show_guard": ({ kg, unit, U }) => shown.showGuard(kg, unit, U),
  "shown.show_claim": ({ kg, unit, U }) => shown.showClaim(kg, unit, U),
  "shown.show_area": ({ m2, length_unit: unit, U }) => shown.showArea(m2, unit, U),
  "shown.show_doubt": ({ U, unit }) => shown.showDoubt(U, unit),
  "shown.show_length": ({ m, unit, U, signed }) => shown.showLength(m, unit, U, signed),
  "shown.show_stepped": ({ m, unit, step, up }) => shown.showStepped(m, unit, step, up),
  "shown.show_volume": ({ m3, unit, U, signed }) => shown.showVolume(m3, unit, U, signed),
  "shown.show_percent": ({ fraction, U }) => shown.showPercent(fraction, U),
  "shown.show_chance": ({ probability }) => shown.showChance(probability),
  "shown.show_money": ({ amount, currency, signed }) => shown.showMoney(amount, currency, signed),
  "shown.show_hours": ({ hours }) => shown.showHours(hours),
  "shown.show_plain": ({ value, label, U, signed }) => shown.showPlain(value, label, U, signed),
  "shown.show_both": ({ kind, text, unit, signed }) => shown.showBoth(read(kind, text, null, false, signed), unit),
  "shown.number": ({ value, sources, kind, unit }) => shown.number({ value, sources }, kind, unit),
  "said.size_of": ({ value, sources, unit }) => sizeOf({ value, sources }, unit),
  "shown.lay_out": ({ kind, si, unit, U, signed }) => shown.layOut(kind, si, unit, U, signed),
};
