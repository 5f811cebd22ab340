/** A donor part: noted in one go at the yard, or looked at again later to buy it or leave it. */
import { garage } from "../../garage/garage";
import { NewDonor } from "./NewDonor";
import { Seen } from "./Seen";

export function Donor({ id, insteadOf }: { id: string; insteadOf: string | null }) {
  const part = garage.value.byId.get(id);
  return part ? <Seen part={part} /> : <NewDonor insteadOf={insteadOf} />;
}
