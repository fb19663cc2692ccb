// What a page says where something could not be written down; the same on every page.

/** @import { BowStore } from "./record.d.ts" */

export const HALTED = "Python could not work that out. Nothing was kept; please try again.";
export const NOT_KEPT = "This browser did not keep that. Nothing that was there is changed.";
export const RENEWED = "This page is from before the update. Reload it before you write more down.";
const FULL = "This browser has no room left, so this was not kept. Nothing that was there is changed.";

/**
 * Why a store did not keep what it was given, in a sentence.
 * @param {BowStore} store
 * @param {unknown} error
 */
export function whyNotKept(store, error) {
  if (store.isOutdated) return RENEWED;
  return error instanceof Error && error.name === "QuotaExceededError" ? FULL : NOT_KEPT;
}
