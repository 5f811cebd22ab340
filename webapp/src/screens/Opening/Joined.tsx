/** The garage is open on this phone; one more thing makes it safe and handy: the home screen. */
import { Button } from "../../parts/frame/Button";
import { InstallSteps } from "../../parts/install/InstallSteps";
import { installed } from "../../parts/install/install";
import { goOn } from "../../parts/joining/join";

export function Joined() {
  return (
    <div class="stack">
      <h1>{installed.value ? "It is on the home screen" : "Joined. One more thing"}</h1>
      {installed.value ? (
        <p>Open Tarebook from there. It starts without the home computer and without signal.</p>
      ) : (
        <>
          <p>
            Put Tarebook on the home screen: it then opens without signal, and the browser does not clear its records
            when the phone runs short.
          </p>
          <InstallSteps />
        </>
      )}
      <Button look="wide" label={installed.value ? "Go on here" : "Later"} onClick={goOn} />
    </div>
  );
}
