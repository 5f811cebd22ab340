/** Two phones of one garage, and what tests do with them. */

import { newId } from "../../webapp/src/garage/write";
import { HomeComputer } from "./home_computer";
import { Phone } from "./phone";

export async function pair(): Promise<{ home: HomeComputer; one: Phone; other: Phone }> {
  const home = new HomeComputer("garage");
  return { home, one: await Phone.open("one", home), other: await Phone.open("other", home) };
}

export function job(name: string, record = newId()) {
  return { kind: "job", record, set: { name } };
}

export async function saveMany(phone: Phone, count: number, note = ""): Promise<void> {
  await phone.writer.save(
    Array.from({ length: count }, (_, at) => ({ kind: "job", set: { name: `Job ${at}`, note } })),
  );
}

export function names(phone: Phone): unknown[] {
  return phone.live.garage.value.of("job").map((rec) => rec.values.name);
}
