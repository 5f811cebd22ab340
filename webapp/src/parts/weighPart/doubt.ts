/** What is doubtful about a part's weighing as typed: a reading its scale cannot show, or one that a slip would explain. */
import { book, known } from "../../answers";
import type { Weighing } from "../../core/garage/records";
import { type Quantity, readMass } from "../../core/numbers/quantity";
import { misread } from "../../core/weighing/display";
import { type About, type Known, knownOf, knownOfPart, loreOf } from "../../core/weighing/known";
import { aboutScale, slipIn } from "../../core/weighing/slips";
import { unitWritten } from "../controls/typing";
import { misreading } from "../weighing/misreading";
import type { Doubt } from "../weighing/Question";
import { readOne } from "../weighing/readOne";
import { scalesFor } from "../weighing/scalesFor";
import { againstWords, slipWords } from "../weighing/slipWords";
import { nameOf } from "../words/naming";
import { readingOf } from "../words/reading";
import { frozen, type PartForm, weighingOf } from "./form";

export type Looks = Partial<Pick<PartForm, "shown" | "second" | "scale" | "unit">>;

/** The first doubt there is; null when the reading is as it should be. `replaces`: the weighing it takes the place of. */
export function doubtOf(form: PartForm, replaces: string | null): Doubt<Looks> | null {
  const { weighing } = readOne({ id: form.id, ...weighingOf(form, null) });
  if (!weighing) return null;
  const lore = loreOf(book.value, known.value);
  const [model, display] = aboutScale(lore, weighing);
  const unshown = misreading(looksOf(weighing), display, (name) => otherScales(form, name));
  if (unshown) return unshown;
  const facts: Known[] = form.of.id
    ? knownOf(lore, { ...weighing, of: form.of.id }, ...(replaces ? [replaces] : []))
    : knownOfPart(lore, unwritten(form), new Set());
  const slipped = slipIn(weighing, model, display, facts);
  if (!slipped) return null;
  const after = new Map(looksOf(slipped.weighing));
  const changed = looksOf(weighing).filter(([name, look]) => after.get(name)?.reads !== look.reads);
  const others = changed.map(([name]) => after.get(name) as Quantity);
  const change = Object.fromEntries(changed.map(([name], at) => [name, others[at]?.reads]));
  return {
    sort: "slip",
    says: slipWords(
      slipped.slip,
      changed.map(([, look]) => look),
      others,
    ),
    against: againstWords(slipped.against),
    likely: [{ label: `It was ${others.map(({ reads }) => reads).join(" and ")}`, change }],
    typed: changed.map(([, look]) => look.reads).join(" and "),
  };
}

const OFFERED = 2;

/** The scales whose display can have shown it: perhaps it stood on one of them, and the one before is still chosen. */
function otherScales(form: PartForm, name: "shown" | "second"): Doubt<Looks>["likely"] {
  const isBare = unitWritten(form[name]) === null;
  const able = scalesFor("part").flatMap((scale) => {
    const display = book.value.scales.get(scale.id);
    if (scale.id === form.scale || !display?.unit || !display.division) return [];
    const unit = isBare ? display.unit : form.unit;
    const read = readingOf("mass", form[name], unit);
    const look = read.state === "read" ? readMass(form[name], unit, true) : null;
    if (!look || misread(look, display)) return [];
    const change = { ...(isBare ? {} : frozen(form)), scale: scale.id, unit: display.unit };
    return [{ label: `${look.reads} on ${nameOf(scale)}`, change }];
  });
  return able.slice(-OFFERED);
}

function looksOf({ shown, shown_empty, shown_far }: Weighing): ["shown" | "second", Quantity][] {
  const second = shown_empty ?? shown_far;
  return second
    ? [
        ["shown", shown],
        ["second", second],
      ]
    : [["shown", shown]];
}

/** A part that is only named so far. */
function unwritten({ newPart, of, zone }: PartForm): About {
  return { id: newPart, name: of.text, zone, instead_of: null, claim: null, claim_basis: null };
}
