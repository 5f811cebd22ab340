/** How the app gets to the home screen: by the browser's own question where it has one, else by drawn steps. */
import "./InstallSteps.css";
import type { ComponentChildren } from "preact";
import { isAndroid, keepsAppsApart } from "../words/whereabouts";
import { canInstall, install } from "./install";

export function InstallSteps() {
  if (canInstall.value)
    return (
      <button type="button" class="button main" onClick={() => void install()}>
        Install to the home screen
      </button>
    );
  if (keepsAppsApart()) return <OnApple />;
  if (isAndroid()) return <OnAndroid />;
  return (
    <p>
      This browser makes no offer of its own. Look in its menu, or at the end of the address bar, for “Install”; on a
      phone, for “Add to home screen”.
    </p>
  );
}

function OnApple() {
  return (
    <ol class="install-steps">
      <Step words="Tap Share: the square with an arrow, at the edge of the browser.">
        <Mark x={48} y={134} />
        <path d="M22 124h52M43 131h-3v11h16v-11h-3M48 137v-12M45 128l3-3 3 3" />
      </Step>
      <Step words="Further down the list, tap “Add to Home Screen”, then “Add”.">
        <Mark x={71} y={105} />
        <path d="M14 60h68M14 82h68M14 127h68M22 71h24M22 93h30M22 105h34M22 116h26M66 100h10v10h-10zM71 102v6M68 105h6" />
      </Step>
      <Step words="Open Tarebook from the home screen, and join there.">
        <HomeScreen />
      </Step>
    </ol>
  );
}

function OnAndroid() {
  return (
    <ol class="install-steps">
      <Step words="Tap the browser's menu: three dots beside the address.">
        <Mark x={76} y={29} />
        <path d="M20 29h44M14 40h68M76 25v.1M76 29v.1M76 33v.1" />
      </Step>
      <Step words="Tap “Install app” or “Add to home screen”, then “Install”.">
        <Mark x={42} y={84} />
        <path d="M34 24h48v104H34zM52 40h22M52 56h18M52 84h24M52 100h20M52 116h16M38 78h8v12h-8zM42 80v6M40 84l2 2 2-2" />
      </Step>
      <Step words="Open Tarebook from the home screen from now on.">
        <HomeScreen />
      </Step>
    </ol>
  );
}

/** One picture of a phone, and what to do on it. */
function Step({ words, children }: { words: string; children: ComponentChildren }) {
  return (
    <li>
      <svg viewBox="0 0 96 160" class="install-picture" aria-hidden="true">
        <rect x="8" y="6" width="80" height="148" rx="10" />
        {children}
      </svg>
      <span>{words}</span>
    </li>
  );
}

/** Where to tap. */
function Mark({ x, y }: { x: number; y: number }) {
  return <circle class="install-mark" cx={x} cy={y} r="13" />;
}

/** Rows of nameless apps, and ours: the steelyard's arm with its poise. */
function HomeScreen() {
  const places = [0, 1, 2, 3, 4, 6, 7, 8];
  return (
    <>
      {places.map((place) => (
        <rect key={place} x={20 + (place % 3) * 21} y={32 + Math.floor(place / 3) * 26} width="14" height="14" rx="3" />
      ))}
      <Mark x={69} y={65} />
      <path d="M62 63h14M65 63v-3M70 63v5h5v-5" />
    </>
  );
}
