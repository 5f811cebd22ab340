/** The garage's devices, as the home computer tells them, and whether this browser may let others in. */
import { useEffect, useState } from "preact/hooks";
import type { Device, Devices } from "../../generated/routes";
import { type Saving, useSaving } from "../../parts/frame/saving";
import type { Sent } from "../../wire/request";
import { askHome } from "./askHome";

export type DevicesAsked = {
  /** Null until the home computer has answered. */
  devices: readonly Device[] | null;
  /** True in a browser on the home computer itself. */
  home: boolean;
  asking: Saving;
  /** Asks again, or for a change; the answer is the new list. */
  ask: <R extends Route>(route: R, sent: Sent<R>) => Promise<void>;
};

type Route = "GET /devices" | "POST /devices/{name}/rename" | "POST /devices/{name}/revoke";

/** On the home computer, where others come in, the list is looked at again so often. */
const EVERY = 4_000;

export function useDevices(): DevicesAsked {
  const [answer, setAnswer] = useState<Devices | null>(null);
  const asking = useSaving();
  const load = async <R extends Route>(route: R, sent: Sent<R>) => {
    const told = await askHome(route, sent);
    setAnswer(told);
  };
  const ask = <R extends Route>(route: R, sent: Sent<R>) => asking.run(() => load(route, sent));
  const home = answer?.home === true;
  useEffect(() => void ask("GET /devices", {}), []);
  useEffect(() => {
    if (!home) return;
    const look = () => document.visibilityState === "visible" && void load("GET /devices", {}).catch(() => undefined);
    const timer = setInterval(look, EVERY);
    return () => clearInterval(timer);
  }, [home]);
  return { devices: answer?.devices ?? null, home, asking, ask };
}
