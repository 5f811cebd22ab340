/**
 * A part cut from sheet, worked out before it is cut: material, thickness, shape and holes, and at once what it weighs.
 *
 * Saved, it is a part whose weight is worked out, with the sheet kept beside it, so that it can be opened and changed.
 */
import { useMemo } from "preact/hooks";
import { garage } from "../../garage/garage";
import { newId } from "../../garage/write";
import { Row } from "../../parts/figures/Row";
import { useDraft } from "../../parts/forms/useDraft";
import { NotHere } from "../../parts/frame/NotHere";
import { Screen, Section } from "../../parts/frame/Screen";
import { sheetOf } from "../../parts/sheet/sheetOf";
import { nameOf } from "../../parts/words/naming";
import { type Address, to } from "../../route";
import { Fields, type Going } from "./Fields";
import { emptyForm, formOf, type SheetForm, seenOf } from "./form";

type Props = { part: string; going: Going };

export function Sheet({ id, query }: Address) {
  const part = id || "new";
  const going: Going = { job: query.get("job"), way: query.get("way") === "off" ? "off" : "on" };
  const known = garage.value.one("part", part);
  if (part !== "new" && !known) return <NotHere what="A part" back={to("parts")} />;
  return known ? <OfPart part={part} name={nameOf(known)} going={going} /> : <New going={going} />;
}

function New({ going }: { going: Going }) {
  return (
    <Screen title="From sheet" back={going.job ? to("job", going.job) : to("more")}>
      <Draft part="new" going={going} />
      {!going.job && <Before />}
    </Screen>
  );
}

function OfPart({ part, name, going }: Props & { name: string }) {
  return (
    <Screen title="Cut from sheet" back={going.job ? to("job", going.job) : to("part", part)}>
      <p class="quiet">{name}</p>
      <Draft part={part} going={going} />
    </Screen>
  );
}

function Draft({ part, going }: Props) {
  const start = useMemo(() => () => startOf(part), [part]);
  const { form, change, name } = useDraft<SheetForm>(`sheet:${part}:${going.job ?? ""}`, start, isSaved);
  return form && <Fields form={form} change={change} draft={name} isFixed={part !== "new"} going={going} />;
}

/** What was worked out before, to be opened again. */
function Before() {
  const sheets = garage.value.of("sheet").flatMap(({ values }) => garage.value.one("part", values.part) ?? []);
  const parts = sheets.filter((part) => !part.deleted);
  if (!parts.length) return null;
  return (
    <Section title="Worked out before">
      <div>
        {parts.map((part) => (
          <Row key={part.id} name={nameOf(part)} note={part.values.claim_from} href={to("sheet", part.id)} />
        ))}
      </div>
    </Section>
  );
}

/** The part's own sheet as it is in the records, or an empty one. */
function startOf(part: string): SheetForm {
  const record = garage.value.one("part", part);
  const name = record ? nameOf(record) : "";
  const empty = emptyForm({ sheet: newId(), part: newId() }, { id: record ? part : null, text: name });
  if (!record) return empty;
  const seen = { ...empty, seen: seenOf([record]) };
  const sheet = sheetOf(part);
  const holes = garage.value.of("sheet_hole").filter((hole) => hole.values.sheet === sheet?.id);
  return sheet ? formOf(seen, sheet, holes) : seen;
}

/** A form that made its own sheet and is in the records was saved just before the page was killed. */
function isSaved({ sheet, seen }: SheetForm): boolean {
  return !seen[sheet] && garage.value.byId.has(sheet);
}
