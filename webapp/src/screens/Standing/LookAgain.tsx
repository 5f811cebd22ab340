/** Stored readings that a slip would explain, listed once: each to be found right or corrected, at one tap. */
import { useMemo } from "preact/hooks";
import { book, known, stand } from "../../answers";
import type { Quantity } from "../../core/numbers/quantity";
import { type Slip, type Slipped, slipsIn } from "../../core/weighing/slips";
import { type SlippedWeighIn, slippedWeighIn } from "../../core/wholeCar/slipped";
import { LOOKS } from "../../core/wholeCar/weighIn";
import { garage, type Rec } from "../../garage/garage";
import { type Change, save } from "../../garage/write";
import { Row } from "../../parts/figures/Row";
import { Button } from "../../parts/frame/Button";
import { TroubleNotice } from "../../parts/frame/Notice";
import { Section } from "../../parts/frame/Screen";
import { useSaving } from "../../parts/frame/saving";
import { lineOf } from "../../parts/weighIn/relisted";
import { foundRight, rightOnes } from "../../parts/weighing/foundRight";
import { shownWords } from "../../parts/weighing/shownWords";
import { againstWords, slipName } from "../../parts/weighing/slipWords";
import { momentOf } from "../../parts/words/moments";
import { refName } from "../../parts/words/naming";
import { to } from "../../route";
import { weighInName } from "./weighInName";

/** A stored reading in words. `meant`: how it is corrected; `looks`: what it then reads. */
type Doubtful = {
  id: string;
  kind: "weighing" | "weigh_in";
  slip: Slip;
  name: string;
  against: string;
  showed: string;
  meant: string;
  looks: Record<string, string>;
};

export function LookAgain() {
  const [records, read, masses, { minimum }] = [garage.value, book.value, known.value, stand.value];
  const found = useMemo(() => doubtfulOnes(minimum), [records, read, masses, minimum]);
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

function doubtfulOnes(minimum: number | null): Doubtful[] {
  const right = rightOnes();
  const isRight = (weighIn: string) => sameLooks(weighIn).some((id) => right.has(id));
  const car = slippedWeighIn(book.value, minimum, isRight);
  return [...(car ? [ofCar(car)] : []), ...slipsIn(book.value, known.value, right).map(ofPart)];
}

/** A weigh-in, and those it took the place of with the same looks: then only what it says beside them was put right. */
function sameLooks(weighIn: string): string[] {
  const line = lineOf(weighIn);
  const looks = ({ values }: Rec<"weigh_in">) => JSON.stringify(CAR_LOOKS.map((name) => values[name] ?? ""));
  return line.filter((rec) => looks(rec) === looks(line[0]!)).map(({ id }) => id);
}

const CAR_LOOKS = Object.values(LOOKS).flat();

function ofPart({ slip, weighing, against }: Slipped): Doubtful {
  const { id, of } = weighing;
  const { values } = garage.value.one("weighing", id)!;
  const looks = Object.fromEntries(
    PART_LOOKS.flatMap((name) => (weighing[name] ? [[name, weighing[name].reads] as const] : [])),
  );
  return {
    ...{ id, kind: "weighing", slip, looks, name: refName(of), against: againstWords(against) },
    showed: shownWords(values),
    meant: shownWords({ ...values, ...looks }),
  };
}

const PART_LOOKS = ["shown", "shown_empty", "shown_far"] as const;

function ofCar({ slip, weighIn, before, after, against }: SlippedWeighIn): Doubtful {
  const looks = Object.fromEntries(Object.entries(after).map(([name, { reads }]) => [name, reads]));
  return {
    ...{ id: weighIn, kind: "weigh_in", slip, looks, name: weighInName(weighIn), against: againstWords(against) },
    showed: listed(before),
    meant: listed(Object.values(after)),
  };
}

function listed(looks: readonly Quantity[]): string {
  return looks.map(({ reads }) => reads).join(", ");
}

function Alike({ name, found }: { name: string; found: readonly Doubtful[] }) {
  const count = found.length === 1 ? "1 reading looks" : `${found.length} readings look`;
  return (
    <div class="stack">
      <p>
        <strong>
          {count} like {name}.
        </strong>
      </p>
      {found.map((each) => (
        <Told key={each.id} of={each} />
      ))}
    </div>
  );
}

function Told({ of }: { of: Doubtful }) {
  const saving = useSaving();
  const keep = (change: Change) => saving.run(() => save([change]));
  const address = of.kind === "weighing" ? "weighing" : "weigh-in";
  return (
    <div>
      <Row name={of.name} note={of.against} value={`showed ${of.showed}`} href={to(address, of.id)} />
      <div class="pair">
        <Button label={`Correct it: ${of.meant}`} disabled={saving.busy} onClick={() => keep(corrected(of))} />
        <Button label="It is right" disabled={saving.busy} onClick={() => keep(foundRight(of.id))} />
      </div>
      <TroubleNotice trouble={saving.trouble} />
    </div>
  );
}

/** A fact is never edited: the same reading with other looks, in the place of the one that slipped. */
function corrected({ id, kind, looks }: Doubtful): Change {
  const before = garage.value.one(kind, id);
  const at = before && momentOf(before);
  return { kind, set: { ...before?.values, ...(at && { at }), ...looks, replaces: id }, base: [] };
}
