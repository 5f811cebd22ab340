/** What ends a step, in thumb's reach: on to the part that goes on; and then fitted or an idea, at one tap. */
import { useState } from "preact/hooks";
import type { Rec } from "../../garage/garage";
import { showFirstTrouble } from "../../parts/forms/firstTrouble";
import { Button } from "../../parts/frame/Button";
import { TroubleNotice } from "../../parts/frame/Notice";
import { useSaving } from "../../parts/frame/saving";
import { nameOf } from "../../parts/words/naming";
import type { State, Way } from "./form";

type Props = {
  way: Way;
  into: Rec<"job"> | null;
  says: string | null;
  missing: string | null;
  onPress: (then: "next" | State) => Promise<void>;
  onBack: () => void;
};

export function Ends({ way, into, says, missing, onPress, onBack }: Props) {
  const saving = useSaving();
  const [wanted, setWanted] = useState(false);
  const press = (then: "next" | State) => () => {
    setWanted(!!missing);
    if (missing) showFirstTrouble();
    else void saving.run(() => onPress(then));
  };
  return (
    <div class="dock">
      {says && <p class="small">{says}</p>}
      {wanted && missing && (
        <p class="small" role="alert">
          <strong>{missing}</strong>
        </p>
      )}
      <TroubleNotice trouble={saving.trouble} />
      {way === "off" ? (
        <Button look="main" label="Next: what goes on" onClick={press("next")} />
      ) : into ? (
        <Button look="main" label={`Add both to ${nameOf(into)}`} disabled={saving.busy} onClick={press("idea")} />
      ) : (
        <div class="swap-ends">
          <Button label="Back" onClick={onBack} />
          <Button label="An idea" disabled={saving.busy} onClick={press("idea")} />
          <Button look="main" label="Fitted" disabled={saving.busy} onClick={press("fitted")} />
        </div>
      )}
    </div>
  );
}
