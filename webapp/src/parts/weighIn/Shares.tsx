/** Where the weight rests: front, left and cross, each with how sure it is, as far as the readings tell. */
import "./Shares.css";
import { showPercent } from "../../core/numbers/shown";
import { expanded } from "../../core/numbers/uncertain";
import type { Loads } from "../../core/wholeCar/weighIn";

const WORDS = { front: "Front", left: "Left", cross: "Cross" } as const;

export function Shares({ loads }: { loads: Loads }) {
  const known = (["front", "left", "cross"] as const).flatMap((name) => {
    const share = loads.shares[name];
    return share ? [{ name, share }] : [];
  });
  if (!known.length) return null;
  return (
    <dl class="shares">
      {known.map(({ name, share }) => (
        <div key={name}>
          <dt>{WORDS[name]}</dt>
          <Share text={showPercent(share.value, expanded(share))} />
        </div>
      ))}
    </dl>
  );
}

/** "54.35 ± 0.03 %" on two lines: three of them stand side by side on a phone. */
function Share({ text }: { text: string }) {
  const [value, within] = text.split(" ± ");
  if (within === undefined) return <dd class="num">{text}</dd>;
  return (
    <dd class="num">
      {value} %<span class="sure">± {within}</span>
    </dd>
  );
}
