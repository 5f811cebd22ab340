/** The running sync of an open garage: when it tries, and what it lets the screens say. */

import { describe, expect, it } from "vitest";

import { live } from "../../webapp/src/garage/garage";
import { readState } from "../../webapp/src/store/state";
import type { Clock } from "../../webapp/src/sync/schedule";
import { sync } from "../../webapp/src/sync/state";
import { Station } from "../../webapp/src/sync/station";
import { HomeComputer } from "./home_computer";
import { Phone } from "./phone";
import { job } from "./two_phones";

/** Timers that ring only when told to. */
const STILL: Clock = { now: () => 0, setTimer: () => 1, clearTimer: () => undefined, random: () => 0 };

async function open(unpaired = (): void => undefined) {
  const home = new HomeComputer("garage");
  const phone = await Phone.open("one", home);
  live.value = phone.live;
  const station = new Station(phone.live, phone.post.wire, STILL, () => true, unpaired);
  return { home, phone, station };
}

async function until(holds: () => boolean): Promise<void> {
  while (!holds()) await new Promise((resolve) => setTimeout(resolve, 2));
}

const idle = (): boolean => sync.value.phase === "idle";

describe("a station", () => {
  it("says that a record is on this phone only until it has come back from home", async () => {
    const { home, phone, station } = await open();
    home.faultFor = () => "dropped";
    await phone.writer.save([job("Seats out")]);
    await station.begin();
    await until(() => sync.value.refusal !== null && idle());
    expect(sync.value).toMatchObject({ waiting: 1, lastHeard: null, refusal: { code: "unreachable" } });
    expect(sync.value.words[0]).toBe("On this phone only (1)");

    home.faultFor = () => null;
    await until(() => {
      station.now();
      return sync.value.waiting === 0 && idle();
    });
    expect(sync.value.refusal).toBeNull();
    expect(sync.value.words[0]).toBe("On the home computer");
    await until(() => sync.value.lastHeard !== null);
    expect((await readState(phone.store)).heard === null).toBe(false);
    station.stop();
  });

  it("says that all is in a backup when the home computer says so, and no sooner", async () => {
    const { home, phone, station } = await open();
    await phone.writer.save([job("Seats out")]);
    await station.begin();
    await until(() => sync.value.words[0] === "On the home computer" && idle());
    home.durable = 1;
    await until(() => {
      station.now();
      return sync.value.words[0] === "In a backup";
    });
    await phone.writer.save([job("Glass")]);
    expect(sync.value.words[0]).toBe("On this phone only (1)");
    station.stop();
  });

  it("keeps everything and says why when the device was revoked", async () => {
    const { home, phone, station } = await open();
    home.revoked.add("one");
    await phone.writer.save([job("Seats out")]);
    await station.begin();
    await until(() => sync.value.refusal?.code === "revoked" && idle());
    expect(sync.value.waiting).toBe(1);
    expect(phone.live.garage.value.of("job")).toHaveLength(1);
    station.stop();
  });

  it.each([
    [2, "app_older"],
    [0, "home_older"],
  ])("keeps everything and says which side is older when the home computer speaks protocol %i", async (proto, code) => {
    const { home, phone, station } = await open();
    const body = { error: { code: "protocol", data: { proto } } };
    phone.post.wire.fetch = async (url, options) =>
      url.endsWith("/sync/push") ? new Response(JSON.stringify(body), { status: 426 }) : home.fetch(url, options);
    await phone.writer.save([job("Seats out")]);
    await station.begin();
    await until(() => sync.value.refusal?.code === code && idle());
    expect(sync.value.words[0]).toBe("On this phone only (1)");
    station.stop();
  });

  it("tells when the home computer does not know this device, so that a demo can pair afresh", async () => {
    let told = 0;
    const { home, station } = await open(() => (told += 1));
    home.devices.clear();
    await station.begin();
    await until(() => told === 1 && idle());
    expect(sync.value.refusal?.code).toBe("unpaired");
    station.stop();
  });
});
