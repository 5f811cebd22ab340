/** What this phone's person weighed alone on this scale, with its date: offered for one tap, never taken by itself. */
import { useEffect, useState } from "preact/hooks";
import { Button } from "../frame/Button";
import { sayAgo } from "../words/moments";
import type { OfPart } from "./form";
import { type Alone, aloneOn } from "./habits";

export function MeAlone({ form, change }: OfPart) {
  const [kept, setKept] = useState<Alone | null>(null);
  useEffect(() => {
    if (form.method !== "difference") return setKept(null);
    void aloneOn(form.scale).then(setKept);
  }, [form.method, form.scale]);
  if (!kept || form.second.trim()) return null;
  return (
    <Button
      look="wide"
      label={`Me alone, ${kept.shown}, ${sayAgo(kept.at)}`}
      onClick={() => change({ second: kept.shown })}
    />
  );
}
