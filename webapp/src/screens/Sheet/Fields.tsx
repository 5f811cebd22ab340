/** The fields of a sheet in the order of the work, what they come to, the cautions, and saving it all as a part. */
import { car } from "../../answers";
import { showMass } from "../../core/numbers/shown";
import { showArea } from "../../core/numbers/shownLater";
import { expanded } from "../../core/numbers/uncertain";
import { claimOf } from "../../core/sheet/sheetClaim";
import { outlineTrouble } from "../../core/sheet/sheetOutline";
import { massUnit, unitOf } from "../../garage/units";
import { save } from "../../garage/write";
import { own } from "../../own";
import { FieldOf } from "../../parts/forms/FieldOf";
import { filled } from "../../parts/forms/form";
import { SaveDock } from "../../parts/forms/SaveDock";
import { Notice } from "../../parts/frame/Notice";
import { Section } from "../../parts/frame/Screen";
import { edgeOf } from "../../parts/sheet/geometry";
import { SheetDrawing } from "../../parts/sheet/SheetDrawing";
import { otherSheet } from "../../parts/sheet/sheetOf";
import { replace, to } from "../../route";
import { CutFields } from "./CutFields";
import { cautionsFor } from "./cautions";
import { changesOf, partOf } from "./changes";
import type { SheetForm } from "./form";
import { Holes } from "./Holes";
import { Outcome } from "./Outcome";
import { Stock } from "./Stock";
import { WhichPart } from "./WhichPart";
import { drawable, isBlank, missing, troubleWords, type Worked, workedOut } from "./worked";
import "./Sheet.css";

/** The job the part goes into once it is saved, and which way; none when it only becomes a part. */
export type Going = { job: string | null; way: "on" | "off" };

type Props = {
  form: SheetForm;
  change: (patch: Partial<SheetForm>) => void;
  draft: string;
  isFixed: boolean;
  going: Going;
};

export function Fields({ form, change, draft, isFixed, going }: Props) {
  const unit = unitOf("length");
  const worked = workedOut(form, unit);
  const piece = drawable(form, unit);
  const crossed = piece && outlineTrouble([piece.outline]); // said while it is drawn, whatever else is missing
  const keep = async () => {
    const claim = claimOf(worked.piece!, worked.found!, massUnit(), unit);
    await save(changesOf(form, claim, { car: car.value?.id ?? null, lengthUnit: unit, ...going }), [], draft);
    replace(going.job ? to("job", going.job) : to("part", partOf(form), { saved: "sheet" }));
  };
  return (
    <div class="sheet-form">
      <div>
        <Section title="Stock">
          <Stock form={form} change={change} />
        </Section>
        <Section title="Shape">
          <CutFields
            cut={form.outline}
            label="Its outline"
            trouble={crossed}
            onCut={(patch) => change({ outline: { ...form.outline, ...patch } })}
          />
        </Section>
        <Section title="Holes">
          <Holes form={form} change={change} around={piece ? edgeOf(piece.outline) : []} trouble={worked.trouble} />
        </Section>
        <Section title="How well it is cut">
          <FieldOf form={filled("sheet", form, change)} name="within" />
        </Section>
      </div>
      <div class="sheet-result">
        <Section title="What it comes to">
          {piece && <SheetDrawing piece={piece} trouble={crossed} label="The sheet, drawn to scale" />}
          <Result form={form} worked={worked} />
        </Section>
        <Section title="Care">
          <Notice sort="caution">
            {cautionsFor(form.material).map((words) => (
              <p key={words} class="small">
                {words}
              </p>
            ))}
          </Notice>
        </Section>
        <Section title="The part">
          <WhichPart form={form} change={change} isFixed={isFixed} />
        </Section>
      </div>
      <SaveDock
        label={own(form.seen, form.sheet) ? "Save the change" : "Save as a part"}
        missing={lacking(form, unit)}
        onSave={keep}
      >
        {worked.found && <InShort worked={worked} />}
      </SaveDock>
    </div>
  );
}

function lacking(form: SheetForm, unit: string): string | null {
  const other = form.of.id && otherSheet(form.of.id, form.sheet);
  return missing(form, unit) ?? (other ? "That part has a sheet already: open that one." : null);
}

function Result({ form, worked: { found, trouble } }: { form: SheetForm; worked: Worked }) {
  if (found) return <Outcome found={found} />;
  if (isBlank(form)) return <p class="quiet">Type its size and thickness, or draw it.</p>;
  return (
    trouble && (
      <p class="trouble" role="status">
        {troubleWords(trouble)}
      </p>
    )
  );
}

/** The result where the thumb is, while the fields are filled. */
function InShort({ worked: { found } }: { worked: Worked }) {
  const { mass, area } = found!;
  return (
    <p class="sheet-short num">
      <strong class="brass">{showMass(mass.value, massUnit(), expanded(mass))}</strong>{" "}
      <span class="quiet">{showArea(area.value, unitOf("length"))}</span>
    </p>
  );
}
