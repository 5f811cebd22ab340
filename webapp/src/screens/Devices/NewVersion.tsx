/** A new version of the app, taken when the person says so and never in the middle of a weighing or a form. */

import { useEffect, useState } from "preact/hooks";
import { Row } from "../../parts/figures/Row";
import { Button } from "../../parts/frame/Button";
import { Notice } from "../../parts/frame/Notice";
import { takeUpdate, updateReady } from "../../sync/update";
import { inTheMiddle, type Unfinished } from "./inTheMiddle";

export function NewVersion() {
  const [unfinished, setUnfinished] = useState<Unfinished[] | null>(null);
  const look = () => inTheMiddle().then(setUnfinished);
  useEffect(() => void look(), [updateReady.value]);
  if (!updateReady.value) return null;
  return (
    <Notice>
      <p>
        <strong>A new version is ready.</strong> Every record stays as it is.
      </p>
      {unfinished && (unfinished.length > 0 ? <FinishFirst unfinished={unfinished} /> : <UseIt onPress={take} />)}
    </Notice>
  );

  /** Another tab may have begun something meanwhile. */
  async function take() {
    const found = await inTheMiddle();
    setUnfinished(found);
    if (found.length === 0) await takeUpdate();
  }
}

function UseIt({ onPress }: { onPress: () => Promise<void> }) {
  const [busy, setBusy] = useState(false);
  const press = () => {
    setBusy(true);
    void onPress().finally(() => setBusy(false));
  };
  return <Button label={busy ? "Changing over…" : "Use it now"} disabled={busy} onClick={press} />;
}

function FinishFirst({ unfinished }: { unfinished: readonly Unfinished[] }) {
  return (
    <>
      <p>It waits until what is half typed here is saved or cleared:</p>
      <div>
        {unfinished.map(({ name, words, href }) => (
          <Row key={name} name={words} href={href} />
        ))}
      </div>
    </>
  );
}
