/** Devices by the names the home computer gave them, as last heard; this one is always "this phone". */
import { signal } from "@preact/signals";
import { drafts } from "../../garage/drafts";
import { session } from "../../garage/session";
import { own } from "../../own";

/** The device of entries that the home computer writes itself. */
const HOME = "home";
const KEPT = "device-names";
const names = signal<Readonly<Record<string, string>>>({});
let isRecalled = false;

export function deviceName(device: string, unknown = "another device"): string {
  if (device === session.value.device) return "this phone";
  if (device === HOME) return "the home computer";
  if (!isRecalled) void recall();
  return own(names.value, device) ?? unknown;
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
