/** Devices by the names the home computer gave them, as last heard; this one is always "this phone". */
import { signal } from "@preact/signals";
import { drafts } from "../../garage/drafts";
import { session } from "../../garage/session";
import { own } from "../../own";

const KEPT = "device-names";
const names = signal<Readonly<Record<string, string>>>({});
let isRecalled = false;

export function deviceName(device: string): string {
  if (device === session.value.device) return "this phone";
  if (!isRecalled) void recall();
  return own(names.value, device) ?? "another device";
}

async function recall(): Promise<void> {
  isRecalled = true;
  const kept = await drafts.load<Record<string, string>>(KEPT).catch(() => null);
  if (kept) names.value = kept;
}

export async function keepDeviceNames(devices: readonly { id: string; name: string }[]): Promise<void> {
  isRecalled = true;
  names.value = Object.fromEntries(devices.map(({ id, name }) => [id, name]));
  await drafts.keep(KEPT, names.value);
}
