/** Who may write in this garage, as the home computer tells it; each can be named, and each other one taken off. */

import type { Device } from "../../generated/routes";
import { Disclosure } from "../../parts/controls/Disclosure";
import { Button } from "../../parts/frame/Button";
import { TroubleNotice } from "../../parts/frame/Notice";
import { sayMoment } from "../../parts/words/moments";
import { DeviceRow } from "./DeviceRow";
import type { DevicesAsked } from "./useDevices";

export function DeviceList({ devices, asking, ask }: DevicesAsked) {
  return (
    <div class="stack">
      {asking.busy && !devices && (
        <p class="quiet" role="status">
          Asking the home computer…
        </p>
      )}
      <TroubleNotice trouble={asking.trouble} />
      {asking.trouble && (
        <Button label="Ask again" disabled={asking.busy} onClick={() => void ask("GET /devices", {})} />
      )}
      <div>
        {devices
          ?.filter((device) => !device.revoked_at)
          .map((device) => (
            <DeviceRow key={device.id} device={device} busy={asking.busy} ask={ask} />
          ))}
      </div>
      <Gone devices={devices?.filter((device) => device.revoked_at) ?? []} />
    </div>
  );
}

function Gone({ devices }: { devices: readonly Device[] }) {
  if (!devices.length) return null;
  return (
    <Disclosure title={`Taken off the list (${devices.length})`}>
      {devices.map((device) => (
        <p key={device.id} class="small">
          {device.name}, {sayMoment(device.revoked_at)}
        </p>
      ))}
    </Disclosure>
  );
}
