/** Installing to the home screen: whether it has been done, and the browser's own offer where it makes one. */
import { signal } from "@preact/signals";

type Offer = Event & { prompt: () => Promise<void>; userChoice: Promise<{ outcome: "accepted" | "dismissed" }> };

const standalone = matchMedia("(display-mode: standalone)");

/** True when this page runs as an installed app. */
export const installed = signal(standalone.matches || (navigator as { standalone?: boolean }).standalone === true);

/** True when the browser lets the app ask. */
export const canInstall = signal(false);

let offer: Offer | null = null;

// The browser makes its offer once, early: it is caught when this module is loaded, before any screen is drawn.
addEventListener("beforeinstallprompt", (event) => {
  event.preventDefault();
  offer = event as Offer;
  canInstall.value = true;
});
addEventListener("appinstalled", () => {
  installed.value = true;
  canInstall.value = false;
});
standalone.addEventListener("change", () => {
  installed.value = standalone.matches;
});

/** Shows the browser's own question; an offer can be used once. */
export async function install(): Promise<void> {
  await offer?.prompt();
  offer = null;
  canInstall.value = false;
}
