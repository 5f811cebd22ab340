/** A screen that is a file of its own: drawn once it is there; where it cannot be fetched, said in words. */

import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import { Button } from "./Button";
import { Notice } from "./Notice";

type Props<M> = { load: () => Promise<M>; draw: (screen: M) => ComponentChildren };

export function Loaded<M>({ load, draw }: Props<M>) {
  const [screen, setScreen] = useState<M | null>(null);
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    load().then(
      (loaded) => setScreen(() => loaded),
      () => setFailed(true),
    );
  }, []);
  if (screen) return <>{draw(screen)}</>;
  if (!failed) return null;
  return (
    <Notice sort="caution">
      <p>
        <strong>This screen is not on this phone yet.</strong> Open it once within reach of the home computer; nothing
        is lost.
      </p>
      <Button label="Try again" onClick={() => location.reload()} />
    </Notice>
  );
}
