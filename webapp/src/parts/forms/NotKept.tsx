/** What stands in a field and does not count: why, what counts instead, and the ways out at one tap each. */
import type { Value } from "../../journal/types";
import { Button } from "../frame/Button";
import { valueWords } from "../words/fieldWords";

type Props = {
  kind: string;
  name: string;
  isEmpty: boolean;
  why: string;
  isAsked: boolean;
  counts: Value;
  keep: () => void;
  drop: () => void;
};

export function NotKept({ kind, name, isEmpty, why, isAsked, counts, keep, drop }: Props) {
  const stands = counts === null ? "nothing is set" : `${valueWords(kind, name, counts)} still counts`;
  const back = counts === null ? "Clear it" : `Back to ${valueWords(kind, name, counts)}`;
  return (
    <div class="not-kept" role="status">
      <p class="small">
        <strong>Not kept: {stands}.</strong> {isEmpty && why}
      </p>
      <div class="pair">
        {isAsked && <Button label="Keep it as typed" onClick={keep} />}
        <Button look="plain" label={back} onClick={drop} />
      </div>
    </div>
  );
}
