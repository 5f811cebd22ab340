/** What the phone makes of a refusal in an answer of the home computer. */
import { expect, test } from "vitest";
import { AppError, describe } from "../webapp/src/errors";

test("a code of the app's own table is said in the app's words", () => {
  const error = AppError.fromBody({
    error: { code: "entry_too_large", sentence: "Other words.", data: { most: 500 } },
  });
  expect(error).toMatchObject(describe("entry_too_large", { most: 500 }));
  expect(error?.message).toBe("One record may be at most 500 bytes long.");
});

test("a code the app has no row for brings its own words", () => {
  const told = {
    code: "database_damaged",
    sentence: "The database is damaged.",
    do: "Take the last backup.",
    data: { at: 3 },
  };
  expect(AppError.fromBody({ error: told })).toMatchObject(told);
});

test("what is no refusal is none", () => {
  for (const body of [null, "no", {}, { error: null }, { error: { code: 7 } }, { error: { code: "never_heard_of" } }]) {
    expect(AppError.fromBody(body)).toBeNull();
  }
});
