/** What may be said of a weighing and need not be: bolts, zone, measured place, where and when, a note. */
import { Disclosure } from "../../parts/controls/Disclosure";
import { FieldOf } from "../../parts/forms/FieldOf";
import { filled } from "../../parts/forms/form";
import { WHERE } from "../../parts/weighing/where";
import type { OfPart } from "../../parts/weighPart/form";
import { sayMoment } from "../../parts/words/moments";

export function More({ form, isPart, change }: OfPart & { isPart: boolean }) {
  const [weighing, part] = [filled("weighing", form, change), filled("part", form, change)];
  return (
    <Disclosure title={`${WHERE[form.place]}${form.at ? `, ${sayMoment(form.at)}` : ""}. Bolts, zone, when, note`}>
      <FieldOf form={weighing} name="with_bolts" />
      <FieldOf form={weighing} name="place" />
      {isPart && (
        <>
          <FieldOf form={part} name="zone" />
          <FieldOf
            form={part}
            name="x"
            label="Or measured: from the front axle"
            hint="Only if you measured it; the zone is enough."
          />
          <FieldOf form={part} name="y" label="And from the centreline" />
        </>
      )}
      <FieldOf form={weighing} name="at" />
      <FieldOf form={weighing} name="note" />
    </Disclosure>
  );
}
