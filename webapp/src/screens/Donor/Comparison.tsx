/** Yours, this one, what it saves, and where that leaves the car: said in words and shown on the arm. */
import { type Lists, say, stand } from "../../answers";
import type { Comparison as Compared } from "../../core/ledger/compare";
import { showMass } from "../../core/numbers/shown";
import { expanded } from "../../core/numbers/uncertain";
import { marginSentence } from "../../core/standing/sentences";
import { massUnit } from "../../garage/units";
import { armOf } from "../../parts/figures/arm";
import { Steelyard } from "../../parts/figures/Steelyard";
import { standingWith } from "./swap";

/** `over`: records of this part that are not saved yet. */
export function Comparison({ found, over }: { found: Compared; over?: Lists }) {
  const { this: it, that, whole, count } = found;
  if (!it?.mass) return null;
  if (!that?.mass || !whole)
    return (
      <p>
        This <span class="num">{say(it.mass)}</span>. Choose the part it would replace to see what it saves.
      </p>
    );
  const size = showMass(Math.abs(whole.value), massUnit(), expanded(whole));
  const change = `${whole.value <= 0 ? "saves" : "adds"} ${size}`;
  const each = count > 1 ? ` each, ${count} of them` : "";
  const pieces = [`Yours ${say(that.mass)}`, `this ${say(it.mass)}${each}`, change];
  const then = standingWith(found, over);
  const margin = then?.margin ? marginSentence(then, massUnit()) : null;
  return (
    <div class="stack" aria-live="polite">
      <p class="compared">
        {pieces.map((piece, i) => (
          <span key={piece} class="num">
            {piece}
            {i < pieces.length - 1 && " · "}
          </span>
        ))}
      </p>
      {margin && (
        <p class={margin.code === "under" ? "under" : undefined}>With it on the car: {lowered(margin.text)}.</p>
      )}
      <Steelyard
        {...armOf(stand.value)}
        weighIns={[]}
        then={then?.weight?.value ?? null}
        small
        label={pieces.join(" · ")}
      />
    </div>
  );
}

const lowered = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
