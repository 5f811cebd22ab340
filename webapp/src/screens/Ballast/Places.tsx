/** Every place ballast may go, with what it takes; each can be opened and changed. */

import type { Rec } from "../../journal/types";
import { Row } from "../../parts/figures/Row";
import { ButtonLink } from "../../parts/frame/Button";
import { Section } from "../../parts/frame/Screen";
import { nameOf } from "../../parts/words/naming";
import { placeWords } from "../../parts/words/place";
import { to } from "../../route";
import type { OfPlaces } from "./Ballast";

export function Places({ places }: OfPlaces) {
  if (!places.length) return null;
  return (
    <Section title="Places" aside={<ButtonLink look="plain" label="Add a place" href={to("ballast", "new")} />}>
      <div>
        {places.map((place) => (
          <Row
            key={place.id}
            name={nameOf(place)}
            note={whereWords(place.values)}
            value={`up to ${place.values.most ?? 0}`}
            under={`of ${place.values.block ?? "no weight"}`}
            href={to("ballast", place.id)}
          />
        ))}
      </div>
    </Section>
  );
}

/** "1150 mm behind the front axle, on the centreline, 190 mm up" */
function whereWords({ x, y, z }: Rec<"ballast_place">["values"]): string {
  const across = Number.parseFloat(String(y)) === 0 ? "on the centreline" : placeWords({ y });
  return [placeWords({ x }), across, z && `${z} up`].filter(Boolean).join(", ");
}
