/**
 * Resolve once what stands on the page has been drawn; at once where nobody looks, since nothing is drawn there.
 * @returns {Promise<void>}
 */
export function drawn() {
  return new Promise((resolve) => {
    if (document.hidden) resolve();
    else requestAnimationFrame(() => setTimeout(resolve));
  });
}
