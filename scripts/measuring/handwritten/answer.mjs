// As much as a page without an engine has to do: read the link, subtract, show.

/** @param {string} text such as "7 5/8 in" */
function inches(text) {
  const parts = text.match(/[\d./]+/g) ?? [];
  return parts.reduce((sum, part) => {
    const [above, below = "1"] = part.split("/");
    return sum + Number(above) / Number(below);
  }, 0);
}

const given = new URLSearchParams(location.hash.slice(1));
const [upper, lower] = ["upper", "lower"].map((name) => {
  const field = /** @type {HTMLInputElement} */ (document.getElementById(name));
  field.value = given.get(name) ?? field.value;
  return inches(field.value);
});
const outcome = /** @type {HTMLElement} */ (document.querySelector(".rb-outcome"));
/** @type {HTMLElement} */ (outcome.querySelector(".difference")).textContent =
  `The upper limb's distance is ${upper - lower} in larger.`;
outcome.dataset.state = "current";
