/**
 * Every sentence about trouble comes from the server's table: `generated/errors` is what the first screen needs of it,
 * `laterErrors` brings what screens opened later tell.
 */
import { ERRORS } from "./generated/errors";
import type { LATER_ERRORS } from "./generated/laterErrors";

type Row = readonly [sentence: string, todo: string];
const known: Record<string, Row> = { ...ERRORS };

/** Takes in rows that come with what tells them: the first screen does without. */
export function addErrors(rows: Readonly<Record<string, Row>>): void {
  Object.assign(known, rows);
}

export type ErrorCode = keyof typeof ERRORS | keyof typeof LATER_ERRORS;
export type ErrorData = Record<string, unknown>;
export type Described = { code: ErrorCode; sentence: string; do: string; data: ErrorData };

/** `{name}` in a text is filled from the data; a name nobody gave stays visible. */
export function fill(text: string, data: ErrorData): string {
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => (name in data ? String(data[name]) : whole));
}

/** The error as every answer of the server carries it. A code this app has no row for comes from a newer server. */
export function describe(code: ErrorCode, data: ErrorData = {}): Described {
  const [sentence, todo] = known[Object.hasOwn(known, code) ? code : "app_older"] as Row;
  return { code, sentence: fill(sentence, data), do: fill(todo, data), data };
}

export class AppError extends Error {
  readonly code: ErrorCode;
  readonly data: ErrorData;
  readonly sentence: string;
  readonly do: string;

  constructor(code: ErrorCode, data: ErrorData = {}, described = describe(code, data)) {
    super(described.sentence);
    this.name = "AppError";
    this.code = code;
    this.data = data;
    this.sentence = described.sentence;
    this.do = described.do;
  }

  /** Reads `{"error": {code, sentence, do, data}}`, an answer of the server; null when it is something else. */
  static fromBody(body: unknown): AppError | null {
    const error = (body as { error?: Partial<Described> } | null)?.error;
    if (typeof error?.code !== "string") return null;
    const { code, data = {} } = error;
    if (Object.hasOwn(known, code)) return new AppError(code, data);
    // A code this app has no row for brings its own words.
    return typeof error.sentence === "string" ? new AppError(code, data, { do: "", ...error } as Described) : null;
  }
}
