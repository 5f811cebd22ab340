/** The holes: each a shape like the outline, and how often it is cut. */

import type { Warned } from "../../core/garage/records";
import { newId } from "../../garage/write";
import { own } from "../../own";
import { FieldOf } from "../../parts/forms/FieldOf";
import { filled } from "../../parts/forms/form";
import { Button } from "../../parts/frame/Button";
import type { Spot } from "../../parts/sheet/geometry";
import { CutFields } from "./CutFields";
import { type Cut, emptyCut, type SheetForm } from "./form";
import { troubleWords } from "./worked";

const MOST = 40;

type Props = {
  form: SheetForm;
  change: (patch: Partial<SheetForm>) => void;
  around: readonly Spot[];
  trouble: Warned | null;
};

export function Holes({ form, change, around, trouble }: Props) {
  const put = (at: number, patch: Partial<Cut>) =>
    change({ holes: form.holes.map((hole, place) => (place === at ? { ...hole, ...patch } : hole)) });
  const close = ({ id }: Cut) =>
    change({
      holes: form.holes.filter((hole) => hole.id !== id),
      closed: own(form.seen, id) ? [...form.closed, id] : form.closed,
    });
  return (
    <div class="stack">
      {form.holes.map((hole, at) => (
        <fieldset key={hole.id} class="hole-fields stack">
          <legend class="label">Hole {at + 1}</legend>
          <CutFields
            cut={hole}
            label="Its shape"
            around={around}
            trouble={ofHole(trouble, at + 1)}
            onCut={(patch) => put(at, patch)}
          />
          <FieldOf
            form={filled("sheet_hole", hole, (patch) => put(at, patch))}
            name="count"
            onValue={(text) => put(at, { count: Number(text) || 1 })}
          />
          {hole.form !== "polygon" && ofHole(trouble, at + 1) && (
            <p class="trouble" role="status">
              {troubleWords(trouble!)}
            </p>
          )}
          <Button look="plain" label={`Leave out hole ${at + 1}`} onClick={() => close(hole)} />
        </fieldset>
      ))}
      <Button
        look="wide"
        label="Add a hole"
        disabled={form.holes.length >= MOST}
        onClick={() => change({ holes: [...form.holes, emptyCut(newId(), "circle")] })}
      />
    </div>
  );
}

/** The trouble when it is of this hole. */
function ofHole(trouble: Warned | null, number: number): Warned | null {
  const { shape, hole, other } = trouble?.data ?? {};
  return [shape, hole, trouble?.code === "sheet_holes_overlap" ? other : null].includes(number) ? trouble : null;
}
