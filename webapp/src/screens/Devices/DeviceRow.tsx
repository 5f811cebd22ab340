/** One device of the garage: its name, when it was last heard, and what can be done about it. */
import { useState } from "preact/hooks";
import { TextField } from "../../parts/controls/Field";
import { Notice } from "../../parts/frame/Notice";
import { sayMoment } from "../../parts/words/moments";
import { about, type Device, type Devices } from "./useDevices";

type Props = { device: Device; busy: boolean; ask: Devices["ask"] };
type Doing = "rename" | "revoke" | null;

export function DeviceRow({ device, busy, ask }: Props) {
  const [doing, setDoing] = useState<Doing>(null);
  const close = () => setDoing(null);
  return (
    <div class="device">
      <div>
        <strong>{device.name}</strong>
        {device.this ? ", this one" : ""}
        <br />
        <span class="small quiet">
          Last heard {sayMoment(device.last_seen)}, joined {sayMoment(device.paired_at)}
        </span>
      </div>
      {doing === null && (
        <div class="device-doors">
          <button
            type="button"
            class="button plain"
            aria-label={`Rename ${device.name}`}
            onClick={() => setDoing("rename")}
          >
            Rename
          </button>
          {!device.this && (
            <button type="button" class="button plain" onClick={() => setDoing("revoke")}>
              Take off
            </button>
          )}
        </div>
      )}
      {doing === "rename" && <Rename device={device} busy={busy} ask={ask} onClose={close} />}
      {doing === "revoke" && <Revoke device={device} busy={busy} ask={ask} onClose={close} />}
    </div>
  );
}

function Rename({ device, busy, ask, onClose }: Props & { onClose: () => void }) {
  const [name, setName] = useState(device.name);
  const rename = () => ask(about(device, "rename"), { name: name.trim() }).then(onClose);
  return (
    <div class="stack">
      <TextField label="What is this device called?" value={name} most={80} onValue={setName} />
      <div class="pair">
        <button type="button" class="button" onClick={onClose}>
          Leave it
        </button>
        <button type="button" class="button" disabled={busy || !name.trim()} onClick={() => void rename()}>
          Call it that
        </button>
      </div>
    </div>
  );
}

function Revoke({ device, busy, ask, onClose }: Props & { onClose: () => void }) {
  return (
    <Notice sort="caution">
      <p>
        It can then neither read nor send. What it has recorded stays in the garage, and on the device itself nothing is
        deleted.
      </p>
      <div class="pair">
        <button type="button" class="button" onClick={onClose}>
          Keep it
        </button>
        <button
          type="button"
          class="button"
          disabled={busy}
          onClick={() => void ask(about(device, "revoke"), {}).then(onClose)}
        >
          Take it off
        </button>
      </div>
    </Notice>
  );
}
