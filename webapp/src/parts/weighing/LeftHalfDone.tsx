/** What was begun and not saved, said as such: go on with it, or throw it away. */
import { useEffect, useState } from "preact/hooks";
import { drafts } from "../../garage/drafts";
import { Button, ButtonLink } from "../frame/Button";
import { Notice } from "../frame/Notice";
import { type HalfDone, halfDone } from "./halfDone";

/** `sort`: how the names of the drafts begin, where not all are shown. */
export function LeftHalfDone({ sort = "" }: { sort?: string }) {
  const [left, setLeft] = useState<HalfDone[]>([]);
  const look = () => void halfDone().then(setLeft, () => undefined);
  useEffect(look, []);
  return (
    <>
      {left
        .filter(({ name }) => name.startsWith(sort))
        .map(({ name, words, href }) => (
          <Notice key={name}>
            <p>
              <strong>{words}.</strong> It counts for nothing until it is saved.
            </p>
            <div class="pair">
              <ButtonLink label="Go on" href={href} />
              <Button look="plain" label="Throw it away" onClick={() => void drafts.drop(name).then(look)} />
            </div>
          </Notice>
        ))}
    </>
  );
}
