// Written by `python -m tarebook.contract`. Do not edit.

export type Health = { ok: boolean; version: string; proto: number; schema: number; demo: boolean };
export type Pair = { code: string | null; name?: string; device?: string | null };
export type Waiting = { join?: string; words: readonly string[]; seconds: number };
export type Paired = { token: string; device: string; garage: string; name: string; demo: boolean };
export type Wait = { join: string };
export type Invitation = { id: string; link: string; code: string; svg: string; seconds: number };
export type Join = { id: string; name: string; words: readonly string[]; seconds: number };
export type Joins = { joins: readonly Join[] };
export type Proof = { receipt: string; sent_by?: string };
export type Push = { proto: number; schema: number; garage: string; epoch: string; entries: readonly string[]; receipts?: readonly (Proof | null)[] };
export type PushResult = { receipt?: string; sent_by?: string; id: string; state: "accepted" | "repeated" | "set_aside" | "id_reuse"; number: number; why: string | null };
export type Conflict = { record: string; fields: readonly string[] };
export type Pushed = { epoch: string; head: number; durable: number | null; results: readonly PushResult[]; conflicts: readonly Conflict[] };
export type PulledEntry = { receipt?: string; sent_by?: string; number: number; text: string; aside: string | null; id?: string };
export type Pulled = { epoch: string; head: number; durable: number | null; entries: readonly PulledEntry[]; mark: string; more: boolean; proven: string | null; devices: Record<string, unknown> };
export type Announce = { sha256: string; size: number; type: "image/jpeg" | "image/png" | "image/webp" };
export type Announced = { present: boolean; url?: string; offset?: number };
export type Device = { id: string; name: string; paired_at: string; last_seen: string; revoked_at: string | null; this: boolean };
export type Devices = { home: boolean; devices: readonly Device[] };
export type Rename = { name: string };

/** What each route takes, and answers in JSON. */
export type Routes = {
  "GET /health": { answer: Health };
  "POST /pair": { json: Pair; answer: Waiting | Paired };
  "POST /pair/wait": { json: Wait; answer: Waiting | Paired };
  "POST /pair/invitations": { answer: Invitation };
  "GET /pair/joins": { answer: Joins };
  "POST /pair/joins/{name}/confirm": { name: string; answer: Joins };
  "POST /pair/joins/{name}/refuse": { name: string; answer: Joins };
  "POST /sync/push": { json: Push; answer: Pushed };
  "GET /sync/pull": { query: { epoch?: string; since?: number; since_id?: string; limit?: number }; answer: Pulled };
  "POST /photos": { json: Announce; answer: Announced };
  "GET /devices": { answer: Devices };
  "POST /devices/{name}/rename": { name: string; json: Rename; answer: Devices };
  "POST /devices/{name}/revoke": { name: string; answer: Devices };
};
