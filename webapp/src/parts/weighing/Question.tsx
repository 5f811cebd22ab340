/** A doubtful reading, asked about before it is kept: the likely ones at one tap each, as typed at another. */
import { useEffect, useRef } from "preact/hooks";
import { Button } from "../frame/Button";
import { TroubleNotice } from "../frame/Notice";
import { useSaving } from "../frame/saving";

/** `says`: what is odd. `likely`: the other readings, by what their button says. `typed`: the reading as it is. */
export type Doubt<Change> = {
  sort: "display" | "slip";
  says: string;
  against?: string;
  likely: readonly { label: string; change: Change }[];
  typed: string;
};
type Props<Change> = {
  of: Doubt<Change>;
  onLikely: (change: Change) => Promise<void>;
  onKeep: () => Promise<void>;
  onBack: () => void;
};

/** In the place of the save button; nothing of what was typed has changed yet. */
export function Question<Change>({ of, onLikely, onKeep, onBack }: Props<Change>) {
  const saving = useSaving();
  const words = useRef<HTMLParagraphElement>(null);
  useEffect(() => words.current?.focus({ preventScroll: true }), [of]);
  return (
    <div class="dock" role="group" aria-label="Before it is kept">
      <p ref={words} tabIndex={-1} role="alert">
        <strong>{of.says}</strong> {of.against}
      </p>
      <TroubleNotice trouble={saving.trouble} />
      <div class="pair">
        {of.likely.map(({ label, change }) => (
          <Button key={label} label={label} disabled={saving.busy} onClick={() => saving.run(() => onLikely(change))} />
        ))}
        <Button label={`Keep ${of.typed} as typed`} disabled={saving.busy} onClick={() => saving.run(onKeep)} />
      </div>
      <Button look="plain" label="Back to the reading" onClick={onBack} />
    </div>
  );
}
