/** The trail of one lift: the height it tells, what was typed, how sure and why; also when it counts no more. */
import { bookWith, known } from "../../answers";
import type { LiftedCar } from "../../core/balance/axleLift";
import { liftOf } from "../../core/balance/lift";
import { layOut } from "../../core/numbers/shown";
import { garage, type Rec } from "../../garage/garage";
import { unitOf } from "../../garage/units";
import { Doubts } from "../../parts/figures/Doubts";
import { type Fact, Facts } from "../../parts/figures/Facts";
import { Row } from "../../parts/figures/Row";
import { Correct, CountsOrNot } from "../../parts/forms/Correct";
import { Screen, Section } from "../../parts/frame/Screen";
import { RecordPhotos } from "../../parts/photos/RecordPhotos";
import { OnScale } from "../../parts/weighing/OnScale";
import { momentOf, sayMoment } from "../../parts/words/moments";
import { to } from "../../route";
import { Told } from "./Answer";
import { GROUNDED } from "./words";

export function Trail({ rec }: { rec: Rec<"lift"> }) {
  const { weigh_in: weighIn = "", raised } = rec.values;
  const found = foundOf(rec);
  return (
    <Screen title="Axle lift" back={to("weigh-in", weighIn)}>
      <CountsOrNot rec={rec} shows={({ values }) => values.tilted ?? ""} />
      <div class="stack">
        {found ? <Told found={found} /> : <p class="figure">Not readable</p>}
        <p class="quiet">
          The {raised} axle raised, {sayMoment(momentOf(rec))}
          {rec.pending ? "; on this phone only" : ""}
        </p>
      </div>
      <div class="two-columns">
        <div>
          <Section title="As typed">
            <Facts rows={typedRows(rec)} />
          </Section>
          {found?.height && (
            <Section title="How sure, and why">
              <Doubts mass={found.height} show={(within) => doubt(within)} />
            </Section>
          )}
        </div>
        <div>
          <Section title="What it belongs to">
            <Row
              name="The level weigh-in"
              note={sayMoment(momentOf(garage.value.byId.get(weighIn) ?? rec))}
              href={to("weigh-in", weighIn)}
            />
            <Row name="Where the weight is" href={to("balance")} />
          </Section>
          <Section title="On the scale">
            <OnScale model={known.value.scales.get(scaleOf(rec)) ?? null} scale={scaleOf(rec)} />
          </Section>
          <RecordPhotos of={rec.id} />
        </div>
      </div>
      <Correct rec={rec} again={(replaces) => to("lift", weighIn, { replaces })} />
    </Screen>
  );
}

/** As it would have counted, also when a newer one took its place or it was withdrawn. */
function foundOf(rec: Rec<"lift">): LiftedCar | null {
  const name = `${rec.id}~`;
  const laid = bookWith({ lifts: [{ ...rec.values, id: name, replaces: null, car: null, deleted: null }] });
  const record = laid.lifts.get(name);
  return record ? liftOf(laid, record, known.value) : null;
}

/** The scale the lift was read on: its own, else the weigh-in's; "" when nobody named one. */
function scaleOf({ values }: Rec<"lift">): string {
  return values.scale ?? garage.value.one("weigh_in", values.weigh_in)?.values.scale ?? "";
}

function typedRows({ values }: Rec<"lift">): Fact[] {
  const { raised = "rear", tilted = "", height = "", height_within = "3 mm, taken so", note } = values;
  return [
    { name: `The ${GROUNDED[raised]} axle, the other raised`, value: tilted },
    { name: `The ${raised} axle rose by`, value: height },
    { name: "Good to", value: height_within },
    ...(note ? [{ name: "Note", value: note }] : []),
  ];
}

function doubt(within: number): string {
  return layOut("length", 0, unitOf("length"), within)
    .within.map(([digits, word]) => `${digits} ${word}`)
    .join(" ");
}
