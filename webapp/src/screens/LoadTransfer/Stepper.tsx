/** An acceleration in tenths of g, stepped by a gloved thumb. */

import { useId } from "preact/hooks";
import { MINUS } from "../../core/numbers/quantity";
import { Button } from "../../parts/frame/Button";

type Props = { label: string; value: number; least: number; most: number; onValue: (value: number) => void };

/** Tenths as "0.8 g". */
export function inG(tenths: number): string {
  const size = Math.abs(tenths);
  return `${tenths < 0 ? MINUS : ""}${Math.trunc(size / 10)}.${size % 10} g`;
}

export function Stepper({ label, value, least, most, onValue }: Props) {
  const id = useId();
  const step = (by: number) => onValue(Math.min(most, Math.max(least, value + by)));
  return (
    <div class="stepper" role="group" aria-labelledby={id}>
      <span id={id} class="small stepper-label">
        {label}
      </span>
      <Button label="−" aria-label={`${label}: less`} disabled={value <= least} onClick={() => step(-1)} />
      <output class="num stepper-value" aria-live="polite">
        {inG(value)}
      </output>
      <Button label="+" aria-label={`${label}: more`} disabled={value >= most} onClick={() => step(1)} />
    </div>
  );
}
