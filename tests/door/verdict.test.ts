/** What the door page concludes from its looks: each missing step has a text of its own. */
import { describe, expect, it } from "vitest";
import { apart, verdict } from "../../server/tarebook/door/files/verdict.js";

const HOUR = 3_600_000;
const DAY = 24 * HOUR;

describe("the verdict", () => {
  it.each([
    ["trusted", { reached: true, named: true, trustedByName: true, trustedByAddress: true }],
    ["trusted", { reached: true, named: true, trustedByName: true, trustedByAddress: false }],
    ["untrusted", { reached: true, named: true, trustedByName: false, trustedByAddress: false }],
    ["no_name", { reached: true, named: false, trustedByName: false, trustedByAddress: true }],
    ["neither", { reached: true, named: false, trustedByName: false, trustedByAddress: false }],
    ["unlike", { reached: true, named: true, trustedByName: false, trustedByAddress: true }],
    ["alone", { reached: false }],
  ])("is %s for %o", (word, looks) => {
    expect(verdict(looks)).toBe(word);
  });
});

describe("clocks", () => {
  it.each([
    [0, null],
    [5 * HOUR, null],
    [7 * HOUR, "7 hours"],
    [3 * DAY, "3 days"],
    [400 * DAY, "400 days"],
    [6 * 365.25 * DAY, "6 years"],
  ])("%d ms apart are told as %s, whichever is ahead", (difference, words) => {
    const now = Date.UTC(2027, 2, 1);
    expect(apart(now, now + difference)).toBe(words);
    expect(apart(now + difference, now)).toBe(words);
  });
});
