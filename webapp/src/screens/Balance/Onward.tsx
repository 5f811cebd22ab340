/** What the height rests on and how to measure it, and what height and weight do to the load on the tyres. */
import { book, known } from "../../answers";
import type { Balance } from "../../core/balance/balance";
import { liftOf } from "../../core/balance/lift";
import { showLength } from "../../core/numbers/shown";
import { expanded } from "../../core/numbers/uncertain";
import { unitOf } from "../../garage/units";
import { Row } from "../../parts/figures/Row";
import { Section } from "../../parts/frame/Screen";
import { sayMoment } from "../../parts/words/moments";
import { to } from "../../route";

export function Onward({ balance }: { balance: Balance }) {
  return (
    <Section title="Height and load">
      <div>
        <RestsOn balance={balance} />
        {balance.weigh_in && balance.states.weighed?.loads.front && (
          <Row
            name="Lift an axle"
            note="Measures the height, step by step, with its cautions"
            href={to("lift", balance.weigh_in)}
          />
        )}
        <Row
          name="Load transfer"
          note="In a turn and under brakes, before and after; weight per power"
          href={to("load-transfer")}
        />
      </div>
    </Section>
  );
}

/** The lift the height rests on, of this weigh-in or carried over from another. */
function RestsOn({ balance }: { balance: Balance }) {
  const note = balance.warnings.find(({ code }) => code === "height_by_lift" || code === "height_carried");
  const lift = book.value.lifts.get(String(note?.data.lift ?? ""));
  if (!note || !lift) return null;
  const { height } = liftOf(book.value, lift, known.value);
  return (
    <Row
      name={`The lift of ${sayMoment(lift.at) || "unknown date"}`}
      note={
        note.code === "height_carried"
          ? "The height rests on it, carried over by what changed since"
          : "The height rests on it"
      }
      value={height ? showLength(height.value, unitOf("length"), expanded(height)) : "—"}
      href={to("lift", lift.id)}
    />
  );
}
