/**
 * Vectors: the files in `fixtures/vectors/` that both languages run, and how an outcome is compared.
 * `tests/vectors.py` says what a file holds and how to add a room.
 */

import { readdirSync, readFileSync } from "node:fs";

// What a claim is given comes from JSON and is as loose as that.
// biome-ignore lint/suspicious/noExplicitAny: see above
export type Given = any;
export type Claims = Readonly<Record<string, (given: Given) => unknown>>;
export type Case = {
  name: string;
  in: Given;
  out?: unknown;
  error?: string;
  data?: Record<string, unknown>;
  close?: number;
};
export type Vector = { file: string; about: string; function: string; cases: readonly Case[] };

const VECTORS = new URL("../fixtures/vectors/", import.meta.url);
const ROOMS = new URL("./claims/", import.meta.url);

export function vectors(): Vector[] {
  const files = readdirSync(VECTORS)
    .filter((name) => name.endsWith(".json"))
    .sort();
  return files.map((file) => ({ file, ...JSON.parse(readFileSync(new URL(file, VECTORS), "utf8")) }) as Vector);
}

/** Function name → what runs it, from every room. */
export async function claims(): Promise<Claims> {
  const rooms = readdirSync(ROOMS).filter((name) => name.endsWith(".ts"));
  const modules = await Promise.all(rooms.map((name) => import(new URL(name, ROOMS).pathname)));
  return Object.assign({}, ...modules.map((module) => module.claims)) as Claims;
}

/** Where two outcomes differ, one line for each place. */
export function differences(found: unknown, wanted: unknown, close = 0, place = "out"): string[] {
  if (Array.isArray(found) && Array.isArray(wanted) && found.length === wanted.length) {
    return wanted.flatMap((item, at) => differences(found[at], item, close, `${place}[${at}]`));
  }
  if (isRecord(found) && isRecord(wanted)) {
    return [...new Set([...Object.keys(wanted), ...Object.keys(found)])].flatMap((key) => {
      if (!Object.hasOwn(found, key) || !Object.hasOwn(wanted, key)) return [`${place}.${key}: only on one side`];
      return differences(found[key], wanted[key], close, `${place}.${key}`);
    });
  }
  return equal(found, wanted, close) ? [] : [`${place}: ${JSON.stringify(found)}, not ${JSON.stringify(wanted)}`];
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function equal(found: unknown, wanted: unknown, close: number): boolean {
  if (typeof found !== "number" || typeof wanted !== "number") return found === wanted;
  return Math.abs(found - wanted) <= close * Math.max(Math.abs(found), Math.abs(wanted));
}
