/** The trail of one weigh-in: readings, what was on board, the jobs then in the car, and the way to the class's condition. */
import "../Weighing/Weighing.css";
import { known } from "../../answers";
import { garage } from "../../journal/garage";
import { Correct, CountsOrNot } from "../../parts/Correct";
import { Doubts } from "../../parts/Doubts";
import { Facts } from "../../parts/Facts";
import { MassFigure } from "../../parts/MassFigure";
import { momentOfId, sayMoment } from "../../parts/moments";
import { RecordPhotos } from "../../parts/RecordPhotos";
import { Screen, Section } from "../../parts/Screen";
import { Warnings } from "../../parts/Warnings";
import { to } from "../../route";
import { Shares } from "../WeighCar/Shares";
import { OnScale } from "../Weighing/OnScale";
import { JobsThen } from "./JobsThen";
import { ToCondition } from "./ToCondition";
import { asItStood, readings } from "./typedRows";
import { wholeCarOf } from "./wholeCar";

export function WeighIn({ id }: { id: string }) {
  const rec = garage.value.byId.get(id);
  if (!rec) return <Screen title="A weigh-in not here yet" back="#/weigh"><p>Its record has not reached this phone.</p></Screen>;
  const whole = wholeCarOf(rec);
  const total = whole?.loads.loads.total;
  const when = sayMoment((rec.values["at"] as string | undefined) ?? momentOfId(id));
  const scale = rec.values["scale"];
  return (
    <Screen title="Weigh-in" back="#/weigh">
      <CountsOrNot rec={rec} />
      <div class="stack trail-head">
        {total ? <MassFigure mass={total} /> : <p class="figure">Not complete</p>}
        <p class="quiet">As it stood there {when}: {rec.values["official"] ? "the official scale" : "our own scales"}, {String(rec.values["trim"])} trim{rec.pending ? "; on this phone only" : ""}</p>
        {whole && <Shares loads={whole.loads} />}
        <Warnings of={whole?.warnings ?? []} />
      </div>
      <div class="two-columns">
        <div>
          <Section title="Readings as typed"><Facts rows={readings(rec)} /></Section>
          <Section title="On board"><Facts rows={asItStood(rec)} /></Section>
          <Section title="Scales"><OnScale model={known.value.scales.get(String(scale ?? "")) ?? null} scale={scale} /></Section>
          {total && <Section title="How sure, and why"><Doubts mass={total} /></Section>}
        </div>
        <div>
          {whole && <ToCondition whole={whole} driver={rec.values["driver_in"] ? (rec.values["driver"] as string | undefined) ?? null : null} />}
          <JobsThen rec={rec} />
          <Section title="Photos"><RecordPhotos of={id} /></Section>
        </div>
      </div>
      <Correct rec={rec} again={to("weigh-car", { replaces: id })} />
    </Screen>
  );
}
