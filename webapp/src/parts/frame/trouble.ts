/** Whatever was thrown, as a row of the error table that a screen can show. */
import { AppError } from "../../errors";

export function troubleOf(error: unknown): AppError {
  return error instanceof AppError ? error : new AppError("broken", { reason: String(error) });
}
