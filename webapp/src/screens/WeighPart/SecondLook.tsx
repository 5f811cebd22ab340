/** What is odd about a reading, said before it is saved; it is kept either way. */
import { known, say } from "../../answers";
import { showMass } from "../../core/numbers/shown";
import type { Uncertain } from "../../core/numbers/uncertain";
import { farFrom } from "../../core/weighing/far";
import { massUnit } from "../../garage/units";
import { Notice } from "../../parts/frame/Notice";
import { Warnings } from "../../parts/frame/Warnings";
import type { PartForm } from "../../parts/weighPart/form";
import { asTyped } from "../../parts/weighPart/Net";

export function SecondLook({ form, replaces }: { form: PartForm; replaces: string | null }) {
  const read = asTyped(form);
  if (!read) return null;
  const before = form.of.id && !replaces ? known.value.of.get(form.of.id) : null;
  const earlier = before?.basis === "weighed" ? before.mass : null;
  const far = earlier && read.reading ? farFrom(earlier, read.reading.mass) : null;
  return (
    <>
      <Warnings of={read.warnings} />
      {far && earlier && <Far earlier={earlier} far={far} />}
    </>
  );
}

function Far({ earlier, far }: { earlier: Uncertain; far: Uncertain }) {
  return (
    <Notice sort="caution">
      <p>
        <strong>
          Until now it weighed {say(earlier)}; this is {showMass(Math.abs(far.value), massUnit())}{" "}
          {far.value > 0 ? "more" : "less"}.
        </strong>
      </p>
      <p>Look at the display again, and at what else is on the scale. It is kept either way.</p>
    </Notice>
  );
}
