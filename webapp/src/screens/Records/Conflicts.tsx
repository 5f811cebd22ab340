/** Every field two people set without knowing of each other. */
import { disputes } from "../../garage/unsettled";
import { DisputeRow } from "../../parts/conflicts/Dispute";
import { Section } from "../../parts/frame/Screen";

export function Conflicts() {
  const open = disputes.value;
  if (!open.length) return null;
  return (
    <Section title={`To settle (${open.length})`}>
      <p class="small quiet">Two phones wrote different things. The first stands until you choose; nothing was lost.</p>
      {open.map((dispute) => (
        <DisputeRow key={`${dispute.rec.id} ${dispute.field}`} dispute={dispute} />
      ))}
    </Section>
  );
}
