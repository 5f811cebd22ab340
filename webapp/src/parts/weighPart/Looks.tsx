/** What the display shows, large, as typed; below it how that is read. The keypad writes where the caret stands. */
import { useEffect, useRef } from "preact/hooks";
import { unitWord } from "../../garage/units";
import { Said } from "../controls/QuantityField";
import { unitWritten } from "../controls/typing";
import { methodRow } from "../weighing/methods";
import { readingOf } from "../words/reading";
import type { PartForm } from "./form";

export type LookName = "shown" | "second";

type Props = {
  form: PartForm;
  active: LookName;
  onActive: (name: LookName) => void;
  onText: (name: LookName, text: string) => void;
};

export function Looks({ form, active, onActive, onText }: Props) {
  const row = methodRow(form.method);
  const one = (name: LookName, label: string, isCount: boolean) => (
    <Look
      label={label}
      text={form[name]}
      unit={isCount ? null : form.unit}
      active={active === name}
      onActive={() => onActive(name)}
      onText={(text) => onText(name, text)}
    />
  );
  return (
    <div class={row.second ? "looks two-looks" : "looks"}>
      {one("shown", row.first, false)}
      {row.second && one("second", row.secondLabel, row.second === "pieces")}
    </div>
  );
}

type LookProps = {
  label: string;
  text: string;
  unit: string | null;
  active: boolean;
  onActive: () => void;
  onText: (text: string) => void;
};

function Look({ label, text, unit, active, onActive, onText }: LookProps) {
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (active) input.current?.focus({ preventScroll: true });
  }, [active]);
  const reading = unit === null ? null : readingOf("mass", text, unit);
  const isBare = unit !== null && text.trim() !== "" && unitWritten(text) === null;
  return (
    <div class={active ? "look active" : "look"}>
      <label class="look-field">
        <span class="look-label">{label}</span>
        <span class="look-line">
          <input
            ref={input}
            class="look-input num"
            value={text}
            inputMode="none"
            maxLength={64}
            autocomplete="off"
            spellcheck={false}
            aria-invalid={!active && reading?.state === "trouble"}
            data-needed={text.trim() ? undefined : ""}
            placeholder={unit === null ? "0" : `0 ${unitWord(unit)}`}
            onFocus={onActive}
            onInput={(event) => onText(event.currentTarget.value)}
          />
          {isBare && <span class="look-unit">{unitWord(unit)}</span>}
        </span>
        <span class="look-said" aria-live="polite">
          {reading && (
            <Said reading={reading} typing={active} hint={active ? "Type what the display shows." : undefined} />
          )}
        </span>
      </label>
      {active && text !== "" && (
        <button type="button" class="look-clear" tabIndex={-1} onMouseDown={keepFocus} onClick={() => onText("")}>
          Clear
        </button>
      )}
    </div>
  );
}

const keepFocus = (event: Event) => event.preventDefault();
