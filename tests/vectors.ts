/**
 * Vectors: the files in `fixtures/vectors/` that both languages run, and how an outcome is compared.
 * `tests/vectors/__init__.py` says what a file holds and how to add a room.
 */

import { readdirSync, readFileSync } from "node:fs";

// What a claim is given comes from JSON and is as loose as that.
// biome-ignore lint/suspicious/noExplicitAny: see above
export type Given = any;
export type Claim = (given: Given) => unknown;
export type Claims = Readonly<Record<string, Claim>>;
export type Case = {
  name: string;
  in: Given;
  out?: unknown;
  leaves?: Record<string, unknown>;
  error?: string;
  data?: Record<string, unknown>;
  close?: number;
};
export type Vector = { file: string; function: string; close?: number; given?: Given; cases: readonly Case[] };

const VECTORS = new URL("../fixtures/vectors/", import.meta.url);
const ROOMS = new URL("./claims/", import.meta.url);

/** Every file, its cases each with all of their `in`. */
export function vectors(): Vector[] {
  const files = readdirSync(VECTORS)
    .filter((name) => name.endsWith(".json"))
    .sort();
  return files.map((file) => {
    const vector: Vector = JSON.parse(readFileSync(new URL(file, VECTORS), "utf8"));
    const { close, given, cases } = vector;
    const whole = (item: Case) => ({ close, ...item, in: given ? laidOn(given, item.in) : item.in });
    return { ...vector, file, cases: cases.map(whole) };
  });
}

/** A change laid on what is given, as a JSON merge patch (RFC 7396); on a list of records it holds records by id. */
function laidOn(given: Given, change: Given): Given {
  if (!isRecord(change) || typeof given !== "object" || given === null) return change;
  if (Array.isArray(given)) {
    const records = laidOn(Object.fromEntries(given.map((record) => [record.id, record])), change);
    return Object.entries(records).map(([id, record]) => ({ id, ...(record as object) }));
  }
  const laid = Object.entries(change).map(([name, part]) => [name, laidOn(given[name], part)]);
  return Object.fromEntries(
    Object.entries({ ...given, ...Object.fromEntries(laid) }).filter(([, part]) => part !== null),
  );
}

/** Function name → what runs it, from every room. */
export async function claims(): Promise<Claims> {
  const rooms = readdirSync(ROOMS).filter((name) => name.endsWith(".ts"));
  const modules = await Promise.all(rooms.map((name) => import(new URL(name, ROOMS).pathname)));
  return Object.assign({}, ...modules.map((module) => module.claims)) as Claims;
}

/** What comes of a case, in the form it is kept in; of a refusal's data what the case tells. */
export function outcome(run: Claim, item: Case): object {
  try {
    const out = run(item.in);
    const paths = Object.keys(item.leaves ?? {});
    return item.leaves ? { leaves: Object.fromEntries(paths.map((path) => [path, leaf(out, path)])) } : { out };
  } catch (refusal) {
    const { code, data } = refusal as { code?: string; data?: Record<string, unknown> };
    if (code === undefined) throw refusal;
    const told = Object.keys(item.data ?? {}).map((name) => [name, data?.[name]]);
    return { error: code, ...(item.data && { data: Object.fromEntries(told) }) };
  }
}

/** What stands at a path of an answer, without the sources of its doubts unless they are asked for; or null. */
function leaf(answer: unknown, path: string): unknown {
  const found = path.split(".").reduce(at, answer);
  return path.endsWith("sources") ? found : brief(found);
}

function brief(answer: unknown): unknown {
  if (Array.isArray(answer)) return answer.map(brief);
  if (!isRecord(answer)) return answer;
  const told = Object.entries(answer).filter(([name]) => name !== "sources");
  return Object.fromEntries(told.map(([name, part]) => [name, brief(part)]));
}

function at(answer: unknown, name: string): unknown {
  if (Array.isArray(answer))
    return /^\d+$/.test(name) ? (answer[Number(name)] ?? null) : answer.map((item) => at(item, name));
  return isRecord(answer) && Object.hasOwn(answer, name) ? answer[name] : null;
}

/** Where two outcomes differ, one line for each place. What is missing is as null. */
export function differences(found: unknown, wanted: unknown, close = 0, place = ""): string[] {
  if (Array.isArray(found) && Array.isArray(wanted) && found.length === wanted.length) {
    return wanted.flatMap((item, at) => differences(found[at], item, close, `${place}.${at}`));
  }
  if (isRecord(found) && isRecord(wanted)) {
    const names = new Set([...Object.keys(wanted), ...Object.keys(found)]);
    return [...names].flatMap((name) => differences(own(found, name), own(wanted, name), close, `${place}.${name}`));
  }
  return equal(found, wanted, close) ? [] : [`${place}: ${JSON.stringify(found)}, not ${JSON.stringify(wanted)}`];
}

function own(record: Record<string, unknown>, name: string): unknown {
  return Object.hasOwn(record, name) ? record[name] : null;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function equal(found: unknown, wanted: unknown, close: number): boolean {
  if (typeof found !== "number" || typeof wanted !== "number") return (found ?? null) === (wanted ?? null);
  return Math.abs(found - wanted) <= close * Math.max(Math.abs(found), Math.abs(wanted));
}
