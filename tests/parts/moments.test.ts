/** Dates as people say them. */
import { expect, test } from "vitest";
import { momentNow } from "../../webapp/src/parts/words/momentFields";
import { momentOfId, sayMoment } from "../../webapp/src/parts/words/moments";

const NOW = new Date("2026-05-02T14:00:00");

test("near moments are said by day and clock, far ones by date", () => {
  expect(sayMoment("2026-05-02T09:05:00", NOW)).toBe("today 09:05");
  expect(sayMoment("2026-05-01T23:59:00", NOW)).toBe("yesterday 23:59");
  expect(sayMoment("2026-03-07T10:00:00", NOW)).toBe("7 Mar");
  expect(sayMoment("2024-03-07", NOW)).toBe("7 Mar 2024");
});

// The outside: Intl.DateTimeFormat of this Node, British English.
test("days, years and clocks read as British English writes them, whatever the month", () => {
  const day = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "short", year: "numeric" });
  const clock = new Intl.DateTimeFormat("en-GB", { hour: "2-digit", minute: "2-digit" });
  for (let month = 0; month < 12; month++) {
    const then = new Date(2024, month, 3 * month + 1, 2 * month, 5 * month);
    expect(sayMoment(then.toISOString(), NOW)).toBe(day.format(then));
    expect(sayMoment(then.toISOString(), then)).toBe(`today ${clock.format(then)}`);
  }
});

test("what is no date is said as somebody wrote it", () => {
  expect(sayMoment("last spring", NOW)).toBe("last spring");
  expect(sayMoment(undefined, NOW)).toBe("");
});

test("an id of version 7 tells when it was made (RFC 9562, appendix A.6)", () => {
  expect(momentOfId("017f22e2-79b0-7cc3-98c4-dc0c0c07398f")).toBe("2022-02-22T19:22:22.000Z");
  expect(momentOfId("home")).toBeNull();
});

test("the present moment keeps the local time and its offset", () => {
  const told = momentNow(NOW);
  expect(told).toMatch(/^2026-05-02T14:00[+-]\d\d:\d\d$/);
  expect(new Date(told).getTime()).toBe(NOW.getTime());
});
