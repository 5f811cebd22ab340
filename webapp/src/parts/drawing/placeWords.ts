/** Places in words: how far from the front axle, left or right of the centreline, how high; and how well that is known. */
import type { Place } from "../../core/balance/place";
import { showLength } from "../../core/numbers/shown";
import { showStepped } from "../../core/numbers/shownLater";
import { halfOf } from "./marks";
import type { Spot, View } from "./view";

/** A figure with its ± and its unit is not torn apart at the end of a line. */
export function unbroken(text: string): string {
  return text.replaceAll(" ", "\u00a0");
}

/** How fine a place found with a finger is written down, by unit of length. */
const STEP: Readonly<Record<string, string>> = { mm: "10", in: "0.5" };
const step = (unit: string) => STEP[unit] ?? "10";

const THUMB = 6; // points a thumb is off to each side, with the mark in sight above it: common practice, no source

/** A length as a finger on the drawing means it, ready to be kept as typed. */
export function fingerText(m: number, unit: string): string {
  return showStepped(m, unit, step(unit));
}

/** How well a finger places something in this view, ready to be kept as typed. */
export function fingerWithin(view: View, unit: string): string {
  return showStepped(THUMB / view.scale, unit, step(unit), true);
}

/** A place while a finger moves it, a line for each axis. */
export function spotWords({ x, y, z }: Spot, unit: string): string {
  const text = (m: number) => (Number.isFinite(m) ? fingerText(Math.abs(m), unit) : "");
  return [along(x, text(x)), across(y, text(y)), up(z, text(z))].filter(Boolean).join("\n");
}

/** Each axis of a place with how far off it may be, in three phrases; an axis nobody can tell is left out. */
export function placePhrases(place: Place, unit: string): string[] {
  const half = halfOf(place);
  const text = (m: number, within: number) => unbroken(showLength(Math.abs(m), unit, within));
  const { x, y, z } = place;
  return [
    x ? along(x.value, text(x.value, half.x)) : "",
    y ? across(y.value, text(y.value, half.y), place.apart > 0) : "",
    z ? up(z.value, text(z.value, half.z)) : "",
  ].filter(Boolean);
}

function along(x: number, text: string): string {
  if (!Number.isFinite(x)) return "";
  return `${text} ${x < 0 ? "ahead of" : "behind"} the front axle`;
}

function across(y: number, text: string, isPair = false): string {
  if (!Number.isFinite(y)) return "";
  if (isPair) return "one at each side";
  if (y === 0) return `on the centreline${text.includes("±") ? `, ${text.slice(text.indexOf("±"))}` : ""}`;
  return `${text} ${y < 0 ? "left" : "right"} of the centreline`;
}

function up(z: number, text: string): string {
  return Number.isFinite(z) ? `${text} above the ground` : "";
}
