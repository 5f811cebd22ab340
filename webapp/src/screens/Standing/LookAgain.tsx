/** Stored readings that a slip would explain, listed once: each to be found right or corrected, at one tap. */
import { useMemo } from "preact/hooks";
import { book, known } from "../../answers";
import type { Quantity } from "../../core/numbers/quantity";
import { type Slipped, slipsIn } from "../../core/weighing/slips";
import { garage } from "../../garage/garage";
import { type Change, save } from "../../garage/write";
import { Row } from "../../parts/figures/Row";
import { Button } from "../../parts/frame/Button";
import { TroubleNotice } from "../../parts/frame/Notice";
import { Section } from "../../parts/frame/Screen";
import { useSaving } from "../../parts/frame/saving";
import { foundRight, rightOnes } from "../../parts/weighing/foundRight";
import { shownWords } from "../../parts/weighing/shownWords";
import { againstWords, slipName } from "../../parts/weighing/slipWords";
import { momentOf } from "../../parts/words/moments";
import { refName } from "../../parts/words/naming";
import { to } from "../../route";

export function LookAgain() {
  const [records, read, masses] = [garage.value, book.value, known.value];
  const found = useMemo(() => slipsIn(read, masses, rightOnes()), [records, read, masses]);
  if (!found.length) return null;
  const names = [...new Set(found.map(({ slip }) => slipName(slip)))];
  return (
    <Section title="Readings to look at again">
      {names.map((name) => (
        <Alike key={name} name={name} found={found.filter(({ slip }) => slipName(slip) === name)} />
      ))}
    </Section>
  );
}

function Alike({ name, found }: { name: string; found: readonly Slipped[] }) {
  const count = found.length === 1 ? "1 reading looks" : `${found.length} readings look`;
  return (
    <div class="stack">
      <p>
        <strong>
          {count} like {name}.
        </strong>
      </p>
      {found.map((each) => (
        <Told key={each.weighing.id} of={each} />
      ))}
    </div>
  );
}

function Told({ of }: { of: Slipped }) {
  const saving = useSaving();
  const rec = garage.value.one("weighing", of.weighing.id);
  if (!rec) return null;
  const looks = looksOf(of);
  const meant = shownWords({ ...rec.values, ...looks });
  const correct = () => saving.run(() => save([corrected(rec.id, looks)]));
  return (
    <div>
      <Row
        name={refName(rec.values.of)}
        note={againstWords(of.against)}
        value={`showed ${shownWords(rec.values)}`}
        href={to("weighing", rec.id)}
      />
      <div class="pair">
        <Button label={`Correct it: ${meant}`} disabled={saving.busy} onClick={correct} />
        <Button
          label="It is right"
          disabled={saving.busy}
          onClick={() => saving.run(() => save([foundRight(rec.id)]))}
        />
      </div>
      <TroubleNotice trouble={saving.trouble} />
    </div>
  );
}

const LOOKS = ["shown", "shown_empty", "shown_far"] as const;

/** The looks of a weighing as they would be without the slip. */
function looksOf({ weighing }: Slipped): Record<string, string> {
  const read = LOOKS.map((name) => [name, weighing[name]] as const).filter(([, look]) => look !== null);
  return Object.fromEntries(read.map(([name, look]) => [name, (look as Quantity).reads]));
}

/** A fact is never edited: the same weighing with other looks, in the place of the one that slipped. */
function corrected(id: string, looks: Record<string, string>): Change {
  const before = garage.value.one("weighing", id);
  const at = before && momentOf(before);
  return { kind: "weighing", set: { ...before?.values, ...(at && { at }), ...looks, replaces: id }, base: [] };
}
