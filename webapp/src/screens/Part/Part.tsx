/** One part: its mass and how it is known, every reading and photo behind that, where it is, and the jobs that move it. */
import { book, known } from "../../answers";
import { ZONES } from "../../generated/kinds";
import { garage } from "../../journal/garage";
import { Choice, Pick, TextField, Tick } from "../../parts/controls/Field";
import { QuantityField } from "../../parts/controls/QuantityField";
import { MassFigure } from "../../parts/figures/MassFigure";
import { Row } from "../../parts/figures/Row";
import { FormDock } from "../../parts/forms/FormDock";
import { type Form, useForm } from "../../parts/forms/form";
import { NotHere } from "../../parts/frame/NotHere";
import { Notice } from "../../parts/frame/Notice";
import { Screen, Section } from "../../parts/frame/Screen";
import { Warnings } from "../../parts/frame/Warnings";
import { photosOf, RecordPhotos } from "../../parts/photos/RecordPhotos";
import { sheetOf } from "../../parts/sheet/sheetOf";
import { Readings } from "../../parts/weighing/Readings";
import { basisWord } from "../../parts/words/basis";
import { stateWord } from "../../parts/words/jobStates";
import { unitOf } from "../../parts/words/units";
import { place, to } from "../../route";
import { Place } from "./Place";
import { WorkedOut } from "./WorkedOut";

const PLACES = [
  { value: "car", label: "On the car" },
  { value: "shelf", label: "On the shelf" },
  { value: "yard", label: "At the yard" },
  { value: "left", label: "Left there" },
  { value: "sold", label: "Sold" },
  { value: "scrapped", label: "Scrapped" },
];
const BASES = [
  { value: "guessed", label: "Guessed" },
  { value: "quoted", label: "Quoted" },
  { value: "worked_out", label: "Worked out" },
];
const ZONE_OPTIONS = ZONES.map((zone) => ({ value: zone as string, label: zone }));

export function Part({ id }: { id: string }) {
  const form = useForm("part", id);
  const readings = known.value.of.get(id)?.readings ?? [];
  const shots = readings.map((reading) => reading.weighing);
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
      <MassOf id={id} />
      <div class="two-columns">
        <div class="stack">
          <WorkedOut part={id} from={form.text("claim_from")} />
          <Section title="Readings">
            <Readings of={id} back={to("part", id)} />
          </Section>
          <Section title={`Photos${photosOf(id, ...shots).length ? "" : ": none yet"}`}>
            <RecordPhotos of={id} also={shots} />
          </Section>
          <UsedIn part={id} />
        </div>
        <Details form={form} />
      </div>
      <FormDock
        form={form}
        missing={form.text("name").trim() ? null : "Give it a name."}
        remove={{
          label: "Delete this part",
          warning: "Jobs that move it lose it, and its readings no longer count. Delete it?",
          next: to("parts"),
        }}
      />
    </Screen>
  );
}

function MassOf({ id }: { id: string }) {
  const found = known.value.of.get(id);
  const count = book.value.parts.get(id)?.count ?? 1;
  return (
    <div class="stack">
      {found?.mass && <MassFigure mass={found.mass} />}
      <p class="quiet">
        {count > 1 ? `each of ${count}, ` : ""}
        {basisWord(found?.basis)}
      </p>
      <Warnings of={found?.warnings ?? []} />
    </div>
  );
}

function UsedIn({ part }: { part: string }) {
  const lines = garage.value.of("job_part").filter((line) => line.values["part"] === part);
  if (!lines.length) return null;
  return (
    <Section title="Moved by">
      <div>
        {lines.map((line) => {
          const job = garage.value.byId.get(String(line.values["job"]));
          return (
            job && (
              <Row
                key={line.id}
                name={String(job.values["name"])}
                note={`${line.values["way"] === "on" ? "goes on" : "comes off"} · ${stateWord(job.values["state"])}`}
                href={to("job", job.id)}
              />
            )
          );
        })}
      </div>
    </Section>
  );
}

/** Digits only: whatever else is typed leaves the number as it can be read. */
function toCount(text: string): number | null {
  const digits = text.replace(/\D/g, "").slice(0, 3);
  return Number(digits) || null;
}

function Details({ form }: { form: Form }) {
  return (
    <div class="stack">
      <TextField label="Name" value={form.text("name")} onValue={(value) => form.set("name", value)} most={120} />
      <TextField
        label="Pieces like it"
        mode="numeric"
        value={form.text("count")}
        onValue={(value) => form.set("count", toCount(value))}
        hint="A whole number, 1 to 999."
      />
      <QuantityField
        kind="mass"
        unit={unitOf("mass")}
        label="Weight, until it is weighed"
        value={form.text("claim")}
        onValue={(value) => form.set("claim", value)}
        hint={
          sheetOf(form.id)
            ? "Of one piece, from its sheet: change the sheet, and this follows."
            : "Of one piece. A weighing always counts before this."
        }
      />
      {!form.changed && !sheetOf(form.id) && (
        <a class="button wide" href={to("sheet", form.id)}>
          Work it out from sheet
        </a>
      )}
      {form.text("claim") && (
        <>
          <Choice
            label="That weight is"
            value={form.text("claim_basis")}
            options={BASES}
            onValue={(value) => form.set("claim_basis", value)}
          />
          <QuantityField
            kind="mass"
            unit={unitOf("mass")}
            label="Good to within"
            value={form.text("claim_within")}
            onValue={(value) => form.set("claim_within", value)}
          />
          <TextField
            label="Says who"
            value={form.text("claim_from")}
            onValue={(value) => form.set("claim_from", value)}
            hint="A brochure, a seller, a friend's car."
          />
        </>
      )}
      <Choice
        label="Where it is"
        value={form.text("whereabouts")}
        options={PLACES}
        onValue={(value) => form.set("whereabouts", value)}
      />
      <TextField label="Box or shelf" value={form.text("box")} onValue={(value) => form.set("box", value)} most={80} />
      {form.text("whereabouts") === "sold" && (
        <TextField
          label="Sold for"
          mode="decimal"
          value={form.text("sold_for")}
          onValue={(value) => form.set("sold_for", value)}
        />
      )}
      <Pick
        label="Where in the car"
        value={form.text("zone")}
        options={ZONE_OPTIONS}
        none="Not said"
        onValue={(value) => form.set("zone", value)}
      />
      <Place form={form} />
      <Tick
        label="Weighed with its bolts"
        value={form.values["with_bolts"] === true}
        onValue={(value) => form.set("with_bolts", value)}
      />
      <Tick
        label="Unsprung (wheel, brake, hub)"
        value={form.values["unsprung"] === true}
        onValue={(value) => form.set("unsprung", value)}
      />
      <Tick
        label="Rotating"
        value={form.values["rotating"] === true}
        onValue={(value) => form.set("rotating", value)}
      />
      <TextField
        label="Notes"
        long
        value={form.text("note")}
        onValue={(value) => form.set("note", value)}
        most={4000}
      />
    </div>
  );
}
