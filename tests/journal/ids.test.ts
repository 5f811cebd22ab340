/** Ids: UUIDv7 by the standard's own example, rising whatever the clock does. */

import { describe, expect, it } from "vitest";

import { isId } from "../../webapp/src/journal/entry";
import { idMaker, uuid7 } from "../../webapp/src/journal/ids";

describe("an id", () => {
  it("is the UUIDv7 of RFC 9562, appendix A.6", () => {
    const random = new Uint8Array([0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f]);
    expect(uuid7(0x017f22e279b0, random)).toBe("017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
  });

  it("rises strictly: within a millisecond, and when the clock is set back", () => {
    const clock = [5000, 5000, 5000, 4000, 5001, 10];
    let chance = 255;
    const next = idMaker(
      () => clock.shift()!,
      (bytes) => bytes.fill(chance--),
    );
    const ids = Array.from({ length: 6 }, next);
    expect([...ids].sort()).toEqual(ids);
    expect(new Set(ids).size).toBe(6);
    expect(ids.every(isId)).toBe(true);
  });
});
