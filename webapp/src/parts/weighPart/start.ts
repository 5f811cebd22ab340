/** What the form of a weighing begins with. */
import { garage } from "../../garage/garage";
import { newId } from "../../garage/write";
import { nameOf } from "../words/naming";
import { emptyForm, type Habits, type PartForm } from "./form";

/** `of`: the part or driver, null while nobody has said which. */
export function startFor(of: string | null, habits: Habits): PartForm {
  const what = garage.value.byId.get(of ?? "");
  return emptyForm({ weighing: newId(), part: newId() }, { id: of, text: what ? nameOf(what) : "" }, habits);
}

/** The reading that takes another's place starts from it: all but what the display shows. */
export function startAgain(replaces: string, habits: Habits): PartForm {
  const { of = null, ...before } = garage.value.one("weighing", replaces)?.values ?? {};
  const form = startFor(of, habits);
  const { unit = form.unit } = garage.value.one("scale", before.scale)?.values ?? {};
  return {
    ...form,
    method: before.method ?? "direct",
    second: before.pieces ? String(before.pieces) : "",
    scale: before.scale ?? null,
    unit,
    with_bolts: before.with_bolts ?? null,
    place: before.place ?? form.place,
  };
}
