/** What two phones wrote without knowing of each other, where it stands and in words. */

import { afterEach, describe, expect, it } from "vitest";
import { live } from "../../webapp/src/garage/garage";
import { asideOn, disputes, disputesOn } from "../../webapp/src/garage/unsettled";
import { type Change, newId } from "../../webapp/src/garage/write";
import { bothTexts, claimWords, deletionWords, unsettledWords } from "../../webapp/src/parts/conflicts/words";
import { HomeComputer } from "../sync/home_computer";
import { Phone } from "../sync/phone";

const [JOB, PART] = [newId(), newId()];

afterEach(() => {
  live.value = null;
});

/** One phone, shown, after both have written and met. */
async function apart(one: Change[], other: Change[]): Promise<Phone> {
  const home = new HomeComputer("garage");
  const [here, there] = [await Phone.open("here", home), await Phone.open("there", home)];
  await here.writer.save([
    { kind: "job", record: JOB, set: { name: "Seats out", note: "Heavy" } },
    { kind: "part", record: PART, set: { name: "Seat" } },
  ]);
  for (const phone of [here, there]) await phone.sync();
  await here.writer.save(one);
  await there.writer.save(other);
  for (const phone of [here, there, here]) await phone.sync();
  live.value = here.live;
  return here;
}

const job = (set: Change["set"]): Change => ({ kind: "job", record: JOB, set });

describe("a field in dispute", () => {
  it("is found by its record, and notes can be kept both, one below the other", async () => {
    await apart([job({ note: "Bolts seized", hours: "1" })], [job({ note: "New bolts", hours: "2" })]);
    expect(disputesOn(JOB).map(({ field }) => field)).toEqual(["note", "hours"]);
    expect(disputesOn(JOB).map(bothTexts)).toEqual(["Bolts seized\nNew bolts", null]);
    expect(unsettledWords(JOB)).toBe("2 to settle");
  });

  it("stands on all that its record names, as a line of a job does", async () => {
    const line = newId();
    const here = await apart([{ kind: "job_part", record: line, set: { job: JOB, part: PART, way: "off" } }], []);
    const other = await Phone.open("third", here.home);
    await other.sync();
    await here.writer.save([{ kind: "job_part", record: line, set: { count: 2 } }]);
    await other.writer.save([{ kind: "job_part", record: line, set: { count: 3 } }]);
    for (const phone of [here, other, here]) await phone.sync();
    for (const id of [line, JOB, PART]) expect(disputesOn(id)).toHaveLength(1);
  });

  it("is said in words where one deleted what another worked on", async () => {
    const weighing = { of: PART, method: "direct", shown: "4 kg" };
    await apart(
      [{ kind: "part", record: PART, set: { deleted: true, hung: [] } }],
      [{ kind: "weighing", set: weighing }],
    );
    const [dispute] = disputes.value;
    expect(deletionWords(dispute!.rec)).toBe("Deleted on another device, weighed on another device meanwhile.");
    expect(dispute!.claims.map(({ value }) => claimWords(dispute!, value))).toEqual([
      "Delete it all the same",
      "Keep it",
    ]);
  });
});

it("what does not count is found by the record it would be on", async () => {
  const here = await apart([], []);
  const set = { of: PART, method: "direct", shown: "4 kg" };
  const made = { id: "s1", device: "nobody", writer: "w", n: 1, kind: "weighing", record: newId(), set, base: [] };
  const line = { number: here.home.head + 1, name: "s1", aside: "stranger", mark: "s1", sentBy: "nobody" };
  here.home.lines.push({ ...line, text: JSON.stringify(made) });
  await here.sync();
  expect([asideOn(PART).length, asideOn(JOB).length, unsettledWords(PART)]).toEqual([1, 0, "1 not counted"]);
});
