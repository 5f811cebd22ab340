/** A part that was worked out: the sheet it is cut from, drawn, and once it is weighed, the one against the other. */

import { book, known, say } from "../../answers";
import { QuantityError } from "../../core/numbers/quantity";
import type { Piece } from "../../core/sheet/sheet";
import { pieceOf } from "../../core/sheet/sheetPiece";
import { type Against, against, againstSentence } from "../../core/weighing/workedOut";
import { describe } from "../../errors";
import { massUnit } from "../../garage/units";
import type { Rec } from "../../journal/types";
import { Facts } from "../../parts/figures/Facts";
import { ButtonLink } from "../../parts/frame/Button";
import { Notice } from "../../parts/frame/Notice";
import { Section } from "../../parts/frame/Screen";
import { SheetDrawing } from "../../parts/sheet/SheetDrawing";
import { sheetOf } from "../../parts/sheet/sheetOf";
import { to } from "../../route";

export function WorkedOut({ part, from }: { part: string; from: string }) {
  const record = book.value.parts.get(part);
  const mass = known.value.of.get(part);
  const compared = record && mass ? against(record, mass) : null;
  const sheet = sheetOf(part);
  if (!compared && !sheet) return null;
  return (
    <Section title={sheet ? "Worked out from sheet" : "Worked out and weighed"}>
      {compared && <Compared found={compared} from={from} />}
      {sheet && <Drawn sheet={sheet} part={part} />}
    </Section>
  );
}

function Compared({ found, from }: { found: Against; from: string }) {
  return (
    <div class="stack">
      <Notice sort={found.beyond ? "caution" : "plain"}>
        <p>{againstSentence(found, massUnit())}</p>
      </Notice>
      <Facts
        rows={[
          { name: "Worked out", value: say(found.worked_out), under: from },
          { name: "Weighed", value: say(found.weighed) },
          { name: "Difference", value: say(found.difference, true) },
        ]}
      />
    </div>
  );
}

function Drawn({ sheet, part }: { sheet: Rec<"sheet">; part: string }) {
  const piece = pieceRead(sheet.id);
  return (
    <div class="stack">
      {piece && "outline" in piece ? (
        <SheetDrawing piece={piece} label="The sheet, drawn to scale" />
      ) : (
        piece && <p>{piece.sentence}</p>
      )}
      <ButtonLink look="wide" label="Change the sheet" href={to("sheet", part)} />
    </div>
  );
}

/** The piece of a sheet's records, or what cannot be read of them. */
function pieceRead(id: string): Piece | { sentence: string } | null {
  const record = book.value.sheets.get(id);
  try {
    return record ? pieceOf(record, book.value.holes_of.get(id)) : null;
  } catch (error) {
    if (error instanceof QuantityError) return { sentence: describe(error.code, error.data).sentence };
    throw error;
  }
}
