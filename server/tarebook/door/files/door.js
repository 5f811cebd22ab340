// Looks whether this phone trusts the home computer, and shows the text that fits. Looks again by itself when the
// page is opened again, as it is after each step in the settings.
import { apart, verdict } from "./verdict.js";

const WAIT_MS = 6000;
const AGAIN_MS = 10000;
let looking = false;
let done = false;

/** Whether anything at all came back. Which page is asked does not matter; nothing of it can be read here. */
async function arrives(url) {
  try {
    await fetch(url, { mode: "no-cors", cache: "no-store", credentials: "omit", signal: AbortSignal.timeout(WAIT_MS) });
    return true;
  } catch {
    return false;
  }
}

async function about() {
  try {
    const answer = await fetch("/about.json", { cache: "no-store", signal: AbortSignal.timeout(WAIT_MS) });
    return await answer.json();
  } catch {
    return null;
  }
}

/** The address this page came by is surely reachable; others are tried when it came by name. */
function addressesToTry(addresses) {
  const here = addresses.filter((url) => new URL(url).hostname === location.hostname);
  return (here.length ? here : addresses).slice(0, 3);
}

async function look() {
  const told = await about();
  if (!told) return { reached: false };
  const byAddress = Promise.all(addressesToTry(told.addresses).map((url) => arrives(`${url}/trusted`)));
  const [named, trustedByName, some] = await Promise.all([
    arrives(`${told.door}/here`),
    arrives(`${told.name}/trusted`),
    byAddress,
  ]);
  return { reached: true, named, trustedByName, trustedByAddress: some.includes(true), now: told.now };
}

function show(state) {
  for (const text of document.querySelectorAll("[data-state]")) text.hidden = text.dataset.state !== state;
  document.getElementById("again").hidden = state === "trusted" || state === "checking";
  document.documentElement.dataset.verdict = state;
}

function showClock(now, state) {
  const difference = now === undefined || state === "trusted" ? null : apart(Date.now(), now);
  document.querySelector('[data-state="clock"]').hidden = difference === null;
  if (difference === null) return;
  document.getElementById("apart").textContent = difference;
  document.getElementById("there").textContent = new Date(now).toLocaleString();
}

async function check() {
  if (looking || done) return;
  looking = true;
  try {
    const looks = await look();
    const state = verdict(looks);
    show(state);
    showClock(looks.now, state);
    done = state === "trusted";
  } finally {
    looking = false;
  }
}

function openSteps() {
  const isApple = /iPhone|iPad|iPod/.test(navigator.userAgent) || (/Mac/.test(navigator.userAgent) && navigator.maxTouchPoints > 1);
  document.getElementById(isApple ? "iphone" : "android").open = true;
}

openSteps();
check();
document.getElementById("again").addEventListener("click", check);
document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && check());
setInterval(() => document.visibilityState === "visible" && check(), AGAIN_MS);
