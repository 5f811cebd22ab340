/** The weight that was tapped, in thumb's reach: what it is, where it sits and how that is known; and its neighbours under the same finger. */

import { book } from "../../answers";
import { type Place, placeOf } from "../../core/balance/place";
import { unitOf } from "../../garage/units";
import type { Mark } from "../../parts/drawing/marks";
import { placePhrases } from "../../parts/drawing/placeWords";
import { Row } from "../../parts/figures/Row";
import { Button, ButtonLink } from "../../parts/frame/Button";
import { to } from "../../route";

type Props = {
  near: readonly Mark[];
  onPick: (near: readonly Mark[]) => void;
  onPlace: (key: string) => void;
  onClose: () => void;
};

export function Picked({ near, onPick, onPlace, onClose }: Props) {
  const mark = near[0]!;
  const part = book.value.parts.get(mark.part);
  const place = part && placeOf(book.value.car, part, part.count ?? 1);
  const others = near.slice(1, 3);
  return (
    <section class="dock weight-tapped" aria-label="The weight tapped" aria-live="polite">
      <p class="spread">
        <strong>{mark.name}</strong>
        <strong class="num">{mark.says}</strong>
      </p>
      <p class="small">
        {wayWords(mark)}. {place && knownWords(place)}
      </p>
      <div class="button-row">
        <Button label="Move it" onClick={() => onPlace(mark.key)} />
        <ButtonLink look="plain" label="Open" href={to("part", mark.part)} />
        <Button look="plain" label="Close" onClick={onClose} />
      </div>
      {others.length > 0 && (
        <div role="group" aria-label="Also there">
          {others.map((other) => (
            <Row
              key={other.key}
              name={other.name}
              value={other.brief}
              onTap={() => onPick([other, ...near.filter((each) => each !== other)])}
            />
          ))}
        </div>
      )}
    </section>
  );
}

function wayWords({ mass, planned }: Mark): string {
  if (planned) return mass > 0 ? "To go on" : "To come off";
  return mass > 0 ? "Put on" : "Taken off";
}

function knownWords(place: Place): string {
  const phrases = placePhrases(place, unitOf("length")).join(", ");
  const by = new Set(Object.values(place.by));
  if (by.has("anywhere")) return `Nobody has said where: ${phrases}.`;
  return by.has("zone") ? `Roughly, by its zone: ${phrases}.` : `${phrases}.`;
}
