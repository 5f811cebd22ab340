/** Yours, this one, what it saves: said in words and shown on the arm. */
import { massUnit } from "../../parts/units";
import { say, stand } from "../../answers";
import type { Comparison as Compared } from "../../core/compare";
import { showMass } from "../../core/shown";
import { expanded } from "../../core/uncertain";
import { Steelyard } from "../../parts/Steelyard";
import { armOf } from "../Car/arm";

/** The two masses without their doubt, the saving with it: that is what is read at arm's length. */
const plainly = (kg: number) => showMass(kg, massUnit());

export function Comparison({ found }: { found: Compared }) {
  const { this: it, that, whole, count } = found;
  if (!it?.mass) return null;
  if (!that?.mass || !whole) return <p class="num">This {say(it.mass)}. Choose the part it would replace to see what it saves.</p>;
  const arm = armOf(stand.value);
  const verb = whole.value <= 0 ? "saves" : "adds";
  const each = count > 1 ? `, ${count} of them` : "";
  const words = `Yours ${plainly(that.mass.value)} · this ${plainly(it.mass.value)}${each} · ${verb} ${plainly(Math.abs(whole.value))}`;
  return (
    <div class="stack" aria-live="polite">
      <p class="compared"><strong>{words.split(" · ").map((piece, i) => <span key={piece} class="num">{i > 0 && " · "}{piece}</span>)}</strong></p>
      <p class="small quiet num">{verb} {showMass(Math.abs(whole.value), massUnit(), expanded(whole))}</p>
      <Steelyard {...arm} weighIns={[]} then={arm.now ? arm.now.value + whole.value : null} small label={words} />
    </div>
  );
}
