/** Photos of the displays, where it was, a note: none of it needed. */
import { Disclosure } from "../../parts/controls/Disclosure";
import { FieldsOf } from "../../parts/forms/FieldOf";
import { filled } from "../../parts/forms/form";
import { Section } from "../../parts/frame/Screen";
import { Shots } from "../../parts/photos/Shots";
import { sayMoment } from "../../parts/words/moments";
import { sentenceCase } from "../../parts/words/naming";
import type { OfCar } from "./form";

export function PhotosAndNote({ form, change }: OfCar) {
  const weighIn = filled("weigh_in", form, change);
  const when = form.at ? `${sentenceCase(sayMoment(form.at))}. ` : "";
  return (
    <Section title="Photos and note">
      <div class="stack">
        <Shots form={form} change={change} />
        <Disclosure title={`${when}Where, when, how sure of the fuel, note`}>
          <FieldsOf form={weighIn} names={["at", "place", "fuel_within", "note"]} />
        </Disclosure>
      </div>
    </Section>
  );
}
