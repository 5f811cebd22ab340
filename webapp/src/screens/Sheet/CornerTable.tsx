/** The corners of an outline as text: how far across from the left, how far up from the bottom. */

import type { CornerText } from "../../core/sheet/sheetCorners";
import { MOST_CORNERS } from "../../core/sheet/sheetOutline";
import { QuantityField } from "../../parts/controls/QuantityField";
import { Button } from "../../parts/frame/Button";

type Props = { corners: readonly CornerText[]; onCorners: (corners: CornerText[]) => void };

export function CornerTable({ corners, onCorners }: Props) {
  const put = (at: number, corner: CornerText) =>
    onCorners(corners.map((each, place) => (place === at ? corner : each)));
  return (
    <div class="stack">
      <p class="small quiet">
        Measured from the lower left: across to the right, and up. One after the other around the edge.
      </p>
      {corners.map(([across, up], at) => (
        <div key={at} class="corner-row">
          <QuantityField
            kind="length"
            label={`Corner ${at + 1}, across`}
            value={across}
            onValue={(text) => put(at, [text, up])}
          />
          <QuantityField
            kind="length"
            label={`Corner ${at + 1}, up`}
            value={up}
            onValue={(text) => put(at, [across, text])}
          />
          <Button
            look="plain"
            label="Out"
            aria-label={`Take out corner ${at + 1}`}
            onClick={() => onCorners(corners.filter((_, place) => place !== at))}
          />
        </div>
      ))}
      <Button
        look="wide"
        label="Add a corner"
        disabled={corners.length >= MOST_CORNERS}
        onClick={() => onCorners([...corners, ["", ""]])}
      />
    </div>
  );
}
