/** What counts and names another device than is proven to have sent it: whoever has to rely on it is told who did. */

import { type Described, describe } from "../../errors";
import "../../laterErrors";
import { type Unproven as Found, garage } from "../../garage/garage";
import { Section } from "../../parts/frame/Screen";
import { deviceName } from "../../parts/words/deviceNames";
import { kindWord, nameOf } from "../../parts/words/naming";

export function Unproven() {
  const told = new Map(garage.value.unproven().map(tell));
  const [first] = told.values();
  if (!first) return null;
  return (
    <Section title={`Not proven who wrote it (${told.size})`}>
      <p class="small quiet">{first.do}</p>
      <ul>
        {[...told.keys()].map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </Section>
  );
}

/** What is said of it, once for all entries of which the same is said. */
function tell({ entry, sent_by }: Found): [string, Described] {
  const rec = garage.value.byId.get(entry.record);
  const author = deviceName(entry.device, "the device it names");
  const described = describe("unproven", { sender: deviceName(sent_by), author });
  return [`${rec ? nameOf(rec) : "A record"} (${kindWord(entry.kind)}): ${described.sentence}`, described];
}
