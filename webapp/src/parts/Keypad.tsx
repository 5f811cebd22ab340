/**
 * The keypad for gloves: a ruled sheet of keys, none narrower or lower than 64 px, wherever a quantity is typed.
 *
 * It writes into whatever owns it through `onKey`; a real keyboard writes into the same field beside it. Keys never take
 * the focus, so the field keeps its caret and the phone's own keyboard stays away.
 */
import type { ComponentChildren } from "preact";
import "./Keypad.css";
import { Icon } from "./Icon";
import type { Key } from "./typing";

type Props = {
  /** The words for units, as they are written into the text: at most four. */
  units: readonly string[];
  /** The unit the number has now, written or understood. */
  unit: string | null;
  fractions: boolean;
  onKey: (key: Key) => void;
};

const DIGITS = [["7", "8", "9"], ["4", "5", "6"], ["1", "2", "3"]];
const COLUMN_FRACTIONS = ["1/2", "1/4", "3/4", "1/8"];
const ROW_FRACTIONS = ["3/8", "5/8", "7/8"];

export function Keypad({ units, unit, fractions, onKey }: Props) {
  const unitKey = (row: number) => {
    const each = units[row];
    if (!each) return <span class="key blank" aria-hidden="true" />;
    return (
      <button type="button" class="key unit" tabIndex={-1} aria-pressed={each === unit} onClick={() => onKey({ sort: "unit", text: each })}>
        {each}
      </button>
    );
  };
  const fractionKey = (text: string) => <KeyCap label={text} spoken={spoken(text)} small onTap={() => onKey({ sort: "fraction", text })} />;
  const writes = (text: string) => <KeyCap label={text} onTap={() => onKey({ sort: "write", text })} />;
  return (
    <div class={fractions ? "keypad with-fractions" : "keypad"} role="group" aria-label="Keypad" onMouseDown={(event) => event.preventDefault()}>
      {DIGITS.map((row, i) => (
        <>
          {row.map(writes)}
          {unitKey(i)}
          {fractions && fractionKey(COLUMN_FRACTIONS[i]!)}
        </>
      ))}
      <KeyCap label="." spoken="Point" onTap={() => onKey({ sort: "write", text: "." })} />
      {writes("0")}
      <KeyCap label={<Icon name="erase" />} spoken="Erase" onTap={() => onKey({ sort: "erase" })} />
      {unitKey(3)}
      {fractions && fractionKey(COLUMN_FRACTIONS[3]!)}
      {fractions && ROW_FRACTIONS.map(fractionKey)}
      {fractions && <KeyCap label="space" small onTap={() => onKey({ sort: "write", text: " " })} />}
      {fractions && <KeyCap label="/" spoken="Over" onTap={() => onKey({ sort: "write", text: "/" })} />}
    </div>
  );
}

function KeyCap({ label, spoken: words, small, onTap }: { label: ComponentChildren; spoken?: string; small?: boolean; onTap: () => void }) {
  return (
    <button type="button" class={small ? "key small-key" : "key"} tabIndex={-1} aria-label={words} onClick={onTap}>
      {label}
    </button>
  );
}

const BELOW: Record<string, string> = { "2": "half", "4": "quarters", "8": "eighths" };

function spoken(fraction: string): string {
  const [above, below] = fraction.split("/") as [string, string];
  if (above === "1") return { "2": "a half", "4": "a quarter", "8": "an eighth" }[below]!;
  return `${above} ${BELOW[below]}`;
}
