/** Taking back: an act is undone by an entry that has seen it alone, so that nobody else's value goes unseen. */

import { describe, expect, it } from "vitest";
import { type Change, newId } from "../../webapp/src/garage/write";
import { actBy, actsOn, deleting, takenBack } from "../../webapp/src/journal/history";
import { HomeComputer } from "../sync/home_computer";
import { Phone } from "../sync/phone";

const JOB = newId();

async function two(): Promise<[Phone, Phone]> {
  const one = await Phone.open("device-1", new HomeComputer("garage"));
  const other = await Phone.open("device-2", one.home);
  await one.writer.save([{ kind: "job", record: JOB, set: { name: "Seats out", hours: "1" } }]);
  await meet(one, other);
  return [one, other];
}

async function meet(...phones: Phone[]): Promise<void> {
  for (const phone of [...phones, ...phones]) await phone.sync();
}

const rec = (phone: Phone, id = JOB) => phone.live.garage.value.byId.get(id)!;
const standing = (phone: Phone, field: string) => rec(phone).conflicts[field]?.map((head) => head.value);

async function write(phone: Phone, set: Change["set"], record = JOB, kind = "job"): Promise<string> {
  return (await phone.writer.save([{ kind, record, set }])).entries[0]!;
}

async function undo(phone: Phone, ...entries: string[]): Promise<string[]> {
  const garage = phone.live.garage.value;
  const changes = entries.flatMap((name) => {
    const act = actBy(garage.folded(), name)!;
    return takenBack(act, garage.hung(act.entry.record));
  });
  return (await phone.writer.save(changes.map((change): Change => ({ ...change, exact: true })))).entries;
}

describe("an act taken back", () => {
  it("leaves the record as it was, and can itself be taken back", async () => {
    const [one] = await two();
    const act = await write(one, { hours: "2", note: "Bolts stuck" });
    const back = await undo(one, act);
    expect(rec(one)).toMatchObject({ values: { name: "Seats out", hours: "1" }, conflicts: {} });
    expect(rec(one).values.note).toBeUndefined();
    await undo(one, ...back);
    expect(rec(one)).toMatchObject({ values: { hours: "2", note: "Bolts stuck" }, conflicts: {} });
  });

  it("never hides what another phone wrote in the same field meanwhile", async () => {
    const [one, other] = await two();
    const act = await write(one, { hours: "2" });
    await write(other, { hours: "3" });
    await meet(one, other);
    await undo(one, act);
    await meet(one, other);
    for (const phone of [one, other]) expect(new Set(standing(phone, "hours"))).toEqual(new Set(["1", "3"]));
  });

  it("leaves alone what somebody set later who had seen it", async () => {
    const [one, other] = await two();
    const act = await write(one, { hours: "2", money: "5" });
    await meet(one, other);
    await write(other, { hours: "3" });
    await meet(one, other);
    await undo(one, act);
    await meet(one, other);
    for (const phone of [one, other]) expect(rec(phone)).toMatchObject({ values: { hours: "3" }, conflicts: {} });
    expect(rec(one).values.money).toBeUndefined();
  });

  it("opens a settled conflict again, an entry for each former value", async () => {
    const [one, other] = await two();
    await write(one, { hours: "2" });
    await write(other, { hours: "3" });
    await meet(one, other);
    const settled = await write(one, { hours: "3" });
    expect(rec(one).conflicts).toEqual({});
    expect(await undo(one, settled)).toHaveLength(2);
    await meet(one, other);
    for (const phone of [one, other]) expect(standing(phone, "hours")!.sort()).toEqual(["2", "3"]);
  });

  it("takes a new record away again, and brings it back whole", async () => {
    const [one, other] = await two();
    const part = newId();
    const made = await write(one, { name: "Seat" }, part, "part");
    await write(one, { of: part, method: "direct", shown: "9 kg" }, newId(), "weighing");
    const back = await undo(one, made);
    await meet(one, other);
    for (const phone of [one, other]) expect(rec(phone, part).deleted).toBe(true);
    await undo(other, ...back);
    await meet(one, other);
    for (const phone of [one, other]) {
      expect(rec(phone, part)).toMatchObject({ deleted: false, values: { name: "Seat" }, conflicts: {} });
      expect(phone.live.garage.value.hung(part)).toHaveLength(1);
    }
  });
});

describe("a deletion", () => {
  it("does not beat a note another phone wrote out of its sight, before or after it arrives", async () => {
    for (const first of [0, 1]) {
      const phones = await two();
      const [one, other] = phones;
      await one.writer.save([{ kind: "job", record: JOB, set: deleting("job", []) }]);
      await write(other, { note: "Two hours more" });
      await meet(phones[first]!, phones[1 - first]!);
      for (const phone of phones) {
        expect(rec(phone)).toMatchObject({ deleted: false, values: { note: "Two hours more" } });
        expect(standing(phone, "deleted")!.sort()).toEqual([false, true]);
      }
    }
  });

  it("does not beat a weighing it did not know of; a second one that does, ends it", async () => {
    const [one, other] = await two();
    const part = newId();
    await write(one, { name: "Seat" }, part, "part");
    await meet(one, other);
    await one.writer.save([{ kind: "part", record: part, set: deleting("part", one.live.garage.value.hung(part)) }]);
    await write(other, { of: part, method: "direct", shown: "9 kg" }, newId(), "weighing");
    await meet(one, other);
    for (const phone of [one, other]) {
      expect(rec(phone, part).deleted).toBe(false);
      expect(rec(phone, part).conflicts.deleted).toHaveLength(2);
      expect(phone.live.garage.value.of("part")).toHaveLength(1);
    }
    await one.writer.save([{ kind: "part", record: part, set: deleting("part", one.live.garage.value.hung(part)) }]);
    await meet(one, other);
    for (const phone of [one, other]) expect(rec(phone, part)).toMatchObject({ deleted: true, conflicts: {} });
  });
});

describe("a record's history", () => {
  it("tells what each act replaced, the latest first, and which still stand", async () => {
    const [one, other] = await two();
    await write(one, { hours: "2" });
    await meet(one, other);
    await write(other, { hours: "3" });
    await meet(one, other);
    const told = actsOn(one.live.garage.value.folded(), JOB).map(({ entry, before, stands, begins }) => {
      return [entry.device, before.hours?.map((head) => head.value), stands, begins];
    });
    expect(told).toEqual([
      ["device-2", ["2"], ["hours"], false],
      ["device-1", ["1"], [], false],
      ["device-1", [], ["name"], true],
    ]);
    expect(actsOn(one.live.garage.value.folded(), JOB, 1)).toHaveLength(1);
  });
});
