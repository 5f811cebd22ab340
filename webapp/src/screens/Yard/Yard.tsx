/** Donor parts seen at the yard, with what each would save against the part on the car. */

import { useState } from "preact/hooks";
import { book, known, say } from "../../answers";
import { compare } from "../../core/ledger/compare";
import { showMoney } from "../../core/numbers/shownLater";
import { garage } from "../../garage/garage";
import { newId } from "../../garage/write";
import type { Rec } from "../../journal/types";
import { Row } from "../../parts/figures/Row";
import { ButtonLink } from "../../parts/frame/Button";
import { Screen, Section } from "../../parts/frame/Screen";
import { Thumb } from "../../parts/photos/Photos";
import { photosAt } from "../../parts/photos/shown";
import { LeftHalfDone } from "../../parts/weighing/LeftHalfDone";
import { currency } from "../../parts/words/money";
import { withWord } from "../../parts/words/naming";
import { to } from "../../route";

type Part = Rec<"part">;

const isAt = (where: Part["values"]["whereabouts"]) => (part: Part) => part.values.whereabouts === where;

export function Yard() {
  const [draft] = useState(newId); // what is noted now never begins with what was typed of another
  const parts = garage.value.of("part");
  const seen = parts.filter(isAt("yard"));
  const bought = parts.filter((part) => isAt("shelf")(part) && part.values.yard);
  const left = parts.filter(isAt("left"));
  return (
    <Screen title="Yard">
      <div class="stack">
        <p class="small quiet">
          Gloves and eye protection; stay out from under any car that does not stand firmly. The yard’s own rules come
          first.
        </p>
        <LeftHalfDone sort="donor:" />
        {!seen.length && !bought.length && !left.length && (
          <p>Note a donor part with its row, price, weight and a photo, and see at once what it would save.</p>
        )}
      </div>
      <Group title="Seen" parts={seen} />
      <Group title="Bought" parts={bought} />
      <Group title="Left there" parts={left} />
      <div class="dock">
        <ButtonLink look="main" label="Note a donor part" href={to("donor", "new", { draft })} />
      </div>
    </Screen>
  );
}

function Group({ title, parts }: { title: string; parts: Part[] }) {
  if (!parts.length) return null;
  return (
    <Section title={title}>
      <div>
        {parts.map((part) => (
          <DonorRow key={part.id} part={part} />
        ))}
      </div>
    </Section>
  );
}

function DonorRow({ part }: { part: Part }) {
  const { yard, row, asking, name } = part.values;
  const found = compare(book.value, part.id, null, known.value);
  const photo = photosAt(part.id)[0];
  const price = asking && showMoney(asking, currency());
  const note = [yard, row && withWord("row", row), price].filter(Boolean).join(" · ");
  return (
    <Row
      lead={photo && <Thumb sha256={photo.values.sha256} />}
      name={name}
      note={note}
      value={found.whole ? say(found.whole, true) : found.this?.mass ? say(found.this.mass) : "not weighed"}
      href={to("donor", part.id)}
    />
  );
}
