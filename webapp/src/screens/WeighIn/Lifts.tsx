/** How high the centre of this car lay: the lifts made of it as it was weighed, and the way to make one. */
import { book, known } from "../../answers";
import { axlesOf, liftOf, liftsInOrder } from "../../core/balance/lift";
import type { Lift } from "../../core/garage/records";
import { showLength } from "../../core/numbers/shown";
import { expanded } from "../../core/numbers/uncertain";
import { isWarned } from "../../core/wholeCar/condition";
import { describe } from "../../errors";
import { unitOf } from "../../garage/units";
import { Row } from "../../parts/figures/Row";
import { Section } from "../../parts/frame/Screen";
import { sayMoment } from "../../parts/words/moments";
import { to } from "../../route";

export function Lifts({ weighIn }: { weighIn: string }) {
  const record = book.value.weigh_ins.get(weighIn);
  if (!record || record.layout === "total") return null;
  const lifts = liftsInOrder(book.value).filter((lift) => lift.weigh_in === weighIn);
  return (
    <Section title="Height of the centre">
      {!lifts.length && <p class="quiet">{unlifted()}</p>}
      <div>
        {lifts.map((lift) => (
          <LiftRow key={lift.id} lift={lift} />
        ))}
        <Row
          name={lifts.length ? "Lift an axle again" : "Lift an axle"}
          note="Step by step, with its cautions"
          href={to("lift", weighIn)}
        />
      </div>
    </Section>
  );
}

function unlifted(): string {
  const axles = axlesOf(book.value.car);
  return isWarned(axles) ? describe(axles.code, axles.data).do : "Not measured at this weigh-in.";
}

function LiftRow({ lift }: { lift: Lift }) {
  const { height, reason } = liftOf(book.value, lift, known.value);
  const why = reason && describe(reason.code, reason.data).sentence;
  return (
    <Row
      name={`The ${lift.raised} raised by ${lift.height.reads}`}
      note={why ?? sayMoment(lift.at)}
      value={height ? showLength(height.value, unitOf("length"), expanded(height)) : "—"}
      href={to("lift", lift.id)}
    />
  );
}
