/** What the sheet comes to: its mass and how sure that is, the area, and what a gauge table would say. */

import { showLength, showMass, showPercent, showPlain } from "../../core/numbers/shown";
import { showArea } from "../../core/numbers/shownLater";
import { expanded, type Uncertain } from "../../core/numbers/uncertain";
import { listedOver, type SheetMass } from "../../core/sheet/sheet";
import { massUnit, unitOf } from "../../garage/units";
import { Disclosure } from "../../parts/controls/Disclosure";
import { Doubts } from "../../parts/figures/Doubts";
import { type Fact, Facts } from "../../parts/figures/Facts";
import { MassFigure } from "../../parts/figures/MassFigure";
import { Warnings } from "../../parts/frame/Warnings";

export function Outcome({ found }: { found: SheetMass }) {
  return (
    <div class="stack" aria-live="polite">
      <MassFigure mass={found.mass} />
      <Facts rows={factsOf(found)} />
      <Disclosure title="What the ± is made of">
        <Doubts mass={found.mass} />
      </Disclosure>
      <Warnings of={found.warnings} />
    </div>
  );
}

/** One density typed alone stands as it was typed. */
function densityWords(density: Uncertain): string {
  const U = expanded(density);
  return U ? showPlain(density.value, "kg/m³", U) : `${density.value} kg/m³`;
}

function factsOf(found: SheetMass): Fact[] {
  const { area, thickness, density, listed } = found;
  const unit = unitOf("length");
  const facts: Fact[] = [
    { name: "Area", value: showArea(area.value, unit, expanded(area)) },
    { name: "Thickness reckoned with", value: showLength(thickness.value, unit, expanded(thickness)) },
    { name: "Density reckoned with", value: densityWords(density) },
  ];
  if (listed === null) return facts;
  const over = listedOver(found);
  const under = over === null ? "as worked out" : `${showPercent(over)} more than worked out`;
  return [...facts, { name: "A gauge table lists", value: showMass(listed, massUnit()), under }];
}
