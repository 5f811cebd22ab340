/** What comes out of two readings or a count, while typing. */
import { say } from "../../answers";
import { methodRow } from "../weighing/methods";
import { readOne } from "../weighing/readOne";
import { missing, type PartForm, weighingOf } from "./form";

/** The weighing as it stands in the form, read; null while something of it is still missing. */
export function asTyped(form: PartForm) {
  const complete = missing({ ...form, of: { id: null, text: "x" } }) === null;
  return complete ? readOne({ id: form.id, ...weighingOf(form, null) }) : null;
}

export function Net({ form }: { form: PartForm }) {
  if (methodRow(form.method).second === null) return null;
  const reading = asTyped(form)?.reading;
  const words = form.method === "batch" ? "One piece: " : "The part: ";
  return (
    <p class="num" aria-live="polite">
      {reading && (
        <>
          {words}
          <strong class="brass">{say(reading.mass)}</strong>
        </>
      )}
    </p>
  );
}
