/** Whether something is half typed on this device, so that no new version is taken in the middle of it. */
import { expect, test, vi } from "vitest";
import { inTheMiddle } from "../../webapp/src/screens/Devices/inTheMiddle";
import { opened } from "../../webapp/src/store/opened";

vi.hoisted(() => vi.stubGlobal("location", { hash: "" })); // the address is read as soon as its room is

const DONOR = { part: "p-1", name: "", insteadOf: { id: null, text: "" }, shown: "", scale: "", yard: "", row: "" };

/** With these drafts on the phone. */
async function unfinished(kept: Record<string, object>): Promise<string[]> {
  const drafts = { names: async () => Object.keys(kept), load: async (name: string) => kept[name] };
  opened.value = { drafts } as unknown as typeof opened.value;
  return (await inTheMiddle()).map(({ words }) => words);
}

test("a donor part is half noted once it has a weight, a row, a price or a photo, and not before", async () => {
  const shots = [{ bytes: new ArrayBuffer(1), type: "image/jpeg", width: 1, height: 1 }];
  expect(await unfinished({ "donor:new": { ...DONOR, asking: "", shots: [] } })).toEqual([]);
  expect(await unfinished({ "donor:new": { ...DONOR, asking: "40", shots: [] } })).toEqual([
    "A half-typed donor part: a part",
  ]);
  expect(await unfinished({ "donor:new": { ...DONOR, asking: "", shots } })).toEqual([
    "A half-typed donor part: a part",
  ]);
});

test("a whole car is half weighed once one reading is typed", async () => {
  expect(await unfinished({ "weigh-car:": { id: "w-1", lf: "", total: "" } })).toEqual([]);
  expect(await unfinished({ "weigh-car:": { id: "w-1", lf: "251", total: "" } })).toEqual(["A half-typed weigh-in"]);
});
