/** What was deleted or withdrawn, the latest first; each comes back whole, with what hung on it. */

import { garage, type Rec } from "../../garage/garage";
import { bringBack, deletionsOf } from "../../garage/undo";
import type { Act } from "../../journal/history";
import { Row } from "../../parts/figures/Row";
import { Button } from "../../parts/frame/Button";
import { TroubleNotice } from "../../parts/frame/Notice";
import { Screen } from "../../parts/frame/Screen";
import { useSaving } from "../../parts/frame/saving";
import { byWhom } from "../../parts/history/History";
import { Thumb } from "../../parts/photos/Photos";
import { kindWord, nameOf } from "../../parts/words/naming";
import { to } from "../../route";

type Gone = { rec: Rec; acts: Act[] };

export function Bin() {
  const gone = binned();
  return (
    <Screen title="Bin" back={to("more")}>
      <p class="quiet">
        {gone.length ? "Deleted things do not count. Nothing here is ever thrown away." : "Nothing was deleted."}
      </p>
      {gone.map((each) => (
        <GoneRow key={each.rec.id} {...each} />
      ))}
    </Screen>
  );
}

function GoneRow({ rec, acts }: Gone) {
  const saving = useSaving();
  const hung = garage.value.hung(rec.id).length;
  const note = [
    kindWord(rec.kind),
    byWhom(acts[0]!),
    hung > 0 && `with ${hung} ${hung === 1 ? "record" : "records"} of it`,
  ];
  const back = () => saving.run(() => bringBack(rec.id));
  return (
    <>
      <Row
        lead={rec.kind === "photo" && <Thumb sha256={String(rec.values.sha256)} />}
        name={nameOf(rec)}
        note={note.filter(Boolean).join(" · ")}
        under={
          <Button
            look="plain"
            label="Bring back"
            aria-label={`Bring back ${nameOf(rec)}`}
            onClick={() => void back()}
          />
        }
      />
      <TroubleNotice trouble={saving.trouble} />
    </>
  );
}

/** The deleted records and the deletions that stand, the latest deletion first. */
export function binned(): Gone[] {
  const gone = [...garage.value.byId.values()].filter((rec) => rec.deleted);
  const told = gone.map((rec) => ({ rec, acts: deletionsOf(rec.id) }));
  const latest = ({ acts }: Gone) => acts[0]!.entry.id;
  return told.filter(({ acts }) => acts.length > 0).sort((one, other) => (latest(one) < latest(other) ? 1 : -1));
}
