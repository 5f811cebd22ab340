/** Who may write in this garage, as the home computer tells it; each other device can be taken off the list. */
import { useEffect, useState } from "preact/hooks";
import { Disclosure } from "../../parts/Disclosure";
import { keepDeviceNames } from "../../parts/deviceNames";
import { sayMoment } from "../../parts/moments";
import { Notice, TroubleNotice } from "../../parts/Notice";
import { useSaving, type Saving } from "../../parts/SaveDock";
import { askHome } from "./askHome";

export type Device = {
  id: string;
  name: string;
  paired_at: string;
  last_seen: string;
  revoked_at: string | null;
  this: boolean;
};
type Answer = { devices: Device[] };

export function DeviceList() {
  const [devices, setDevices] = useState<Device[] | null>(null);
  const asking = useSaving();
  const ask = (path: string, method: "GET" | "POST" = "GET") =>
    asking.run(async () => {
      const { devices: listed } = await askHome<Answer>(path, method);
      setDevices(listed);
      await keepDeviceNames(listed);
    });
  useEffect(() => void ask("/devices"), []);
  return (
    <div class="stack">
      {asking.busy && !devices && (
        <p class="quiet" role="status">
          Asking the home computer…
        </p>
      )}
      <TroubleNotice trouble={asking.trouble} />
      {asking.trouble && (
        <button type="button" class="button" disabled={asking.busy} onClick={() => void ask("/devices")}>
          Ask again
        </button>
      )}
      <div>
        {devices
          ?.filter((device) => !device.revoked_at)
          .map((device) => (
            <DeviceRow
              key={device.id}
              device={device}
              asking={asking}
              onRevoke={() => void ask(`/devices/${encodeURIComponent(device.id)}/revoke`, "POST")}
            />
          ))}
      </div>
      <Gone devices={devices?.filter((device) => device.revoked_at) ?? []} />
    </div>
  );
}

function DeviceRow({ device, asking, onRevoke }: { device: Device; asking: Saving; onRevoke: () => void }) {
  const [asked, setAsked] = useState(false);
  return (
    <div class="device">
      <div class="spread">
        <span>
          <strong>{device.name}</strong>
          {device.this ? ", this one" : ""}
          <br />
          <span class="small quiet">
            Last heard {sayMoment(device.last_seen)}, joined {sayMoment(device.paired_at)}
          </span>
        </span>
        {!device.this && !asked && (
          <button type="button" class="button plain" onClick={() => setAsked(true)}>
            Take off
          </button>
        )}
      </div>
      {asked && (
        <Notice sort="caution">
          <p>
            It can then neither read nor send. What it has recorded stays in the garage, and on the device itself
            nothing is deleted.
          </p>
          <div class="pair">
            <button type="button" class="button" onClick={() => setAsked(false)}>
              Keep it
            </button>
            <button type="button" class="button" disabled={asking.busy} onClick={onRevoke}>
              Take it off
            </button>
          </div>
        </Notice>
      )}
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
