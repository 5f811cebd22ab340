/** A question to the home computer with this device's token; every way it can fail is a row of the error table. */
import { AppError } from "../../errors";
import { opened } from "../../store/opened";
import { PATIENCE, requestJson } from "../../wire/request";

/** Asks with GET, or with POST when there is something to send. */
export async function askHome<T>(path: string, json?: object): Promise<T> {
  const token = opened.value?.token ?? null;
  if (token === null) throw new AppError("unpaired");
  const wire = { fetch: (url: string, options: RequestInit) => fetch(url, options), token, patience: PATIENCE };
  return (await requestJson(wire, path, json ? { method: "POST", json } : {})) as T;
}
