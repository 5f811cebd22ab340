/** An entry that was kept but does not count: why, what it says, and what a person can do about it. */

import { describe } from "../../errors";
import { type AsideEntry, garage } from "../../garage/garage";
import { save } from "../../garage/write";
import "../../laterErrors";
import { Disclosure } from "../controls/Disclosure";
import { Button } from "../frame/Button";
import { TroubleNotice } from "../frame/Notice";
import { useSaving } from "../frame/saving";
import { deviceName } from "../words/deviceNames";
import { fieldWord, valueWords } from "../words/fieldWords";
import { sayMoment } from "../words/moments";
import { kindWord, nameOf } from "../words/naming";
import "./conflicts.css";

/** Only these can be used as they are once a person says so; the others need an update or a new reading. */
const CAN_BE_TAKEN = ["stranger", "waiting"];

export function AsideRow({ each }: { each: AsideEntry }) {
  const saving = useSaving();
  const { sentence, do: todo } = describe(each.reason);
  const decide = (take: boolean) => saving.run(() => save([{ kind: "verdict", set: { entry: each.id, take } }]));
  return (
    <div class="aside-entry">
      <h3>{aboutEntry(each)}</h3>
      <p>
        {sentence} {todo}
      </p>
      <Disclosure title="What it says">
        <WhatItSays each={each} />
      </Disclosure>
      <div class="pair">
        {CAN_BE_TAKEN.includes(each.reason) && (
          <Button label="Take in" disabled={saving.busy} onClick={() => decide(true)} />
        )}
        <Button label="Leave" disabled={saving.busy} onClick={() => decide(false)} />
      </div>
      <TroubleNotice trouble={saving.trouble} />
    </div>
  );
}

function aboutEntry({ entry }: AsideEntry): string {
  if (!entry) return "Something unreadable";
  const known = garage.value.byId.get(entry.record);
  const name = entry.set.name ?? entry.set.text ?? entry.set.what ?? (known && nameOf(known));
  return typeof name === "string" ? `${name} (${kindWord(entry.kind)})` : `A ${kindWord(entry.kind)}`;
}

function WhatItSays({ each: { entry, text, sent_by } }: { each: AsideEntry }) {
  if (!entry) return <pre>{text}</pre>;
  return (
    <dl class="counts">
      {Object.entries(entry.set).map(([field, value]) => (
        <div key={field} class="spread">
          <dt>{fieldWord(entry.kind, field)}</dt>
          <dd>{valueWords(entry.kind, field, value)}</dd>
        </div>
      ))}
      <div class="spread">
        <dt>From</dt>
        <dd>
          {deviceName(entry.device)}, {sayMoment(entry.made_at)}
        </dd>
      </div>
      {sent_by && (
        <div class="spread">
          <dt>Sent by</dt>
          <dd>{deviceName(sent_by)}</dd>
        </div>
      )}
    </dl>
  );
}
