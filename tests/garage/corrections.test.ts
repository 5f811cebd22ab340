/** A correction in the middle is withdrawn: of what it took the place of and what took its place, exactly one counts. */

import { afterEach, expect, test } from "vitest";
import { book } from "../../webapp/src/answers";
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
