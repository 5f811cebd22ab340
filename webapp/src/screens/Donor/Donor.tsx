/** A donor part: noted in one go at the yard, or looked at again later to buy it or leave it. */
import { garage } from "../../garage/garage";
import type { Address } from "../../route";
import { NewDonor } from "./NewDonor";
import { Seen } from "./Seen";

export function Donor({ id, query }: Address) {
  const part = garage.value.one("part", id);
  return part ? <Seen part={part} /> : <NewDonor insteadOf={query.get("instead-of")} draft={query.get("draft")} />;
}
