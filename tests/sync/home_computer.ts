/**
 * A home computer inside the test's own process: it keeps a journal and photos as the server does, honest by itself and
 * hostile on request. It does not fold; that server and phone fold alike is proven by `fixtures/journals/`.
 */

import { createHash, createHmac, randomUUID } from "node:crypto";

import { rawId, readEntry } from "../../webapp/src/journal/entry";

/** What happens to one request. `lost`: done, but the answer never arrives; `dropped`: never arrives; `hang`: no answer. */
export type Fault = "lost" | "dropped" | "hang" | "truncated" | "empty" | "page" | 500 | 503 | 413;

/** `mark` names the act of intake: the same entry taken in again after a restore has another. `sentBy`: its author. */
export type Line = { number: number; name: string; text: string; aside: string | null; mark: string; sentBy: string };
type Upload = { sha256: string; size: number; bytes: Uint8Array<ArrayBuffer> };
type Proof = { receipt: string; sent_by?: string };
type Kept = { epoch: string; lines: Line[]; photos: Map<string, Uint8Array> };

export class HomeComputer {
  epoch = "epoch-1";
  durable: number | null = null;
  key = "the garage's key";
  lines: Line[] = [];
  photos = new Map<string, Uint8Array>();
  readonly uploads = new Map<string, Upload>();
  readonly devices = new Set<string>();
  readonly revoked = new Set<string>();
  /** Faults for the requests to come, first come first served; `faultFor` decides when the list is empty. */
  faults: Fault[] = [];
  faultFor: (path: string, body: unknown) => Fault | null = () => null;
  /** Paths asked for, in order. */
  asked: string[] = [];
  largestBatch = 0;

  constructor(readonly garage: string) {}

  get head(): number {
    return this.lines.length;
  }

  readonly fetch = async (url: string, options: RequestInit): Promise<Response> => {
    const path = url.replace("/api/v1", "");
    const body = bodyOf(options);
    this.asked.push(`${options.method} ${path.split("?")[0]}`);
    const fault = this.faults.shift() ?? this.faultFor(path, body);
    if (fault === "dropped") throw new TypeError("network error");
    if (fault === "hang") return hang(options.signal!);
    if (typeof fault === "number") return refusal(fault, { 500: "broken", 503: "busy", 413: "too_large" }[fault]);
    const answer = this.answer(path, options, body);
    if (fault === "lost") throw new TypeError("network error");
    return spoil(answer, fault);
  };

  /** Everything a backup would hold, now. */
  backup(): Kept {
    return { epoch: this.epoch, lines: [...this.lines], photos: new Map(this.photos) };
  }

  /** `announced`: by the restore command, which mints a new epoch; otherwise someone just copied the files back. */
  restore({ epoch, lines, photos }: Kept, announced: boolean): void {
    this.lines = [...lines];
    this.photos = new Map(photos);
    this.epoch = announced ? `${epoch}+${this.asked.length}` : epoch;
    this.durable = null;
    this.uploads.clear();
  }

  private answer(path: string, options: RequestInit, body: unknown): Response {
    const device = new Headers(options.headers).get("Authorization")?.replace("Bearer token-", "") ?? "";
    if (!this.devices.has(device)) return refusal(401, "unpaired");
    if (this.revoked.has(device)) return refusal(403, "revoked");
    if (path === "/sync/push") return this.push(body as Push, device);
    if (path.startsWith("/sync/pull")) return this.pull(new URLSearchParams(path.split("?")[1]));
    if (path === "/photos") return this.announce(body as { sha256: string; size: number });
    if (path.startsWith("/uploads/")) return this.piece(path.slice(9), options);
    return refusal(404, "not_found");
  }

  private push({ garage, epoch, entries, receipts }: Push, device: string): Response {
    if (garage !== this.garage) return refusal(409, "other_garage");
    if (epoch !== this.epoch) return this.rewound();
    if (entries.length > 500) return refusal(413, "too_many_entries");
    if (entries.reduce((size, text) => size + Buffer.byteLength(text), 0) > 256 * 1024)
      return refusal(413, "too_large");
    this.largestBatch = Math.max(this.largestBatch, entries.length);
    const results = entries.map((text, at) => this.take(text, receipts?.[at] ?? null, device));
    return json({ epoch: this.epoch, head: this.head, durable: this.durable, results, conflicts: [] });
  }

