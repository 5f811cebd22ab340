/** The readings a mass was made from, newest last, each open to its own trail; and a way to take another. */

import { known, say } from "../../answers";
import { garage } from "../../garage/garage";
import { to } from "../../route";
import { Row } from "../figures/Row";
import { ButtonLink } from "../frame/Button";
import { Thumb } from "../photos/Photos";
import { photosAt } from "../photos/shown";
import { sayMoment } from "../words/moments";
import { shownWords } from "./shownWords";

export function Readings({ of, back }: { of: string; back: string }) {
  const readings = known.value.of.get(of)?.readings ?? [];
  return (
    <div class="stack">
      <div>
        {readings.map((reading) => (
          <ReadingRow key={reading.weighing} weighing={reading.weighing} value={say(reading.mass)} />
        ))}
      </div>
      {!readings.length && <p class="quiet">Never weighed.</p>}
      <ButtonLink
        look="wide"
        label={readings.length ? "Weigh it again" : "Weigh it"}
        href={to("weigh-part", of, { back })}
      />
    </div>
  );
}

function ReadingRow({ weighing, value }: { weighing: string; value: string }) {
  const rec = garage.value.one("weighing", weighing);
  if (!rec) return null;
  const { scale, at, place } = rec.values;
  const scaleName = garage.value.one("scale", scale)?.values.name;
  const photo = photosAt(weighing)[0];
  const note = [scaleName ?? "a scale not named", sayMoment(at), place].filter(Boolean).join(" · ");
  return (
    <Row
      lead={photo && <Thumb sha256={photo.values.sha256} />}
      name={`Showed ${shownWords(rec.values)}`}
      note={note}
      value={value}
      href={to("weighing", weighing)}
    />
  );
}
