/** One request to the home computer: always with an end, and every way it can go wrong as a row of the error table. */

import { AppError } from "../errors";
import type { Routes } from "../generated/routes";

/** A server out of range does not refuse, it hangs: no request may wait longer than this. */
export const PATIENCE = 9_000;
/** For what a person asked for and nothing else waits for: a picture, over a weak link. */
export const LONG_PATIENCE = 60_000;
/** A link is tried with a small load first, and twice as much each time it managed. */
const START = 1 / 4;
const SLOWEST = 1 / 64;

export type Wire = {
  fetch: (url: string, options: RequestInit) => Promise<Response>;
  token: string | null;
  /** Milliseconds until a request is given up. */
  patience: number;
  /** How much of a full load one request carries (1/64 to 1), so that a weak link gets it over in time. */
  pace?: number;
};

/** What this page sends and hears; `token` is null before pairing. */
export function wireOf(token: string | null, patience = PATIENCE): Wire {
  return { fetch: (url, options) => fetch(url, options), token, patience };
}

/** So much of a full load as the link has lately managed. */
export function paced(wire: Wire, full: number): number {
  return Math.ceil(full * (wire.pace ?? START));
}

/** To be called when as much as `paced` allowed got over in time: the next load may be twice that. */
export function managed(wire: Wire): void {
  wire.pace = Math.min(1, 2 * (wire.pace ?? START));
}

/** A method and a path of the home computer's own document. */
export type Route = keyof Routes;
export type Answer<R extends Route> = Routes[R]["answer"];
/** What a route takes. */
export type Sent<R extends Route> = Omit<Routes[R], "answer"> & Parts;
type Parts = { name?: string; query?: Record<string, string | number>; json?: unknown };
type Names<T> = T extends unknown ? keyof T : never;
/** An answer as it came: its names are those of the document, its values are what anyone may have sent. */
export type Claimed<R extends Route> = { readonly [Name in Names<Answer<R>>]?: unknown };

export type Ask = {
  json?: unknown;
  bytes?: Uint8Array<ArrayBuffer>;
  headers?: Record<string, string>;
};

/** The answer to a request, or AppError: the server's own code, `unreachable`, or `answer_unreadable`. */
export async function request(wire: Wire, route: string, ask: Ask = {}): Promise<Response> {
  const answer = await reach(wire, route, ask);
  if (answer.ok) return answer;
  throw (
    AppError.fromBody(await bodyOf(answer).catch(() => null)) ??
    new AppError("answer_unreadable", { status: answer.status })
  );
}

/** The JSON object of an answer. A body cut short, or someone else's page, is `answer_unreadable`. */
export async function requestJson<R extends Route>(wire: Wire, route: R, sent: Sent<R>): Promise<Claimed<R>> {
  const { name = "", query, json }: Parts = sent;
  const asked = query ? `?${new URLSearchParams(query as Record<string, string>)}` : "";
  const answer = await request(wire, route.replace("{name}", encodeURIComponent(name)) + asked, { json });
  const body = await bodyOf(answer).catch((error: unknown) => brokenOff(wire, error));
  if (typeof body !== "object" || body === null || Array.isArray(body)) throw unreadable(answer, "no JSON object");
  return body;
}

/** The bytes of an answer; an empty or broken body is `answer_unreadable`. */
export async function requestBytes(wire: Wire, route: string): Promise<{ bytes: ArrayBuffer; type: string }> {
  const answer = await request(wire, route);
  const bytes = await answer.arrayBuffer().catch(() => new ArrayBuffer(0));
  if (bytes.byteLength === 0) throw unreadable(answer, "no bytes");
  return { bytes, type: answer.headers.get("Content-Type") ?? "" };
}

async function reach(wire: Wire, route: string, ask: Ask): Promise<Response> {
  const [method, path] = route.split(" ");
  try {
    return await wire.fetch(`/api/v1${path}`, { ...optionsOf(wire, ask), method });
  } catch (error) {
    brokenOff(wire, error);
    throw new AppError("unreachable", { reason: String(error) });
  }
}

/** A request that took too long carries half as much next time. Rejects with AppError then; else null. */
function brokenOff(wire: Wire, error: unknown): null {
  if ((error as { name?: unknown } | null)?.name !== "TimeoutError") return null;
  wire.pace = Math.max(SLOWEST, (wire.pace ?? START) / 2);
  throw new AppError("unreachable", { reason: String(error) });
}

function optionsOf(wire: Wire, ask: Ask): RequestInit {
  const headers: Record<string, string> = { ...ask.headers };
  if (wire.token !== null) headers.Authorization = `Bearer ${wire.token}`;
  if (ask.json !== undefined) headers["Content-Type"] = "application/json";
  return {
    headers,
    body: ask.json === undefined ? ask.bytes : JSON.stringify(ask.json),
    signal: AbortSignal.timeout(wire.patience),
    cache: "no-store",
    credentials: "omit",
  };
}

/** Null for what is no JSON; rejects when time ran out before the end of it. */
async function bodyOf(answer: Response): Promise<unknown> {
  const text = await answer.text();
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

export function isText(value: unknown): value is string {
  return typeof value === "string" && value !== "";
}

export function isTextOrLeftOut(value: unknown): value is string | undefined {
  return value === undefined || typeof value === "string";
}

/** A whole number that is kept exactly. */
export function isWhole(value: unknown): value is number {
  return Number.isSafeInteger(value);
}

export function unreadable(answer: { status: number }, reason: string): AppError {
  return new AppError("answer_unreadable", { status: answer.status, reason });
}
