/** The one-time code, however it reaches the app. */
import { expect, test, vi } from "vitest";
import { bareCode, codeIn } from "../../webapp/src/parts/joining/pairingCode";
import { decoded } from "../../webapp/src/route";

vi.hoisted(() => vi.stubGlobal("location", { hash: "" })); // the address is read as soon as its room is

test("an address that is cut short in the middle of a sign is read as it stands", () => {
  expect(decoded("caf%C3%A9")).toBe("café");
  expect(["%E0%A4%A", "%", "%zz"].map(decoded)).toEqual(["%E0%A4%A", "%", "%zz"]);
  expect(codeIn("#/pair=%E0")).toBe("%E0");
});

test("a code is found in a pasted link and in the address of the page itself", () => {
  expect(codeIn("http://localhost:8017/#pair=Tio7zL7qIiP2g5PXmaeJSg")).toBe("Tio7zL7qIiP2g5PXmaeJSg");
  expect(codeIn("#/pair=ab-cd")).toBe("ab-cd");
  expect(codeIn("#/records")).toBeNull();
});

test("a code typed without its link may have gaps, but nothing that no code has", () => {
  expect(bareCode(" Tio7 zL7q ")).toBe("Tio7zL7q");
  expect(bareCode("http://example")).toBeNull();
  expect(bareCode("")).toBeNull();
});
