/** The size of an outline or a hole: a rectangle's two sides, a circle's width, or corners drawn and typed. */
import type { Warned } from "../../core/garage/records";
import { Disclosure } from "../../parts/controls/Disclosure";
import { Choice } from "../../parts/controls/Field";
import { QuantityField } from "../../parts/controls/QuantityField";
import type { Spot } from "../../parts/sheet/geometry";
import { CornerTable } from "./CornerTable";
import type { Cut } from "./form";
import { Pad } from "./Pad";

const FORMS = [
  { value: "rectangle", label: "Rectangle" },
  { value: "circle", label: "Circle" },
  { value: "polygon", label: "Drawn" },
] as const;

type Props = {
  cut: Cut;
  label: string;
  onCut: (patch: Partial<Cut>) => void;
  around?: readonly Spot[];
  /** What is wrong with this shape itself. */
  trouble: Warned | null;
};

export function CutFields({ cut, label, onCut, around, trouble }: Props) {
  return (
    <div class="stack">
      <Choice label={label} value={cut.form} options={FORMS} onValue={(form) => onCut({ form })} />
      {cut.form === "rectangle" && (
        <div class="pair">
          <QuantityField kind="length" label="Width" needed value={cut.width} onValue={(width) => onCut({ width })} />
          <QuantityField
            kind="length"
            label="Height"
            needed
            value={cut.height}
            onValue={(height) => onCut({ height })}
          />
        </div>
      )}
      {cut.form === "circle" && (
        <QuantityField
          kind="length"
          label="Diameter"
          needed
          value={cut.diameter}
          onValue={(diameter) => onCut({ diameter })}
        />
      )}
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
