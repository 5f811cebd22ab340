/** Photos of the displays, where it was, a note: none of it needed. */
import { useState } from "preact/hooks";
import type { AppError } from "../../errors";
import { Disclosure } from "../../parts/controls/Disclosure";
import { TextField } from "../../parts/controls/Field";
import { QuantityField } from "../../parts/controls/QuantityField";
import { TroubleNotice } from "../../parts/frame/Notice";
import { Section } from "../../parts/frame/Screen";
import { ShotPreview, TakePhoto } from "../../parts/photos/Photos";
import { sayMoment } from "../../parts/words/moments";
import { sentenceCase } from "../../parts/words/naming";
import type { CarForm } from "./form";

type Props = { form: CarForm; change: (patch: Partial<CarForm>) => void };

export function PhotosAndNote({ form, change }: Props) {
  const [trouble, setTrouble] = useState<AppError | null>(null);
  const when = form.at ? `${sentenceCase(sayMoment(form.at))}. ` : "";
  return (
    <Section title="Photos and note">
      <div class="stack">
        {form.shots.map((shot, i) => (
          <ShotPreview
            key={i}
            shot={shot}
            onDrop={() => change({ shots: form.shots.filter((each) => each !== shot) })}
          />
        ))}
        <TakePhoto onShot={(shot) => change({ shots: [...form.shots, shot] })} onTrouble={setTrouble} />
        <TroubleNotice trouble={trouble} />
        <Disclosure title={`${when}Where, when, how sure of the fuel, note`}>
          <TextField
            label="When"
            type="datetime-local"
            value={form.at}
            onValue={(at) => change({ at })}
            hint="Now, unless you say otherwise."
          />
          <TextField label="Where" value={form.place} most={120} onValue={(place) => change({ place })} />
          <QuantityField
            kind="volume"
            label="Fuel good to"
            value={form.fuelWithin}
            onValue={(fuelWithin) => change({ fuelWithin })}
            hint="A tenth of it, at least a litre, unless you say otherwise."
          />
          <TextField label="Note" long value={form.note} most={4000} onValue={(note) => change({ note })} />
        </Disclosure>
      </div>
    </Section>
  );
}
