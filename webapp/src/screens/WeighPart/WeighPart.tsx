/**
 * Weigh a part: type what the display shows, say what it is, take a photo, save. Built for one gloved thumb in the sun.
 *
 * What is typed is kept as typed and said back in both systems of units; the form is kept on the phone at every change,
 * photos too, because the camera may kill the page.
 */
import { useState } from "preact/hooks";

import { newId } from "../../garage/write";
import { Screen } from "../../parts/frame/Screen";
import { useHabits } from "../../parts/weighPart/habits";
import { type Address, replace, to } from "../../route";
import { PartForm } from "./PartForm";
import { Weighed } from "./Weighed";

export function WeighPart({ id, query }: Address) {
  const [replaces, back] = [query.get("replaces"), query.get("back")];
  const habits = useHabits();
  const [saved, setSaved] = useState<string | null>(null);
  /** A form of its own, so that nothing typed before comes into it. */
  const anew = (part: string) => replace(to("weigh-part", part, { ...Object.fromEntries(query), draft: newId() }));
  const another = () => replace(to("weigh-part", { ...(back && { back }), draft: newId() }));
  return (
    <Screen title={replaces ? "Weigh again" : "Weigh a part"} back={back ?? "#/weigh"}>
      {saved ? (
        <Weighed id={saved} back={back} onAgain={another} />
      ) : (
        habits && (
          <PartForm
            of={id || null}
            replaces={replaces}
            draft={query.get("draft") ?? ""}
            habits={habits}
            onSaved={setSaved}
            onAnew={() => anew(id)}
          />
        )
      )}
    </Screen>
  );
}
