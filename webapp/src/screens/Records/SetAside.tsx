/** Entries that were kept but not used, all of them. */

import { type AsideEntry, garage } from "../../garage/garage";
import { save } from "../../garage/write";
import { AsideRow } from "../../parts/conflicts/AsideRow";
import { SaveButton } from "../../parts/forms/SaveButton";
import { Section } from "../../parts/frame/Screen";

export function SetAside() {
  const { aside } = garage.value;
  if (!aside.length) return null;
  return (
    <Section title={`Set aside (${aside.length})`}>
      <p class="small quiet">
        Kept as they came, but not part of the figures. “Leave” takes one off this list; its bytes stay.
      </p>
      <TakeAll strangers={aside.filter(({ reason }) => reason === "stranger")} />
      {aside.map((each) => (
        <AsideRow key={each.id} each={each} />
      ))}
    </Section>
  );
}

/** A device taken off the list that joined again brings everything it wrote meanwhile: one tap for all of it. */
function TakeAll({ strangers }: { strangers: readonly AsideEntry[] }) {
  if (strangers.length < 2) return null;
  const take = () => save(strangers.map(({ id }) => ({ kind: "verdict", set: { entry: id, take: true } })));
  return <SaveButton label={`Take in all ${strangers.length} from devices not in this garage`} onSave={take} />;
}
