/** What the core is given of what was deleted: withdrawn corrections, and scales and drivers that were weighed with. */

import { afterEach, expect, test } from "vitest";
import { book, known } from "../../webapp/src/answers";
import { live } from "../../webapp/src/garage/garage";
import { correctedOf, replacedIn } from "../../webapp/src/parts/forms/corrected";
import { newestLooks } from "../../webapp/src/screens/Weigh/newestLooks";
import { HomeComputer } from "../sync/home_computer";
import { Phone } from "../sync/phone";

afterEach(() => {
  live.value = null;
});

test("one weigh-in counts, and the screens say which", async () => {
  const phone = await Phone.open("device-1", new HomeComputer("garage"));
  live.value = phone.live;
  const kept = { layout: "total", trim: "event", total: "900 kg" };
  const chain = ["a", "b", "c"];
  for (const [at, record] of chain.entries()) {
    const set = { ...kept, ...(at > 0 && { replaces: chain[at - 1]! }) };
    await phone.writer.save([{ kind: "weigh_in", record, set }]);
  }
  await phone.writer.save([{ kind: "weigh_in", record: "b", set: { deleted: true } }]);
  expect([...book.value.weigh_ins.keys()]).toEqual(["c"]);
  const [first, , last] = chain.map((id) => phone.live.garage.value.one("weigh_in", id)!);
  expect([first, last].map((rec) => correctedOf(rec!)?.counts)).toEqual(["c", "c"]);
  expect(newestLooks(phone.live.garage.value.of("weigh_in"), 5, replacedIn("weigh_in")).map(({ id }) => id)).toEqual([
    "c",
  ]);

  await phone.writer.save([{ kind: "weigh_in", record: "c", set: { deleted: true } }]);
  expect([...book.value.weigh_ins.keys()]).toEqual(["a"]);
});

test("what was weighed on a scale and of a driver since deleted stays weighed", async () => {
  const phone = await Phone.open("device-1", new HomeComputer("garage"));
  live.value = phone.live;
  const weighing = { of: "d", method: "direct", shown: "76 kg", scale: "s" };
  await phone.writer.save([
    { kind: "scale", record: "s", set: { name: "Bench", kind: "bench", division: "10 g" } },
    { kind: "driver", record: "d", set: { name: "Anna", claim: "75 kg" } },
    { kind: "weighing", record: "w", set: weighing },
  ]);
  const before = known.value.of.get("d")?.mass;
  await phone.writer.save([
    { kind: "scale", record: "s", set: { deleted: true } },
    { kind: "driver", record: "d", set: { deleted: true } },
  ]);
  expect(book.value.warnings).toEqual([]);
  expect(known.value.of.get("d")?.mass).toEqual(before);
});
