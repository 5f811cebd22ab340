/** The phone's own code behind a hostile proxy (`proxy.py`): it saves, sends, dies and opens again, then the air clears. */

import { newId } from "../../webapp/src/garage/write";
import type { HomeComputer } from "../sync/home_computer";
import { Phone } from "../sync/phone";

type Given = {
  proxy: string;
  server: string;
  token: string;
  garage: string;
  device: string;
  /** What to do, in turn: "save", "sync", "kill", or a photo's bytes in base64 to save. */
  steps: string[];
};

export async function run({ proxy, server, token, garage, device, steps }: Given) {
  let base = proxy;
  const fetchBy = (url: string, options: RequestInit) => {
    const headers = { ...(options.headers as Record<string, string>), Authorization: `Bearer ${token}` };
    return fetch(base + url, { ...options, headers });
  };
  // Only what a phone takes of it: whose garage it is, and the way there.
  const home = { garage, devices: new Set(), fetch: fetchBy } as unknown as HomeComputer;
  let phone = await Phone.open(device, home);
  const troubles: Record<string, number> = {};
  const saved: string[] = [];
  const sync = () =>
    phone.sync().catch((error: { code?: string }) => {
      const code = error.code ?? String(error);
      troubles[code] = (troubles[code] ?? 0) + 1;
    });
  for (const step of steps) {
    if (step === "sync") await sync();
    else if (step === "kill") phone = await phone.kill();
    else {
      const before = new Set(await phone.texts());
      await save(phone, step === "save" ? null : new Uint8Array(Buffer.from(step, "base64")).buffer);
      // Looked at now: what is pulled later may have been turned on its way, without TLS.
      for (const text of await phone.texts()) if (!before.has(text)) saved.push(text);
    }
  }
  const known = { ...troubles };
  base = server;
  phone = await phone.kill(); // what was refused alone stands back for a minute or more, or until the app is opened again
  for (let round = 0; round < 5; round++) await sync();
  const photos = await phone.store.read((db) => db.photos.toArray());
  return {
    saved,
    troubles: known,
    seen: await phone.texts(),
    photos: photos.map(({ sha256, state }) => [sha256, state]),
  };
}

async function save(phone: Phone, bytes: ArrayBuffer | null): Promise<void> {
  const record = newId();
  const photos = bytes ? [{ of: record, bytes, type: "image/jpeg" as const, width: 120, height: 90 }] : [];
  await phone.writer.save([{ kind: "job", record, set: { name: `Job ${record}` } }], photos);
}
