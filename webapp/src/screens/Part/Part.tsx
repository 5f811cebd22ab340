/** One part: its mass and how it is known, every reading and photo behind that, where it is, and the jobs that move it. */

import { book, known } from "../../answers";
import { garage } from "../../garage/garage";
import { Unsettled } from "../../parts/conflicts/Unsettled";
import { FOLLOWS, placing, type Zone } from "../../parts/drawing/zones";
import { MassFigure } from "../../parts/figures/MassFigure";
import { Row } from "../../parts/figures/Row";
import { FieldOf, FieldsOf } from "../../parts/forms/FieldOf";
import { FormDock } from "../../parts/forms/FormDock";
import { type Form, useForm } from "../../parts/forms/form";
import { ButtonLink } from "../../parts/frame/Button";
import { NotHere } from "../../parts/frame/NotHere";
import { Notice } from "../../parts/frame/Notice";
import { Screen, Section } from "../../parts/frame/Screen";
import { Warnings } from "../../parts/frame/Warnings";
import { RecordPhotos } from "../../parts/photos/RecordPhotos";
import { sheetOf } from "../../parts/sheet/sheetOf";
import { Learned } from "../../parts/weighing/Learned";
import { Readings } from "../../parts/weighing/Readings";
import { basisWord } from "../../parts/words/basis";
import { stateWord } from "../../parts/words/jobStates";
import { place, to } from "../../route";
import { Place } from "./Place";
import { WorkedOut } from "./WorkedOut";

const SHOWN = ["name", "count", "whereabouts", "box", "zone", "with_bolts", "unsprung", "rotating", "note"];

export function Part({ id }: { id: string }) {
  const form = useForm("part", id);
  if (form.isNew) return <NotHere what="A part" back={to("parts")} />;
  return (
    <Screen title={form.text("name")} back={to("parts")}>
      {place.value.query.get("saved") && (
        <Notice sort="saved">
          <p>
            <strong>Saved on this phone.</strong>
          </p>
        </Notice>
      )}
      <Unsettled of={id} shown={SHOWN} />
      <MassOf id={id} />
      <div class="two-columns">
        <div class="stack">
          <WorkedOut part={id} from={form.text("claim_from")} />
          <Section title="Readings">
            <Readings of={id} back={to("part", id)} />
          </Section>
          <RecordPhotos of={id} />
          <UsedIn part={id} />
        </div>
        <Details form={form} />
      </div>
      <FormDock form={form} remove={{ label: "Delete this part", next: to("parts") }} />
    </Screen>
  );
}

function MassOf({ id }: { id: string }) {
  const found = known.value.of.get(id);
  const { count, claim, claim_within } = book.value.parts.get(id) ?? {};
  const lesson = claim && !claim_within && found?.basis && known.value.lessons[found.basis];
  return (
    <div class="stack">
      {found?.mass && <MassFigure mass={found.mass} />}
      <p class="quiet">
        {(count ?? 1) > 1 ? `each of ${count}, ` : ""}
        {basisWord(found?.basis)}
        {lesson && `, typed ${claim.reads}`}
      </p>
      {lesson && <Learned of={lesson} />}
      <Warnings of={found?.warnings ?? []} />
    </div>
  );
}

function UsedIn({ part }: { part: string }) {
  const lines = garage.value.of("job_part").filter((line) => line.values.part === part);
  if (!lines.length) return null;
  return (
    <Section title="Moved by">
      <div>
        {lines.map(({ id, values: { way, job } }) => {
          const { name, state } = garage.value.one("job", job)?.values ?? {};
          const note = `${way === "on" ? "goes on" : "comes off"} · ${stateWord(state)}`;
          return name && <Row key={id} name={name} note={note} href={to("job", job!)} />;
        })}
      </div>
    </Section>
  );
}

const FROM_SHEET = "Of one piece, from its sheet: change the sheet, and this follows.";

function setZone(form: Form<"part">, zone: string): void {
  const set = zone ? placing(zone as Zone, form.values) : { zone: null };
  for (const [name, value] of Object.entries(set)) form.set(name as keyof typeof set, value);
}

function Details({ form }: { form: Form<"part"> }) {
  return (
    <div class="stack">
      <FieldOf form={form} name="name" />
      <FieldOf form={form} name="count" />
      <FieldOf form={form} name="claim" hint={sheetOf(form.id) ? FROM_SHEET : undefined} />
      {!form.changed && !sheetOf(form.id) && (
        <ButtonLink look="wide" label="Work it out from sheet" href={to("sheet", form.id)} />
      )}
      {form.text("claim") && <FieldsOf form={form} names={["claim_basis", "claim_within", "claim_from"]} />}
      <FieldOf form={form} name="whereabouts" />
      <FieldOf form={form} name="box" />
      {form.values.whereabouts === "sold" && <FieldOf form={form} name="sold_for" />}
      <FieldOf form={form} name="zone" hint={FOLLOWS} onValue={(zone) => setZone(form, zone)} />
      <Place form={form} />
      <FieldsOf form={form} names={["with_bolts", "unsprung", "rotating", "note"]} />
    </div>
  );
}
