// What this browser remembers for its reader: unit system and last job.
// Nothing leaves the device; where storage is refused the page works without it.

const PREFIX = "rebrace.";

export function recall(key) {
  try {
    return localStorage.getItem(PREFIX + key);
  } catch {
    return null;
  }
}

export function remember(key, text) {
  try {
    localStorage.setItem(PREFIX + key, text);
  } catch {
    // Full or refused: the link still carries everything.
  }
}

export function forget(key) {
  try {
    localStorage.removeItem(PREFIX + key);
  } catch {
    // Nothing was kept.
  }
}
