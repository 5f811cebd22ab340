/** What goes wrong with a phone's storage, as rows of the error table. */

import { AppError } from "../errors";

/** The browser closed the connection behind our back: a page in the background, a storage process that died. */
const LOST = new Set(["InvalidStateError", "DatabaseClosedError", "UnknownError", "TransactionInactiveError"]);

/** Whether opening the database again may help. */
export function isLost(error: unknown): boolean {
  return namesIn(error).some((name) => LOST.has(name));
}

/** The error for a screen. A full disk shows in the transaction's abort alone, so the causes are searched as well. */
export function storageTrouble(error: unknown): AppError {
  if (error instanceof AppError) return error;
  const names = namesIn(error);
  if (names.includes("QuotaExceededError")) return new AppError("storage_full");
  if (names.includes("VersionError")) return new AppError("storage_newer");
  return new AppError("storage_failed", { reason: `${names.join(", ")}: ${String(error)}` });
}

function namesIn(error: unknown): string[] {
  const names: string[] = [];
  for (let at = error; at instanceof Object && names.length < 5; at = causeOf(at)) {
    names.push(String((at as { name?: unknown }).name));
  }
  return names;
}

function causeOf(error: object): unknown {
  const { inner, cause } = error as { inner?: unknown; cause?: unknown };
  return inner ?? cause;
}
