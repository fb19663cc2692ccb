// A text into the clipboard, by the way that this browser lets a page go.

/**
 * Whether the text is in the clipboard now.
 * @param {string} text
 */
export async function copyText(text) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return copyBySelection(text);
  }
}

/** @param {string} text */
function copyBySelection(text) {
  const field = Object.assign(document.createElement("textarea"), { value: text, className: "rb-offscreen" });
  (document.querySelector("dialog[open]") ?? document.body).append(field); // what a dialog covers cannot be marked
  field.select();
  const copied = document.execCommand("copy");
  field.remove();
  return copied;
}
