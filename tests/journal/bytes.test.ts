/** SHA-256 and UTF-8 as the journal uses them: against published values and against other implementations. */

import { createHash } from "node:crypto";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { sha256, utf8, utf8Length } from "../../webapp/src/journal/bytes";

describe("SHA-256", () => {
  // FIPS 180-2, appendix B, and the empty message of the NIST example values.
  it.each([
    ["abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"],
    [
      "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
      "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
    ],
    ["a".repeat(1_000_000), "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"],
    ["", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"],
  ])("has the published value (%#)", (text, hash) => expect(sha256(utf8(text))).toBe(hash));

  it("agrees with OpenSSL's on any bytes", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(sha256(bytes)).toBe(createHash("sha256").update(bytes).digest("hex"));
      }),
    );
  });
});

describe("UTF-8", () => {
  const anyText = fc.oneof(fc.string({ unit: "binary" }), fc.string(), fc.constant("a\ud800b"), fc.constant("\udc00"));

  it("agrees with the platform's encoder, lone surrogates included", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect([...utf8(text)]).toEqual([...new TextEncoder().encode(text)]);
      }),
    );
  });

  it("is measured without being made", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(utf8Length(text)).toBe(utf8(text).length);
      }),
    );
  });
});
