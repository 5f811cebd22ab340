/** The scale a reading came from: its steps and how true it is, from checks or assumed. */

import { showMass, showPercent } from "../../core/numbers/shown";
import type { ScaleModel } from "../../core/weighing/scale";
import { garage } from "../../garage/garage";
import { massUnit } from "../../garage/units";
import { to } from "../../route";
import { Row } from "../figures/Row";
import { trustWords } from "./trust";

export function OnScale({ model, scale }: { model: ScaleModel | null; scale: string | null | undefined }) {
  const rec = garage.value.one("scale", scale);
  const trust = trustWords(model ?? undefined);
  if (!rec)
    return (
      <Row
        name="No scale was named"
        note="Taken to be rough, and its steps to be the last digit typed."
        value={trust.shown}
        under={trust.from}
      />
    );
  const { name, division = model?.division && showMass(model.division, massUnit()) } = rec.values;
  const steps = division ? `Steps of ${division}` : "Steps not noted: taken to be the last digit typed";
  return (
    <div>
      <Row name={name} note={steps} value={trust.shown} under={trust.from} href={to("scale", rec.id)} />
      {model && <Correction gain={model.gain.value} />}
    </div>
  );
}

/** Why the mass is not quite what the display showed; a correction too small to be shown is not spoken of. */
function Correction({ gain }: { gain: number }) {
  const share = showPercent(Math.abs(gain));
  if (share === showPercent(0)) return null;
  return (
    <p class="small quiet">
      By its checks it shows {share} too {gain > 0 ? "much" : "little"}; that is taken out.
    </p>
  );
}
