// Keeps the book for the bench without signal. Everything works where service workers are refused.
// On the machine of a developer it stays off, unless the address says ?offline=1 (remembered) or back, ?offline=0.

import { forget, recall, remember } from "./memory.mjs";

const SITE = new URL("../../", import.meta.url);
const KEPT_LIMIT_MS = 20_000;
const AT_HOME = ["localhost", "127.0.0.1", "[::1]"];

/** @type {Promise<ServiceWorkerRegistration | null | undefined>} */
let asked = Promise.resolve(null);

export function keepOffline() {
  if ("serviceWorker" in navigator) asked = ask();
}

async function ask() {
  const wish = new URLSearchParams(location.search).get("offline");
  if (wish === "1") remember("offline", "1");
  if (wish === "0") forget("offline");
  try {
    if (!AT_HOME.includes(location.hostname) || recall("offline") === "1")
      return await navigator.serviceWorker.register(new URL("service-worker.js", SITE), { scope: SITE.pathname });
    await leave();
    return undefined;
  } catch {
    return null; // refused by the browser or its settings: the site stays online only
  }
}

/** This visit's copy; null where the browser refuses one, undefined where none is wanted. */
export function theCopy() {
  return asked;
}

/** Resolve once this visit's files are being kept, so that what is fetched next is kept too; at once if none are. */
export async function untilKept() {
  await asked;
  const workers = navigator.serviceWorker;
  const registration = await workers?.getRegistration(SITE).catch(() => undefined);
  if (!registration || workers.controller) return;
  if (registration.active?.state === "activated") return; // the reader reloaded past it
  await new Promise((resolve) => {
    workers.addEventListener("controllerchange", resolve, { once: true });
    setTimeout(resolve, KEPT_LIMIT_MS);
  });
}

async function leave() {
  const registration = await navigator.serviceWorker.getRegistration(SITE);
  if (!registration) return;
  await registration.unregister();
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith("rebrace-")).map((name) => caches.delete(name)));
}
