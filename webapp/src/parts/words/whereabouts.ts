/** On which machine this page is open, as far as that changes what a person should do next. */

/** The home computer's own browser: it needs no code from elsewhere, and can let others in. */
export function isHomeComputer(): boolean {
  return ["localhost", "127.0.0.1", "[::1]"].includes(location.hostname);
}

/** An iPhone or iPad, where an installed app does not see what the browser keeps. Only their browsers have this. */
export function keepsAppsApart(): boolean {
  return "standalone" in navigator;
}

/** A phone whose browsers have the installing in their menu. */
export function isAndroid(): boolean {
  return /Android/.test(navigator.userAgent);
}
