// What comes or goes above a field must not move it while somebody types there.

/**
 * Change a page while what has the focus keeps its place on the screen.
 * @param {() => void} change
 */
export function steadily(change) {
  const held = document.activeElement instanceof HTMLInputElement ? document.activeElement : null;
  const before = held?.getBoundingClientRect().top ?? 0;
  change();
  const moved = held?.isConnected ? held.getBoundingClientRect().top - before : 0;
  if (moved) window.scrollBy({ top: moved, behavior: "instant" });
}
