/** The screen of a record whose address is known before the record itself has come. */
import { Screen } from "./Screen";

export function NotHere({ what, back }: { what: string; back: string }) {
  return (
    <Screen title={`${what} not here yet`} back={back}>
      <p>Its record has not reached this phone.</p>
    </Screen>
  );
}
