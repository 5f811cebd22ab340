/** How sure a mass is, source by source, each as wide as it would make the mass alone (95 %). */
import { showDoubt } from "../core/shown";
import type { Uncertain } from "../core/uncertain";
import { doubtsOf } from "./sourceWords";
import { massUnit } from "./units";
import "./Doubts.css";

export function Doubts({ mass, unit = massUnit() }: { mass: Uncertain; unit?: string }) {
  const doubts = doubtsOf(mass);
  const widest = doubts[0]?.u ?? 0;
  if (!widest) return <p class="quiet">Nothing is known of how sure this is.</p>;
  return (
    <dl class="doubts">
      {doubts.map(({ words, u, href }) => (
        <div key={words} class="doubt">
          <dt>{href ? <a href={href}>{words}</a> : words}</dt>
          <dd class="num">± {showDoubt(2 * u, unit)}</dd>
          <meter class="doubt-bar" min={0} max={widest} value={u} aria-hidden="true" />
        </div>
      ))}
    </dl>
  );
}
