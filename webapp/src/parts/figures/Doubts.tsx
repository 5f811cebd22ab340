/** How sure a mass (or what `show` says) is, source by source, each as wide as it would make it alone (95 %). */
import { showDoubt } from "../../core/numbers/shown";
import type { Uncertain } from "../../core/numbers/uncertain";
import { massUnit } from "../../garage/units";
import { doubtsOf } from "../words/sourceWords";
import "./Doubts.css";

type Props = { mass: Uncertain; unit?: string; show?: (within: number) => string };

export function Doubts({ mass, unit = massUnit(), show = (within) => showDoubt(within, unit) }: Props) {
  const doubts = doubtsOf(mass);
  const widest = doubts[0]?.u ?? 0;
  if (!widest) return <p class="quiet">Nothing is known of how sure this is.</p>;
  return (
    <dl class="doubts">
      {doubts.map(({ words, u, href }) => (
        <div key={words} class="doubt">
          <dt>{href ? <a href={href}>{words}</a> : words}</dt>
          <dd class="num">± {show(2 * u)}</dd>
          <meter class="doubt-bar" min={0} max={widest} value={u} aria-hidden="true" />
        </div>
      ))}
    </dl>
  );
}
