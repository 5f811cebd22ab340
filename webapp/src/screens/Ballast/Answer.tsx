/** The answer: how much in all, how many blocks where, and what the car comes to with them. */

import { useState } from "preact/hooks";
import { book, minimumWords, say, stand } from "../../answers";
import type { Ballast } from "../../core/ballast/ballast";
import { massIn, overMinimum, sharesOf } from "../../core/ballast/ballastAnswer";
import { type BallastChoice, lacking } from "../../core/ballast/ballastRecords";
import { showMass } from "../../core/numbers/shown";
import { uncertain } from "../../core/numbers/uncertain";
import { inHandSentence } from "../../core/standing/sentences";
import { massUnit, unitOf } from "../../garage/units";
import { save } from "../../garage/write";
import type { Rec } from "../../journal/types";
import { own } from "../../own";
import { type Fact, Facts } from "../../parts/figures/Facts";
import { MassFigure } from "../../parts/figures/MassFigure";
import { Row } from "../../parts/figures/Row";
import { WeightNow } from "../../parts/figures/WeightNow";
import { SaveButton } from "../../parts/forms/SaveButton";
import { Notice } from "../../parts/frame/Notice";
import { Section } from "../../parts/frame/Screen";
import { Warnings } from "../../parts/frame/Warnings";
import { nameOf } from "../../parts/words/naming";
import { to } from "../../route";
import { changeWords, crossFact, heightFact, missingIn, movesSentence, shareFact, unaimedOf } from "./words";

type Props = { choice: BallastChoice; found: Ballast; places: readonly Rec<"ballast_place">[] };

export function Answer({ choice, found, places }: Props) {
  const isAboard = Object.keys(choice.fitted).length > 0;
  const names = (id: string) => places.filter((place) => place.id === id).map(nameOf)[0] ?? id;
  return (
    <section class="ballast-answer" aria-label="How much, and where">
      <Warnings of={unaimedOf(choice)} />
      {lacking(choice) === 0 ? (
        <NoneForTheMinimum found={found} />
      ) : (
        <>
          <p class="quiet small">{headOf(found, isAboard)}</p>
          <MassFigure mass={uncertain(found.added)} />
        </>
      )}
      <Warnings of={missingIn(massUnit(), found.missing)} />
      {isAboard && movesSentence(choice.moves, names) && <p class="moves">{movesSentence(choice.moves, names)}</p>}
      <div>
        {places.map((place) => (
          <PlaceLine
            key={place.id}
            place={place}
            put={own(found.put, place.id) ?? 0}
            fitted={own(choice.fitted, place.id) ?? 0}
            misses={found.missing.length > 0}
          />
        ))}
      </div>
      <Fitted choice={choice} found={found} places={places} />
    </section>
  );
}

/** A car at or above its minimum is told to add nothing: only what the shares wanted would cost. */
function NoneForTheMinimum({ found }: { found: Ballast }) {
  return (
    <>
      <p class="moves">No ballast is needed for the minimum.</p>
      {found.added > 0 && <p>The shares wanted would cost {showMass(found.added, massUnit())}:</p>}
    </>
  );
}

/** What the car comes to with the blocks in. */
export function WithIt({ choice, found }: { choice: BallastChoice; found: Ballast }) {
  return (
    <Section title="The car with it">
      <WeightNow />
      <Facts rows={factsOf(choice, found)} />
    </Section>
  );
}

function headOf({ missing }: Ballast, isAboard: boolean): string {
  if (missing.length) return "The nearest these places allow";
  return isAboard ? "Ballast in all" : "Ballast to put in";
}

type Line = { place: Rec<"ballast_place">; put: number; fitted: number; misses: boolean };

/** A place that has blocks, or is to have some. */
function PlaceLine({ place, put, fitted, misses }: Line) {
  const block = book.value.ballast_places.get(place.id)?.block;
  if (!put && !fitted) return null;
  const value = put && block ? `${put} × ${place.values.block}` : "none";
  return (
    <Row
      name={nameOf(place)}
      note={changeWords(fitted, put, misses)}
      value={value}
      under={put > 1 && block ? showMass(massIn(block, put), massUnit()) : undefined}
      href={to("ballast", place.id)}
    />
  );
}

/** One save for all the places, once the blocks are bolted in. */
function Fitted({ choice, found, places }: Props) {
  const misses = found.missing.length > 0;
  const [isSaved, setSaved] = useState(false);
  const changes = places
    .map((place) => ({ place, fitted: own(found.put, place.id) ?? 0 }))
    .filter(({ place, fitted }) => (place.values.fitted ?? 0) !== fitted)
    .map(({ place, fitted }) => ({ kind: "ballast_place", record: place.id, set: { fitted }, base: place.heads }));
  const label = misses ? "Fit the nearest all the same" : "Fitted like this";
  if (!changes.length) {
    if (isSaved) return <Notice sort="saved">Saved on this phone. The weight now counts these blocks.</Notice>;
    return Object.keys(choice.fitted).length ? (
      <p class="quiet">The blocks are fitted like this{misses && ": the nearest, with what it misses"}.</p>
    ) : null;
  }
  return <SaveButton look="main" label={label} onSave={() => save(changes).then(() => setSaved(true))} />;
}

function factsOf({ car, wanted }: BallastChoice, found: Ballast): Fact[] {
  if (!car) return [];
  const { minimum, official } = stand.value;
  const before = sharesOf(car);
  const kept = official ? inHandSentence(official, massUnit()).text : "";
  const over: Fact[] =
    minimum === null
      ? []
      : [
          {
            name: "Over the minimum",
            value: say(overMinimum(found, minimum), true),
            under: [`minimum ${minimumWords.value}`, kept].filter(Boolean).join(" · "),
          },
        ];
  return [
    { name: "Weight with it", value: say(found.total), under: "as the class weighs it" },
    ...over,
    shareFact("Front", found.front, before.front, wanted?.front ?? null),
    shareFact("Left", found.left, before.left, wanted?.left ?? null),
    heightFact(found, car, unitOf("length")),
    ...crossFact(found, massUnit()),
  ];
}
