/** The phone's own code against a home computer that leaves it behind (`old_phone.py`); what it holds, and its export. */

import { newId } from "../../../webapp/src/garage/write";
import { takeout } from "../../../webapp/src/store/takeout";
import type { HomeComputer } from "../home_computer";
import { Phone } from "../phone";

type Given = {
  server: string;
  token: string;
  garage: string;
  device: string;
  /** In turn: what the home computer becomes, then how many jobs are saved and edited, with a photo of the first. */
  phases: { name: string; jobs: string[]; photo: string }[];
};

export async function run({ server, token, garage, device, phases }: Given) {
  const fetchBy = (url: string, options: RequestInit) => {
    const headers = { ...(options.headers as Record<string, string>), Authorization: `Bearer ${token}` };
    return fetch(server + url, { ...options, headers });
  };
  const home = { garage, devices: new Set(), fetch: fetchBy } as unknown as HomeComputer;
  const phone = await Phone.open(device, home);
  const answers: string[] = [];
  for (const { name, jobs, photo } of phases) {
    await fetch(`${server}/phase/${name}`, { method: "POST" });
    for (const job of jobs) await phone.writer.save([{ kind: "job", record: job, set: { name: job, hours: "1" } }]);
    const bytes = new Uint8Array(Buffer.from(photo, "base64")).buffer;
    await phone.writer.save([], [{ of: jobs[0] ?? newId(), bytes, type: "image/jpeg", width: 120, height: 90 }]);
    for (const job of jobs) await phone.writer.save([{ kind: "job", record: job, set: { hours: "2" } }]);
    answers.push(
      await phone.sync().then(
        () => "sent",
        (error: { code?: string }) => error.code ?? String(error),
      ),
    );
  }
  const from = { garage, device, name: "Garage", store: phone.store };
  const file = await new Blob(await takeout(from, new Date(0))).text();
  return { answers, file, texts: await phone.texts(), waiting: phone.live.waiting.value };
}
