/** The one error the phone throws: a code of the shared table, with its sentence and what to do. */

/** Carries {code, sentence, do, data}, as the server's error body does. */
export class AppError extends Error {
  override readonly name = "AppError";

  constructor(
    readonly code: string,
    readonly sentence: string,
    readonly todo: string,
    readonly data: Record<string, unknown> = {},
  ) {
    super(sentence);
  }

  get do(): string {
    return this.todo;
  }
}
