/** On top of a form that was opened half-typed: what it is and how old, and one tap to begin anew. */
import { Button } from "../frame/Button";
import { Notice } from "../frame/Notice";
import { halfTyped } from "./halfDone";

type Props = { what: string; form: { id?: string }; onDrop: () => void };

export function Resumed({ what, form, onDrop }: Props) {
  return (
    <Notice>
      <p class="small">
        <strong>{halfTyped(what, form)}, not saved yet.</strong>
      </p>
      <Button look="plain" label="Throw it away" onClick={onDrop} />
    </Notice>
  );
}
