/** A few options, all of them in sight. Apart from the other fields, for the first screen has one. */
import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";

export type Option<T extends string> = { value: T; label: string };

export type ChoiceProps<T extends string> = {
  label: string;
  value: T | null;
  options: readonly Option<T>[];
  onValue: (value: T) => void;
  hint?: ComponentChildren;
  hideLabel?: boolean;
};

/** A few options, all visible: one tap. */
export function Choice<T extends string>({ label, value, options, onValue, hint, hideLabel }: ChoiceProps<T>) {
  const name = useId();
  return (
    <fieldset class="field">
      <legend class={hideLabel ? "hidden-words" : "label small"}>{label}</legend>
      <div class="choice">
        {options.map((option) => (
          <label key={option.value}>
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={option.value === value}
              onChange={() => onValue(option.value)}
            />
            <span>{option.label}</span>
          </label>
        ))}
      </div>
      {hint && <p class="hint">{hint}</p>}
    </fieldset>
  );
}
