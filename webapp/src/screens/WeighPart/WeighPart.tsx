/**
 * Weigh a part: type what the display shows, say what it is, take a photo, save. Built for one gloved thumb in the sun.
 *
 * What is typed is kept as typed and said back in both systems of units; the form is kept on the phone at every change,
 * photos too, because the camera may kill the page.
 */
import { useEffect, useState } from "preact/hooks";

import { Screen } from "../../parts/frame/Screen";
import type { Habits } from "../../parts/weighPart/form";
import { habitsNow } from "../../parts/weighPart/habits";
import type { Address } from "../../route";
import { PartForm } from "./PartForm";
import { Weighed } from "./Weighed";

export function WeighPart({ id, query }: Address) {
  const [replaces, back] = [query.get("replaces"), query.get("back")];
  const [habits, setHabits] = useState<Habits | null>(null);
  const [saved, setSaved] = useState<string | null>(null);
  const [round, setRound] = useState(0);
  useEffect(() => void habitsNow().then(setHabits), [round]);
  const again = () => {
    setSaved(null);
    setHabits(null);
    setRound(round + 1);
  };
  return (
    <Screen title={replaces ? "Weigh again" : "Weigh a part"} back={back ?? "#/weigh"}>
      {saved ? (
        <Weighed id={saved} back={back} onAgain={again} />
      ) : (
        habits && (
          <PartForm
            key={round}
            of={round ? null : id || null}
            replaces={round ? null : replaces}
            habits={habits}
            onSaved={setSaved}
          />
        )
      )}
    </Screen>
  );
}
