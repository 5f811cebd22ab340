/** When the home computer last proved a backup; it does so every day that it is on, so an old one means trouble there. */
import { describe } from "../../errors";
import { garage } from "../../garage/garage";
import { opened } from "../../store/opened";
import { noted } from "../../sync/state";
import "../../laterErrors";
import { TroubleNotice } from "../../parts/frame/Notice";
import { sayMoment } from "../../parts/words/moments";

const TWO_DAYS = 2 * 24 * 3_600_000;

/** When the oldest record was made, ms: a UUID of version 7 begins with it (RFC 9562, 5.7). NaN when none says. */
function begun(records: Iterable<string>): number {
  const [oldest] = [...records].sort();
  return Number.parseInt(oldest!.replace("-", "").slice(0, 12), 16);
}

export function LastBackup() {
  const heard = noted.lastHeard.value;
  const proven = noted.proven.value;
  if (heard === null || opened.value?.demo || garage.value.byId.size === 0) return null;
  if (proven === null) {
    if (Date.parse(heard) - begun(garage.value.byId.keys()) > TWO_DAYS)
      return <TroubleNotice trouble={describe("backup_none")} />;
    return <p class="small quiet">No backup yet: the home computer makes one every day.</p>;
  }
  // As it was when last heard from: a phone that was away knows nothing of later days.
  if (Date.parse(heard) - Date.parse(proven) > TWO_DAYS)
    return <TroubleNotice trouble={describe("backup_old", { when: sayMoment(proven) })} />;
  return <p class="small quiet">Its last backup was proven {sayMoment(proven)}.</p>;
}
