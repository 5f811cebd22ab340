/** After saving: what it weighs and how sure that is, and what comes next. */

import { book, known, say } from "../../answers";
import { garage, type Rec } from "../../garage/garage";
import { save } from "../../garage/write";
import { MassFigure } from "../../parts/figures/MassFigure";
import { SaveButton } from "../../parts/forms/SaveButton";
import { Button, ButtonLink } from "../../parts/frame/Button";
import { Loaded } from "../../parts/frame/Loaded";
import { Notice } from "../../parts/frame/Notice";
import { Warnings } from "../../parts/frame/Warnings";
import { ReadAgain } from "../../parts/repeats/ReadAgain";
import { readOne } from "../../parts/weighing/readOne";
import { shownWords } from "../../parts/weighing/shownWords";
import { refName } from "../../parts/words/naming";
import { placeWords } from "../../parts/words/place";
import { to } from "../../route";
import { AddToJob } from "./AddToJob";

type Props = { id: string; back: string | null; onAgain: () => void };

export function Weighed({ id, back, onAgain }: Props) {
  const rec = garage.value.one("weighing", id);
  if (!rec) return null;
  const { of = "", pieces = 1 } = rec.values;
  const part = garage.value.one("part", of);
  const { reading, warnings } = readOne({ id, ...rec.values });
  return (
    <div class="stack">
      <Notice sort="saved">
        <p>
          <strong>Saved on this phone.</strong>
        </p>
      </Notice>
      <div>
        <h2>
          {refName(of)}
          {pieces > 1 ? ", one piece" : ""}
        </h2>
        {reading && <MassFigure mass={reading.mass} />}
        {!book.value.repeats_of.has(id) && <p class="quiet num">The scale showed {shownWords(rec.values)}</p>}
        <Together of={of} rec={rec} />
        <Where values={part?.values ?? {}} />
      </div>
      <ReadAgain of={id} how={part ? "lift it off and on" : "step off and on"} />
      <Warnings of={warnings} />
      {part && part.values.whereabouts !== "yard" && (
        <Loaded
          load={async () => (await import("../../parts/drawing/WhereOnCar")).WhereOnCar}
          draw={(WhereOnCar) => <WhereOnCar parts={[of]} />}
        />
      )}
      {back && <ButtonLink look="wide" label="Back to where I was" href={back} />}
      <ButtonLink look="wide" label="Look at this weighing" href={to("weighing", id)} />
      {part?.values.whereabouts === "yard" && (
        <ButtonLink look="wide" label="Compare with yours" href={to("donor", of)} />
      )}
      {part && <AddToJob part={of} />}
      {part && <CountAs part={part} pieces={pieces} />}
      <div class="dock">
        <Button look="main" label="Weigh another" onClick={onAgain} />
      </div>
    </div>
  );
}

/** Several weighed together, of a part that stands for another number. */
function CountAs({ part, pieces }: { part: Rec<"part">; pieces: number }) {
  const { count = 1 } = part.values;
  if (pieces === 1 || count === pieces) return null;
  return (
    <SaveButton
      label={`Count it as ${pieces} wherever it comes off or goes on`}
      onSave={async () => void (await save([{ kind: "part", record: part.id, set: { count: pieces } }]))}
    />
  );
}

/** As it now stands in the part's record. */
function Where({ values }: { values: Rec<"part">["values"] }) {
  const words = placeWords(values);
  return words && <p class="quiet">Sits: {words}</p>;
}

/** With earlier weighings of the same part, what all of them say together. */
function Together({ of, rec }: { of: string; rec: Rec<"weighing"> }) {
  const mass = known.value.of.get(of);
  const readings = mass?.readings.length ?? 0;
  if (!mass?.mass || readings < 2 || rec.values.replaces) return null;
  return (
    <p class="quiet num">
      All {readings} weighings of it together: {say(mass.mass)}
    </p>
  );
}
