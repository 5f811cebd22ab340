/** The trail of one weighing: what was typed, how it was read, on which scale, how sure, what it is used for. */
import { say } from "../../answers";
import { garage, type Rec } from "../../garage/garage";
import { Doubts } from "../../parts/figures/Doubts";
import { Facts } from "../../parts/figures/Facts";
import { MassFigure } from "../../parts/figures/MassFigure";
import { Correct, CountsOrNot } from "../../parts/forms/Correct";
import { NotHere } from "../../parts/frame/NotHere";
import { Screen, Section } from "../../parts/frame/Screen";
import { Warnings } from "../../parts/frame/Warnings";
import { RecordPhotos } from "../../parts/photos/RecordPhotos";
import { ReadAgain } from "../../parts/repeats/ReadAgain";
import { OnScale } from "../../parts/weighing/OnScale";
import { type ReadOne, readOne } from "../../parts/weighing/readOne";
import { choiceWord } from "../../parts/words/fieldWords";
import { momentOf, sayMoment } from "../../parts/words/moments";
import { nameOf } from "../../parts/words/naming";
import { to } from "../../route";
import { typedRows } from "./typedRows";
import { UsedFor } from "./UsedFor";

export function Weighing({ id }: { id: string }) {
  const rec = garage.value.one("weighing", id);
  if (!rec) return <NotHere what="A weighing" back="#/weigh" />;
  const read = readOne({ id, ...rec.values });
  const of = garage.value.byId.get(rec.values.of ?? "");
  const title = of ? nameOf(of) : (rec.values.what ?? "Weighing");
  return (
    <Screen title={title} back={of?.kind === "part" ? to("part", of.id) : "#/weigh"}>
      <CountsOrNot rec={rec} shows={shownBy} />
      <Headline rec={rec} read={read} />
      <div class="two-columns">
        <AsEntered rec={rec} read={read} />
        <div>
          <ReadAgain of={id} how={of?.kind === "driver" ? "step off and on" : "lift it off and on"} />
          <RecordPhotos of={id} />
          <UsedFor rec={rec} />
        </div>
      </div>
      <Correct
        rec={rec}
        again={(replaces) => (of ? to("weigh-part", of.id, { replaces }) : to("weigh-part", { replaces }))}
      />
    </Screen>
  );
}

function shownBy(rec: Rec<"weighing">): string {
  const { reading } = readOne({ id: rec.id, ...rec.values });
  return reading ? say(reading.mass) : "nothing readable";
}

type Trail = { rec: Rec<"weighing">; read: ReadOne };

function AsEntered({ rec, read }: Trail) {
  return (
    <div>
      <Section title="As typed">
        <Facts rows={typedRows(rec)} />
      </Section>
      <Section title="On the scale">
        <OnScale model={read.model} scale={rec.values.scale} />
      </Section>
      {read.reading && (
        <Section title="How sure, and why">
          <Doubts mass={read.reading.mass} />
        </Section>
      )}
    </div>
  );
}

function Headline({ rec, read }: Trail) {
  const { method, pieces = 1 } = rec.values;
  const when = sayMoment(momentOf(rec));
  return (
    <div class="stack trail-head">
      {read.reading ? <MassFigure mass={read.reading.mass} /> : <p class="figure">Not readable</p>}
      <p class="quiet">
        {pieces > 1 ? "One piece. " : ""}
        {choiceWord("weighing", "method", method)}, {when}
        {rec.pending ? ", on this phone only" : ""}
      </p>
      <Warnings of={read.warnings} />
    </div>
  );
}
