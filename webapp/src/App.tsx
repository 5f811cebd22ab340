/** The frame around every screen: banner, the screen the address names, five doors. */

import { lastDone } from "./garage/acts";
import { session } from "./garage/session";
import { Icon, type IconName } from "./parts/frame/Icon";
import { Loaded } from "./parts/frame/Loaded";
import { place, to } from "./route";
import { screenFor } from "./screens";
import { isOpening, Opening } from "./screens/Opening/Opening";

const DOORS: { name: string; icon: IconName; label: string }[] = [
  { name: "car", icon: "car", label: "Car" },
  { name: "weigh", icon: "weigh", label: "Weigh" },
  { name: "jobs", icon: "jobs", label: "Jobs" },
  { name: "yard", icon: "yard", label: "Yard" },
  { name: "more", icon: "more", label: "More" },
];

export function App() {
  if (isOpening()) return <Opening />;
  const { name, screen, door } = screenFor(place.value);
  return (
    <div class="shell">
      <div class="shell-main">
        {session.value.demo && <DemoBanner />}
        <main key={name}>{screen}</main>
      </div>
      {lastDone.value.length > 0 && (
        <Loaded load={async () => (await import("./parts/frame/UndoLine")).UndoLine} draw={(Line) => <Line />} />
      )}
      <nav class="doors" aria-label="Main">
        {DOORS.map(({ name, icon, label }) => (
          <a key={name} class="door" href={to(name)} aria-current={door === name ? "page" : undefined}>
            <Icon name={icon} />
            {label}
          </a>
        ))}
      </nav>
    </div>
  );
}

function DemoBanner() {
  return (
    <aside class="banner" aria-label="Demo">
      Demo: nothing here is kept. <code>tarebook serve</code> opens <a href="http://localhost:8017/">your own garage</a>
    </aside>
  );
}
