/** The trail of one weigh-in: readings, what was on board, the jobs then in it, and the way to the class. */
import { book, known, say, stand } from "../../answers";
import { isSignificant } from "../../core/standing/gap";
import { foretoldSentence } from "../../core/standing/sentences";
import type { WholeCar } from "../../core/wholeCar/weighIn";
import { garage, type Rec } from "../../garage/garage";
import { massUnit } from "../../garage/units";
import { Doubts } from "../../parts/figures/Doubts";
import { Facts } from "../../parts/figures/Facts";
import { MassFigure } from "../../parts/figures/MassFigure";
import { Correct, CountsOrNot } from "../../parts/forms/Correct";
import { NotHere } from "../../parts/frame/NotHere";
import { Screen, Section } from "../../parts/frame/Screen";
import { Warnings } from "../../parts/frame/Warnings";
import { RecordPhotos } from "../../parts/photos/RecordPhotos";
import { ReadAgain } from "../../parts/repeats/ReadAgain";
import { Shares } from "../../parts/weighIn/Shares";
import { asItStood, readings, trailRows } from "../../parts/weighIn/typedRows";
import { isUnsaid, Unsaid } from "../../parts/weighIn/Unsaid";
import { wholeCarOf } from "../../parts/weighIn/wholeCar";
import { OnScale } from "../../parts/weighing/OnScale";
import { momentOf, sayMoment } from "../../parts/words/moments";
import { to } from "../../route";
import { gapAt } from "./gap";
import { JobsThen } from "./JobsThen";
import { Lifts } from "./Lifts";
import { SinceBefore } from "./SinceBefore";
import { ToCondition } from "./ToCondition";

export function WeighIn({ id }: { id: string }) {
  const rec = garage.value.one("weigh_in", id);
  if (!rec) return <NotHere what="A weigh-in" back="#/weigh" />;
  const whole = wholeCarOf(rec);
  const before = gapAt(id);
  const isOdd = before !== null && isSignificant(before.gap); // then it is what one came to look at
  return (
    <Screen title="Weigh-in" back="#/weigh">
      <CountsOrNot rec={rec} shows={shownBy} />
      {isUnsaid(book.value.weigh_ins.get(id)) && <Unsaid rec={rec} />}
      <Headline rec={rec} whole={whole} />
      {isOdd && <SinceBefore trail={before} />}
      <div class="two-columns">
        <AsEntered rec={rec} whole={whole} />
        <div>
          {before && !isOdd && <SinceBefore trail={before} />}
          {whole && <ToCondition whole={whole} driver={driverThen(rec)} />}
          <Lifts weighIn={id} />
          <JobsThen rec={rec} />
          <RecordPhotos of={id} />
        </div>
      </div>
      <Correct rec={rec} again={(replaces) => to("weigh-car", { replaces })} />
    </Screen>
  );
}

/** Who sat in it; null for an empty seat or a driver nobody named. */
function driverThen({ values }: Rec<"weigh_in">): string | null {
  return values.driver_in ? (values.driver ?? null) : null;
}

function shownBy(rec: Rec<"weigh_in">): string {
  const total = wholeCarOf(rec)?.loads.loads.total;
  return total ? say(total) : "no total";
}

type Trail = { rec: Rec<"weigh_in">; whole: WholeCar | null };

function Headline({ rec, whole }: Trail) {
  const total = whole?.loads.loads.total;
  const when = sayMoment(momentOf(rec));
  const whose = rec.values.official ? "the official scale" : "our own scales";
  return (
    <div class="stack trail-head">
      {total ? <MassFigure mass={total} /> : <p class="figure">Not complete</p>}
      <p class="quiet">
        As it stood there {when}: {whose}, {rec.values.trim} trim
        {rec.pending ? "; on this phone only" : ""}
      </p>
      <WasForetold weighIn={rec.id} />
      {whole && <Shares loads={whole.loads} />}
      <ReadAgain of={rec.id} how="roll it off and on" />
      <Warnings of={whole?.warnings ?? []} />
    </div>
  );
}

function WasForetold({ weighIn }: { weighIn: string }) {
  const found = stand.value.history.find((past) => past.weigh_in === weighIn)?.foretold;
  return found ? <p>{foretoldSentence(found, massUnit()).text}.</p> : null;
}

function AsEntered({ rec, whole }: Trail) {
  const total = whole?.loads.loads.total;
  const { scale } = rec.values;
  return (
    <div>
      <Section title="Readings as typed">
        <Facts rows={[...readings(rec), ...(total ? trailRows(rec, total) : [])]} />
      </Section>
      <Section title="On board">
        <Facts rows={asItStood(rec)} />
      </Section>
      <Section title="Scales">
        <OnScale model={known.value.scales.get(scale ?? "") ?? null} scale={scale} />
      </Section>
      {total && (
        <Section title="How sure, and why">
          <Doubts mass={total} />
        </Section>
      )}
    </div>
  );
}
