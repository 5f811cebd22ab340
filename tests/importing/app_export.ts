/** Writes the file a real phone exports, for the Python test that takes it in. */

import { Drafts } from "../../webapp/src/store/drafts";
import { takeout } from "../../webapp/src/store/takeout";
import { HomeComputer } from "../sync/home_computer";
import { Phone } from "../sync/phone";

type Wanted = { garage: string; device: string; jobs: string[]; photos: string[] };

/** A phone of the garage with a job for each name, a photo of the first for each base64, and a half-typed form. */
export async function exported({ garage, device, jobs, photos }: Wanted): Promise<string> {
  const phone = await Phone.open(device, new HomeComputer(garage));
  const saved: string[] = [];
  for (const name of jobs) saved.push(...(await phone.writer.save([{ kind: "job", set: { name } }])).records);
  for (const photo of photos) {
    const bytes = new Uint8Array(Buffer.from(photo, "base64")).buffer;
    await phone.writer.save([], [{ of: saved[0]!, bytes, type: "image/jpeg", width: 120, height: 90 }]);
  }
  await new Drafts(phone.store).keep("weigh", { shown: "12" });
  const from = { garage, device, name: "Garage — “ours”", store: phone.store };
  return new Blob(await takeout(from, new Date(0))).text();
}
