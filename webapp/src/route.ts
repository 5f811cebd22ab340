/** Where the person is: the hash of the address, so that a cold start without a server lands on the same screen. */
import { signal } from "@preact/signals";

/** `visit`: how many addresses were gone to before. */
export type Place = { path: string[]; query: URLSearchParams; visit: number };

/** What a screen is opened with: the record's id, "" for none, and the query. */
export type Address = { id: string; query: URLSearchParams; visit: number };

let visits = 0;

function here(): Place {
  const raw = location.hash.replace(/^#\/?/, "");
  const [path = "", query = ""] = raw.split("?");
  return { path: path.split("/").filter(Boolean).map(decoded), query: new URLSearchParams(query), visit: visits };
}

/** An address cut short in the middle of a sign leads to a screen that says so, not to a blank page. */
export function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

export const place = signal<Place>(here());

/** The address of a screen: `to("jobs", id)`, with an optional query. */
export function to(...parts: (string | Record<string, string>)[]): string {
  const last = parts[parts.length - 1];
  const query = typeof last === "object" ? `?${new URLSearchParams(last)}` : "";
  const path = parts.filter((part): part is string => typeof part === "string").map(encodeURIComponent);
  return `#/${path.join("/")}${query}`;
}

export function go(href: string): void {
  location.hash = href;
}

/** Replaces the present screen, so that "back" does not return to a form that has been saved. */
export function replace(href: string): void {
  history.replaceState(history.state, "", href);
  place.value = here();
  scrollTo(0, 0);
}

/** Gives the present screen the address it can be opened by from now on, and leaves it as it is. */
export function rename(href: string): void {
  history.replaceState(history.state, "", href);
}

export function followAddress(): void {
  addEventListener("hashchange", () => {
    visits++;
    place.value = here();
    scrollTo(0, 0);
  });
}
