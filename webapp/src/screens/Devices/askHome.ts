/** A question to the home computer with this device's token; every way it can fail is a row of the error table. */
import { AppError } from "../../errors";
import type { Devices, Invitation, Joins } from "../../generated/routes";
import { opened } from "../../store/opened";
import { fits, type Shape } from "../../wire/fits";
import { type Answer, requestJson, type Sent, unreadable, wireOf } from "../../wire/request";

const WHEN = { paired_at: "string", last_seen: "string", revoked_at: "string?" } as const;
const DEVICES: Shape<Devices> = {
  home: "boolean",
  devices: [{ id: "string", name: "string", this: "boolean", ...WHEN }],
};
const JOINS: Shape<Joins> = { joins: [{ id: "string", name: "string", words: ["string"], seconds: "number" }] };
const CODE: Shape<Invitation> = { id: "string", link: "string", code: "string", svg: "string", seconds: "number" };

const ANSWERS = {
  "GET /devices": DEVICES,
  "POST /devices/{name}/rename": DEVICES,
  "POST /devices/{name}/revoke": DEVICES,
  "GET /pair/joins": JOINS,
  "POST /pair/joins/{name}/confirm": JOINS,
  "POST /pair/joins/{name}/refuse": JOINS,
  "POST /pair/invitations": CODE,
};
type Asked = keyof typeof ANSWERS;
const SHAPES: { readonly [Each in Asked]: Shape<Answer<Each>> } = ANSWERS;

export async function askHome<R extends Asked>(route: R, sent: Sent<R>): Promise<Answer<R>> {
  const token = opened.value?.token ?? null;
  if (token === null) throw new AppError("unpaired");
  const body: unknown = await requestJson(wireOf(token), route, sent);
  if (!fits<Answer<R>>(body, SHAPES[route])) throw unreadable({ status: 200 }, `no answer to ${route}`);
  return body;
}
