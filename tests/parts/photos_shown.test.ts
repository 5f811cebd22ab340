/** Photos are seen where a person would look, can be moved and deleted, and the same picture is one. */

import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { live } from "../../webapp/src/garage/garage";
import type { NewPhoto } from "../../webapp/src/garage/photos";
import { disputesOn } from "../../webapp/src/garage/unsettled";
import { type Change, newId } from "../../webapp/src/garage/write";
import { actsOn, deleting } from "../../webapp/src/journal/history";
import { addressOf, noteOf, offersFor } from "../../webapp/src/parts/photos/moving";
import { photosAt, placesOf } from "../../webapp/src/parts/photos/shown";
import { actWords } from "../../webapp/src/parts/words/acts";
import { hashOf } from "../../webapp/src/store/photo_rows";
import { HomeComputer } from "../sync/home_computer";
import { Phone } from "../sync/phone";

vi.hoisted(() => vi.stubGlobal("location", { hash: "" })); // the address is read as soon as its room is

const [JOB, SEAT, WHEEL, READING, WEIGH_IN, SCALE, CHECK] = Array.from({ length: 7 }, newId) as [
  string,
  string,
  string,
  string,
  string,
  string,
  string,
];
let phone: Phone;

beforeEach(async () => {
  phone = await Phone.open("one", new HomeComputer("garage"));
  live.value = phone.live;
  await write(
    { kind: "scale", record: SCALE, set: { name: "Bath scale", kind: "bathroom" } },
    { kind: "scale_check", record: CHECK, set: { scale: SCALE, known: "20 kg", shown: "20.1 kg" } },
    { kind: "part", record: SEAT, set: { name: "Seat" } },
    { kind: "part", record: WHEEL, set: { name: "Spare wheel" } },
    { kind: "job", record: JOB, set: { name: "Seats out" } },
    { kind: "job_part", set: { job: JOB, part: SEAT, way: "off" } },
    { kind: "weighing", record: READING, set: { of: SEAT, method: "direct", shown: "12 kg", at: "2026-05-02T10:00" } },
    {
      kind: "weigh_in",
      record: WEIGH_IN,
      set: { trim: "event", layout: "total", total: "980 kg", at: "2026-05-03T10:00" },
    },
  );
});

afterEach(() => {
  live.value = null;
});

const write = (...changes: Change[]) => phone.writer.save(changes);
const picture = (fill: number) => new Uint8Array(1000).fill(fill).buffer;
const name = (fill: number) => hashOf(picture(fill));

async function shoot(of: string, fill: number): Promise<string> {
  const photo: NewPhoto = { of, bytes: picture(fill), type: "image/jpeg", width: 40, height: 30 };
  const { entries } = await phone.writer.save([], [photo]);
  return phone.live.garage.value.of("photo").find(({ heads }) => heads[0] === entries[0])!.id;
}

const seen = (id: string) => photosAt(id).map(({ values }) => values.sha256);

it("those of a part's weighing are seen at the part and at the job that moves it, and not the other way round", async () => {
  await shoot(READING, 1);
  await shoot(JOB, 2);
  expect(seen(READING)).toEqual([name(1)]);
  expect(seen(SEAT)).toEqual([name(1)]);
  expect(seen(JOB)).toEqual([name(1), name(2)]);
  expect(seen(WHEEL)).toEqual([]);
});

it("those of a check are seen at its scale", async () => {
  await shoot(CHECK, 1);
  expect(seen(SCALE)).toEqual([name(1)]);
  expect(addressOf(CHECK)).toBe(`#/scale/${SCALE}`);
});

it("those of a weigh-in and of a weighing stay with what replaced them, as often as that is", async () => {
  await shoot(WEIGH_IN, 1);
  await shoot(READING, 2);
  const [second, third, again] = [newId(), newId(), newId()];
  await write(
    { kind: "weigh_in", record: second, set: { trim: "event", layout: "total", total: "979 kg", replaces: WEIGH_IN } },
    { kind: "weigh_in", record: third, set: { trim: "event", layout: "total", total: "978 kg", replaces: second } },
    { kind: "weighing", record: again, set: { of: SEAT, method: "direct", shown: "13 kg", replaces: READING } },
  );
  expect(seen(third)).toEqual([name(1)]);
  expect(seen(again)).toEqual([name(2)]);
  expect(seen(SEAT)).toEqual([name(2)]);
  expect(offersFor(SEAT, name(1)).some(({ id }) => id === WEIGH_IN)).toBe(false); // it counts no more
});

it("the same picture of two records is one picture, with both named", async () => {
  await shoot(SEAT, 1);
  await shoot(READING, 1);
  await shoot(WHEEL, 1);
  expect(seen(SEAT)).toEqual([name(1)]);
  expect(placesOf(name(1)).map(({ of }) => of)).toEqual([SEAT, READING, WHEEL]);
});

it("one is moved, and that is said and taken back like any other act", async () => {
  const photo = await shoot(READING, 1);
  await write({ kind: "photo", record: photo, set: { of: WHEEL } });
  expect([seen(SEAT), seen(WHEEL)]).toEqual([[], [name(1)]]);
  const [moved] = actsOn(phone.live.garage.value.folded(), photo);
  expect(actWords(moved!.entry, moved!.begins)).toBe("Photo moved to Spare wheel");
  expect(moved!.before.of!.map(({ value }) => value)).toEqual([READING]);
});

it("one is deleted from one record and stays on the other", async () => {
  const photo = await shoot(SEAT, 1);
  await shoot(WHEEL, 1);
  await write({ kind: "photo", record: photo, set: deleting("photo", []) });
  expect([seen(SEAT), seen(WHEEL)]).toEqual([[], [name(1)]]);
});

it("what a photo has to do with is offered first, with what it is and when", async () => {
  const first = offersFor(READING, name(1)).slice(0, 2);
  expect(new Set(first.map(({ id }) => id))).toEqual(new Set([SEAT, JOB]));
  await shoot(READING, 1);
  await shoot(JOB, 1);
  expect(offersFor(READING, name(1)).some(({ id }) => id === JOB)).toBe(false); // it has that picture already
  const weighIn = phone.live.garage.value.byId.get(WEIGH_IN)!;
  expect(noteOf(weighIn)).toMatch(/^Weigh-in, 3 May/);
});

it("one that another phone moved is not lost to a deletion that had not seen it", async () => {
  const photo = await shoot(READING, 1);
  const other = await Phone.open("two", phone.home);
  for (const each of [phone, other]) await each.sync();
  await write({ kind: "photo", record: photo, set: deleting("photo", []) });
  await other.writer.save([{ kind: "photo", record: photo, set: { of: WHEEL } }]);
  for (const each of [phone, other, phone]) await each.sync();
  for (const each of [phone, other]) {
    live.value = each.live;
    expect(seen(WHEEL)).toEqual([name(1)]);
    expect(disputesOn(WHEEL).map(({ field }) => field)).toEqual(["deleted"]);
  }
});
