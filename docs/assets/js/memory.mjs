// What this browser remembers for its reader: unit system and last job.
// Nothing leaves the device; where storage is refused the page works without it.

const PREFIX = "rebrace.";

/** @param {string} key */
export function recall(key) {
  try {
    return localStorage.getItem(PREFIX + key);
  } catch {
    return null;
  }
}

/**
 * @param {string} key
 * @param {string} text
 */
export function remember(key, text) {
  try {
    localStorage.setItem(PREFIX + key, text);
  } catch {
    // Full or refused: the link still carries everything.
  }
}

/** @param {string} key */
export function forget(key) {
  try {
    localStorage.removeItem(PREFIX + key);
  } catch {
    // Nothing was kept.
  }
}