  private take(text: string, proof: Proof | null, device: string) {
    const entry = readEntry(text);
    const first = entry && this.lines.find((line) => line.name === entry.id);
    const name = entry && (!first || first.text === text) ? entry.id : rawId(text);
    const here = this.lines.find((line) => line.name === name);
    const author = proof?.sent_by ?? entry?.device ?? "";
    const proven = proof?.receipt === this.receipt(text, author);
    if (here && proven && here.aside !== null) this.takeIn(name);
    if (here) return { id: name, state: "repeated", number: here.number, why: null, ...this.told(here) };
    const known = !entry || proven || (this.devices.has(entry.device) && !this.revoked.has(entry.device));
    const [aside, sentBy] = [known ? null : "stranger", proven ? author : device];
    const line = { number: this.head + 1, name, text, aside, mark: randomUUID(), sentBy };
    this.lines.push(line);
    return { id: name, state: first ? "id_reuse" : "accepted", number: line.number, why: aside, ...this.told(line) };
  }

  /** By a verdict of its own, unless there is one. */
  private takeIn(entry: string): void {
    const name = `verdict-on-${entry}`;
    if (this.lines.some((line) => line.name === name)) return;
    const set = { entry, take: true };
    const made = { id: name, device: "home", writer: "home", n: 1, kind: "verdict", record: name, set, base: [] };
    const text = JSON.stringify(made);
    this.lines.push({ number: this.head + 1, name, text, aside: null, mark: randomUUID(), sentBy: "home" });
  }

  private receipt(text: string, author: string): string {
    return createHmac("sha256", this.key).update(`${text} ${author}`).digest("base64url").slice(0, 22);
  }

  private told({ text, aside, sentBy }: Line): Partial<Proof> {
    const receipt = aside === null ? { receipt: this.receipt(text, sentBy) } : {};
    return readEntry(text)?.device === sentBy ? receipt : { ...receipt, sent_by: sentBy };
  }

  private pull(query: URLSearchParams): Response {
    const since = Number(query.get("since"));
    const epoch = query.get("epoch")!;
    if ((since > 0 || epoch !== "") && epoch !== this.epoch) return this.rewound();
    if (since > 0 && this.lines[since - 1]?.mark !== query.get("since_id")) return this.rewound();
    const page = this.lines.slice(since, since + Number(query.get("limit")));
    const entries = page.map((line) => {
      const { number, name, text, aside } = line;
      const own = readEntry(text)?.id === name;
      return { number, text, aside, ...(own ? {} : { id: name }), ...this.told(line) };
    });
    const upTo = since + page.length;
    const mark = this.lines[upTo - 1]?.mark ?? "";
    return json({ epoch: this.epoch, head: this.head, durable: this.durable, entries, mark, more: upTo < this.head });
  }

  private announce({ sha256, size }: { sha256: string; size: number }): Response {
    if (this.photos.has(sha256)) return json({ present: true });
    const upload = this.uploads.get(sha256) ?? { sha256, size, bytes: new Uint8Array(0) };
    this.uploads.set(sha256, upload);
    return json({ present: false, url: `/api/v1/uploads/${sha256}`, offset: upload.bytes.length }, 201);
  }

  private piece(name: string, options: RequestInit): Response {
    const upload = this.uploads.get(name);
    if (!upload) return refusal(404, "upload_unknown");
    const offset = Number(new Headers(options.headers).get("Upload-Offset"));
    if (offset !== upload.bytes.length) return refusal(409, "upload_offset", { offset: upload.bytes.length });
    upload.bytes = new Uint8Array([...upload.bytes, ...(options.body as Uint8Array)]);
    const taken = new Response(null, { status: 204, headers: { "Upload-Offset": String(upload.bytes.length) } });
    if (upload.bytes.length < upload.size) return taken;
    this.uploads.delete(name);
    if (hashOf(upload.bytes) !== name) return refusal(422, "photo_hash_mismatch");
    this.photos.set(name, upload.bytes);
    return taken;
  }

  private rewound(): Response {
    return refusal(409, "rewound", { epoch: this.epoch, head: this.head });
  }
}

type Push = { garage: string; epoch: string; entries: string[]; receipts?: (Proof | null)[] };

export function hashOf(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}

function bodyOf({ body }: RequestInit): unknown {
  return typeof body === "string" ? JSON.parse(body) : body;
}

function json(body: object, status = 200): Response {
  return new Response(JSON.stringify(body), { status });
}

function refusal(status: number, code: string | undefined, data: object = {}): Response {
  return json({ error: { code, sentence: "", do: "", data } }, status);
}

async function spoil(answer: Response, fault: Fault | null): Promise<Response> {
  const { status } = answer;
  if (fault === "page") return new Response("<html>Please log in to this network</html>", { status: 200 });
  if (fault === "empty") return new Response("", { status: status === 204 ? 200 : status });
  if (fault !== "truncated") return answer;
  const text = await answer.text();
  return new Response(text.slice(0, text.length / 2), { status: status === 204 ? 200 : status });
}

/** No answer until the asker gives up. */
function hang(signal: AbortSignal): Promise<never> {
  return new Promise((_, reject) => signal.addEventListener("abort", () => reject(signal.reason as Error)));
}
