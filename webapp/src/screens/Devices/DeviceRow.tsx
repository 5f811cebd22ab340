/** One device of the garage: its name, when it was last heard, and what can be done about it. */

import { useState } from "preact/hooks";
import type { Device } from "../../generated/routes";
import { TextField } from "../../parts/controls/Field";
import { Button } from "../../parts/frame/Button";
import { Notice } from "../../parts/frame/Notice";
import { sayMoment } from "../../parts/words/moments";
import type { DevicesAsked } from "./useDevices";

type Props = { device: Device; busy: boolean; ask: DevicesAsked["ask"] };
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
          <Button look="plain" label="Rename" aria-label={`Rename ${device.name}`} onClick={() => setDoing("rename")} />
          {!device.this && <Button look="plain" label="Take off" onClick={() => setDoing("revoke")} />}
        </div>
      )}
      {doing === "rename" && <Rename device={device} busy={busy} ask={ask} onClose={close} />}
      {doing === "revoke" && <Revoke device={device} busy={busy} ask={ask} onClose={close} />}
    </div>
  );
}

function Rename({ device, busy, ask, onClose }: Props & { onClose: () => void }) {
  const [name, setName] = useState(device.name);
  const rename = () =>
    ask("POST /devices/{name}/rename", { name: device.id, json: { name: name.trim() } }).then(onClose);
  return (
    <div class="stack">
      <TextField label="What is this device called?" value={name} most={80} onValue={setName} />
      <div class="pair">
        <Button label="Leave it" onClick={onClose} />
        <Button label="Call it that" disabled={busy || !name.trim()} onClick={() => void rename()} />
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
        <Button label="Keep it" onClick={onClose} />
        <Button
          label="Take it off"
          disabled={busy}
          onClick={() => void ask("POST /devices/{name}/revoke", { name: device.id }).then(onClose)}
        />
      </div>
    </Notice>
  );
}
