/** The size of an outline or a hole: a rectangle's two sides, a circle's width, or corners drawn and typed. */
import type { Warned } from "../../core/garage/records";
import { Disclosure } from "../../parts/controls/Disclosure";
import { FieldOf } from "../../parts/forms/FieldOf";
import { filled } from "../../parts/forms/form";
import type { Spot } from "../../parts/sheet/geometry";
import { CornerTable } from "./CornerTable";
import type { Cut } from "./form";
import { Pad } from "./Pad";

type Props = {
  cut: Cut;
  label: string;
  onCut: (patch: Partial<Cut>) => void;
  around?: readonly Spot[];
  /** What is wrong with this shape itself. */
  trouble: Warned | null;
};

export function CutFields({ cut, label, onCut, around, trouble }: Props) {
  const shape = filled("sheet_hole", cut, onCut);
  return (
    <div class="stack">
      <FieldOf form={shape} name="form" label={label} />
      {cut.form === "rectangle" && (
        <div class="pair">
          <FieldOf form={shape} name="width" needed />
          <FieldOf form={shape} name="height" needed />
        </div>
      )}
      {cut.form === "circle" && <FieldOf form={shape} name="diameter" needed />}
      {cut.form === "polygon" && (
        <>
          <Pad corners={cut.corners} around={around} trouble={trouble} onCorners={(corners) => onCut({ corners })} />
          <Disclosure title={`Corners as a table (${cut.corners.length})`}>
            <CornerTable corners={cut.corners} onCorners={(corners) => onCut({ corners })} />
          </Disclosure>
        </>
      )}
    </div>
  );
}
