/**
 * A field for a typed mass, length or volume: below it stands how it will be read, or what to type instead.
 *
 * The value is the text as typed; on leaving the field a bare number gets the unit it was read in ("52" becomes
 * "52 kg"). Under a thumb the big keypad comes up in place of the phone's own; a mouse and a real keyboard just type.
 */

import type { ComponentChildren } from "preact";
import { useEffect, useId, useRef, useState } from "preact/hooks";
import { KEYPAD_UNITS, type Measure, takesFractions, unitOf, unitWord } from "../../garage/units";
import { Button } from "../frame/Button";
import { type Reading, readingOf, typedOf } from "../words/reading";
import { afterPress } from "./afterPress";
import { Keypad } from "./Keypad";
import { press, unitWritten } from "./typing";

type Props = {
  kind: Measure;
  label: string;
  value: string;
  onValue: (text: string) => void;
  /** What a bare number is read in: the garage's own unit unless given; null asks for a unit to be typed. */
  unit?: string | null;
  /** Stands below while nothing is typed. */
  hint?: ComponentChildren;
  /** A trouble the form itself found ("above the tank"), shown in place of the reading. */
  trouble?: string | null;
  /** The same, but not said of a number half typed. */
  lateTrouble?: string | null;
  /** Without it the form cannot be saved: shown to the person who presses save. */
  needed?: boolean;
};

export function QuantityField({
  kind,
  label,
  value,
  onValue,
  unit = unitOf(kind),
  hint,
  trouble: atOnce,
  lateTrouble,
  needed,
}: Props) {
  const id = useId();
  const frame = useRef<HTMLDivElement>(null);
  const input = useRef<HTMLInputElement>(null);
  const [open, setOpen] = useState(false);
  const reading = readingOf(kind, value, unit);
  const trouble = atOnce ?? (open ? null : lateTrouble);
  const leave = (event: FocusEvent) => {
    if (frame.current?.contains(event.relatedTarget as Node | null)) return;
    afterPress(() => setOpen(frame.current?.contains(document.activeElement) ?? false));
    if (value.trim() !== "") onValue(typedOf(kind, value, unit));
  };
  return (
    <div class="field" ref={frame} onFocusOut={leave}>
      <label class="label" for={id}>
        {label}
      </label>
      <input
        ref={input}
        id={id}
        class="input num"
        data-quantity
        data-needed={needed && reading.state === "empty" ? "" : undefined}
        value={value}
        maxLength={64}
        autocomplete="off"
        spellcheck={false}
        inputMode={underThumb() ? "none" : "text"}
        aria-describedby={`${id}-read`}
        aria-invalid={!!trouble || (!open && reading.state === "trouble")}
        onInput={(event) => onValue(event.currentTarget.value)}
        onFocus={() => setOpen(true)}
      />
      <div id={`${id}-read`} aria-live="polite">
        <Said reading={reading} trouble={trouble} hint={hint} typing={open} />
      </div>
      {open && underThumb() && (
        <KeypadDock
          kind={kind}
          label={label}
          value={value}
          unit={unit}
          reading={reading}
          onValue={onValue}
          onDone={() => input.current?.blur()}
          onNext={() => focusNext(input.current!)}
        />
      )}
    </div>
  );
}

type SaidProps = { reading: Reading; trouble?: string | null; hint?: ComponentChildren; typing?: boolean };

/** How a reading is said below a field; a number half typed is no trouble yet. */
export function Said({ reading, trouble, hint, typing }: SaidProps) {
  if (trouble) return <p class="trouble">{trouble}</p>;
  if (reading.state === "read") return <p class="hint num">{reading.words}</p>;
  if (reading.state === "trouble")
    return (
      <p class={typing ? "hint" : "trouble"}>
        {reading.sentence} {reading.todo}
      </p>
    );
  return hint ? <p class="hint">{hint}</p> : null;
}

type DockProps = {
  kind: Measure;
  label: string;
  value: string;
  unit: string | null;
  reading: Reading;
  onValue: (text: string) => void;
  onDone: () => void;
  onNext: () => void;
};

function KeypadDock({ kind, label, value, unit, reading, onValue, onDone, onNext }: DockProps) {
  // The field may lie where the keypad now is: the page knows how much that covers (scroll-padding) and moves enough.
  useEffect(() => document.activeElement?.scrollIntoView({ block: "nearest" }), []);
  const inForce = unitWritten(value) ?? (unit && unitWord(unit));
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: keeps the field focused; nothing here answers a press
    <div class="keypad-dock" onMouseDown={(event) => event.preventDefault()}>
      <div class="keypad-strip">
        <span class="said">
          <strong>{label}</strong>
          <br />
          {reading.state === "read" ? reading.words : value || (unit && `in ${unitWord(unit)}`)}
        </span>
        {value && <Button look="plain" label="Clear" tabIndex={-1} onClick={() => onValue("")} />}
        <Button look="plain" label="Next" tabIndex={-1} onClick={onNext} />
        <Button label="Done" tabIndex={-1} onClick={onDone} />
      </div>
      <Keypad
        units={KEYPAD_UNITS[kind]}
        unit={inForce}
        fractions={takesFractions(inForce ?? "")}
        onKey={(key) => onValue(press(value, key))}
      />
    </div>
  );
}

/** Fingers, not a mouse: only then does a keypad of our own help. */
export function underThumb(): boolean {
  return matchMedia("(pointer: coarse)").matches;
}

function focusNext(from: HTMLInputElement): void {
  const all = [...document.querySelectorAll<HTMLInputElement>("input[data-quantity]")];
  const next = all[all.indexOf(from) + 1];
  if (next) next.focus();
  else from.blur();
}
