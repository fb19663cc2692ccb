// Elements that a script makes. Text is only ever text.

/**
 * An element of attributes and children.
 * @template {keyof HTMLElementTagNameMap} Tag
 * @param {Tag} tag
 * @param {Record<string, string>} attributes
 * @param {(Node | string)[]} children
 */
export function node(tag, attributes, ...children) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  made.append(...children);
  return made;
}

/**
 * Say a sentence at a place, which goes with the next one; with a deed that takes back what it says was done.
 * @param {Element} place
 * @param {string} sentence
 * @param {() => void} [undo]
 */
export function sayAt(place, sentence, undo) {
  place.replaceChildren(sentence);
  if (!undo) return;
  const button = node("button", { type: "button", class: "rb-undo" }, "Undo");
  button.addEventListener("click", () => {
    place.replaceChildren();
    undo();
  });
  place.append(" ", button);
}
