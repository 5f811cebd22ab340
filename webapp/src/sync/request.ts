/** One request to the home computer: always with an end, and every way it can go wrong as a row of the error table. */

import { AppError } from "../generated/errors";

/** A server out of range does not refuse, it hangs: no request may wait longer than this. */
export const PATIENCE = 20_000;

export type Wire = {
  fetch: (url: string, options: RequestInit) => Promise<Response>;
  token: string | null;
  /** Milliseconds until a request is given up. */
  patience: number;
};

export type Ask = { method?: string; json?: unknown; bytes?: Uint8Array<ArrayBuffer>; headers?: Record<string, string> };

/** The answer to a request, or AppError: the server's own code, `unreachable`, or `answer_unreadable`. */
export async function request(wire: Wire, path: string, ask: Ask = {}): Promise<Response> {
  const answer = await reach(wire, path, ask);
  if (answer.ok) return answer;
  throw AppError.fromBody(await bodyOf(answer)) ?? new AppError("answer_unreadable", { status: answer.status });
}

/** The JSON object of an answer. A body cut short, or someone else's page, is `answer_unreadable`. */
export async function requestJson(wire: Wire, path: string, ask: Ask = {}): Promise<Record<string, unknown>> {
  const answer = await request(wire, path, ask);
  const body = await bodyOf(answer);
  if (typeof body !== "object" || body === null || Array.isArray(body)) throw unreadable(answer, "no JSON object");
  return body as Record<string, unknown>;
}

/** The bytes of an answer; an empty or broken body is `answer_unreadable`. */
export async function requestBytes(wire: Wire, path: string): Promise<{ bytes: ArrayBuffer; type: string }> {
  const answer = await request(wire, path);
  const bytes = await answer.arrayBuffer().catch(() => new ArrayBuffer(0));
  if (bytes.byteLength === 0) throw unreadable(answer, "no bytes");
  return { bytes, type: answer.headers.get("Content-Type") ?? "" };
}

async function reach(wire: Wire, path: string, ask: Ask): Promise<Response> {
  try {
    return await wire.fetch(`/api/v1${path}`, optionsOf(wire, ask));
  } catch (error) {
    throw new AppError("unreachable", { reason: String(error) });
  }
}

function optionsOf(wire: Wire, ask: Ask): RequestInit {
  const headers: Record<string, string> = { ...ask.headers };
  if (wire.token !== null) headers.Authorization = `Bearer ${wire.token}`;
  if (ask.json !== undefined) headers["Content-Type"] = "application/json";
  return {
    method: ask.method ?? "GET",
    headers,
    body: ask.json === undefined ? ask.bytes : JSON.stringify(ask.json),
    signal: AbortSignal.timeout(wire.patience),
    cache: "no-store",
    credentials: "omit",
  };
}

async function bodyOf(answer: Response): Promise<unknown> {
  try {
    return await answer.json();
  } catch {
    return null;
  }
}

export function unreadable(answer: { status: number }, reason: string): AppError {
  return new AppError("answer_unreadable", { status: answer.status, reason });
}
