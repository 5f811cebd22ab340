/** Which part the sheet is: a known one, or a new one by its name; and what becomes of what was claimed of it. */
import { known, say } from "../../answers";
import { partOffers } from "../../parts/controls/partOffers";
import { RecordPick } from "../../parts/controls/RecordPick";
import { otherSheet } from "../../parts/sheet/sheetOf";
import { basisWord } from "../../parts/words/basis";
import { to } from "../../route";
import type { SheetForm } from "./form";

type Props = { form: SheetForm; change: (patch: Partial<SheetForm>) => void; isFixed: boolean };

export function WhichPart({ form, change, isFixed }: Props) {
  const id = form.of.id;
  const other = id && otherSheet(id, form.sheet);
  return (
    <div class="stack">
      {!isFixed && (
        <RecordPick
          label="Which part is it?"
          offers={partOffers()}
          value={form.of}
          makes="a new part"
          onValue={(of) => change({ of })}
        />
      )}
      {id && !other && <GivesWay part={id} />}
      {other && (
        <p>
          That part has a sheet already. <a href={to("sheet", id)}>Open that one</a>
        </p>
      )}
    </div>
  );
}

function GivesWay({ part }: { part: string }) {
  const found = known.value.of.get(part);
  if (!found?.mass) return null;
  if (found.basis === "weighed")
    return (
      <p class="small quiet">
        It weighs {say(found.mass)} by the scale. That goes on counting; what is worked out here stands beside it, to
        compare.
      </p>
    );
  return (
    <p class="small quiet">
      What it is put down at now, {say(found.mass)} {basisWord(found.basis)}, gives way to this.
    </p>
  );
}
