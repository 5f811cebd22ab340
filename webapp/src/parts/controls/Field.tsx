/** Plain form fields: a visible label above, a hint or a trouble below, never a placeholder as label. */
import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import type { ChoiceProps } from "./Choice";

type FrameProps = {
  label: string;
  hint?: ComponentChildren;
  trouble?: string | null;
  children: (ids: { id: string; about: string }) => ComponentChildren;
};

export function FieldFrame({ label, hint, trouble, children }: FrameProps) {
  const id = useId();
  const about = `${id}-about`;
  return (
    <div class="field">
      <label class="label" for={id}>
        {label}
      </label>
      {children({ id, about })}
      <div id={about} aria-live="polite">
        {trouble ? <p class="trouble">{trouble}</p> : hint && <p class="hint">{hint}</p>}
      </div>
    </div>
  );
}

type TextProps = {
  label: string;
  value: string;
  onValue: (value: string) => void;
  hint?: ComponentChildren;
  trouble?: string | null;
  type?: "text" | "date" | "datetime-local";
  mode?: "text" | "decimal" | "numeric";
  most?: number;
  long?: boolean;
  list?: string[];
};

export function TextField({
  label,
  value,
  onValue,
  hint,
  trouble,
  type = "text",
  mode = "text",
  most = 200,
  long,
  list,
}: TextProps) {
  const onInput = (event: Event) => onValue((event.currentTarget as HTMLInputElement | HTMLTextAreaElement).value);
  return (
    <FieldFrame
      label={label}
      hint={value.length >= most ? `That is as long as it can be: ${most} characters.` : hint}
      trouble={trouble}
    >
      {({ id, about }) => {
        const shared = { id, value, onInput, maxLength: most, "aria-describedby": about, "aria-invalid": !!trouble };
        if (long) return <textarea class="input" {...shared} />;
        return (
          <>
            <input
              class="input"
              type={type}
              inputMode={mode}
              autocomplete="off"
              list={list ? `${id}-list` : undefined}
              {...shared}
            />
            {list && (
              <datalist id={`${id}-list`}>
                {list.map((name) => (
                  <option key={name} value={name} />
                ))}
              </datalist>
            )}
          </>
        );
      }}
    </FieldFrame>
  );
}

/** Many options: the phone's own picker, which gloves and screen readers already know. */
export function Pick<T extends string>({
  label,
  value,
  options,
  onValue,
  hint,
  none,
}: ChoiceProps<T> & { none?: string }) {
  return (
    <FieldFrame label={label} hint={hint}>
      {({ id, about }) => (
        <select
          id={id}
          class="input"
          aria-describedby={about}
          value={value ?? ""}
          onChange={(event) => onValue(event.currentTarget.value as T)}
        >
          {none !== undefined && <option value="">{none}</option>}
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      )}
    </FieldFrame>
  );
}

export function Tick({
  label,
  value,
  onValue,
}: {
  label: ComponentChildren;
  value: boolean;
  onValue: (value: boolean) => void;
}) {
  return (
    <label class="tick">
      <input type="checkbox" checked={value} onChange={(event) => onValue(event.currentTarget.checked)} />
      <span>{label}</span>
    </label>
  );
}
