/** Devices by the names the home computer gave them; this one is always "this phone". */
import { namesOfDevices } from "../../garage/deviceNames";
import { session } from "../../garage/session";
import { own } from "../../own";

/** The device of entries that the home computer writes itself. */
const HOME = "home";

export function deviceName(device: string, unknown = "another device"): string {
  if (device === session.value.device) return "this phone";
  if (device === HOME) return "the home computer";
  return own(namesOfDevices(), device) ?? unknown;
}
