/** The garage's devices, as the home computer tells them, and whether this browser may let others in. */
import { useEffect, useState } from "preact/hooks";
import { type Saving, useSaving } from "../../parts/forms/saving";
import { keepDeviceNames } from "../../parts/words/deviceNames";
import { askHome } from "./askHome";

export type Device = {
  id: string;
  name: string;
  paired_at: string;
  last_seen: string;
  revoked_at: string | null;
  this: boolean;
};

export type Devices = {
  /** Null until the home computer has answered. */
  devices: Device[] | null;
  /** True in a browser on the home computer itself. */
  home: boolean;
  asking: Saving;
  /** Asks again, or for a change; the answer is the new list. */
  ask: (path?: string, json?: object) => Promise<void>;
};

type Answer = { devices: Device[]; home: boolean };

/** On the home computer, where others come in, the list is looked at again so often. */
const EVERY = 4_000;

export function useDevices(): Devices {
  const [answer, setAnswer] = useState<Answer | null>(null);
  const asking = useSaving();
  const load = async (path: string, json?: object) => {
    const told = await askHome<Answer>(path, json);
    setAnswer(told);
    await keepDeviceNames(told.devices);
  };
  const ask = (path = "/devices", json?: object) => asking.run(() => load(path, json));
  const home = answer?.home === true;
  useEffect(() => void ask(), []);
  useEffect(() => {
    if (!home) return;
    const look = () => document.visibilityState === "visible" && void load("/devices").catch(() => undefined);
    const timer = setInterval(look, EVERY);
    return () => clearInterval(timer);
  }, [home]);
  return { devices: answer?.devices ?? null, home, asking, ask };
}

/** The path of a request about one device. */
export function about(device: Device, what: "rename" | "revoke"): string {
  return `/devices/${encodeURIComponent(device.id)}/${what}`;
}
