/** What people call the devices of the garage, those taken off the list too, as the home computer last told it. */
import { signal } from "@preact/signals";
import { drafts } from "./drafts";

const KEPT = "device-names";
type Names = Readonly<Record<string, string>>;
const names = signal<Names>({});
let isRecalled = false;

export function namesOfDevices(): Names {
  if (!isRecalled) void recall();
  return names.value;
}

async function recall(): Promise<void> {
  isRecalled = true;
  const kept = await drafts.load<Names>(KEPT).catch(() => null);
  if (kept && !Object.keys(names.peek()).length) names.value = kept;
}

/** Every pull tells them: only what is new is written. */
export async function keepDeviceNames(told: Names): Promise<void> {
  if (JSON.stringify(told) === JSON.stringify(names.peek())) return;
  names.value = told;
  await drafts.keep(KEPT, told);
}
