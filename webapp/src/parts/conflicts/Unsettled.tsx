/** On a record's own screen: what is in dispute there and no field below shows, and what does not count, with why. */
import { asideOn, disputesOn } from "../../garage/unsettled";
import { AsideRow } from "./AsideRow";
import { DisputeRow } from "./Dispute";

/** `shown`: the fields that stand below, each with its own dispute. */
export function Unsettled({ of, shown = [] }: { of: string; shown?: readonly string[] }) {
  const open = disputesOn(of).filter(({ rec, field }) => rec.id !== of || !shown.includes(field));
  const aside = asideOn(of);
  if (!open.length && !aside.length) return null;
  return (
    <div class="notice caution">
      {open.map((dispute) => (
        <DisputeRow key={`${dispute.rec.id} ${dispute.field}`} dispute={dispute} />
      ))}
      {aside.length > 0 && (
        <p>
          <strong>{aside.length === 1 ? "One entry does" : `${aside.length} entries do`} not count here.</strong>
        </p>
      )}
      {aside.map((each) => (
        <AsideRow key={each.id} each={each} />
      ))}
    </div>
  );
}
