// Decision paths: one step at a time. The address names the step and with it all answers, for each step
// is led to by one answer only. Without this module a path is a document whose answers are links.

/** Let every path of the page show the step that the address names. */
export function followPaths() {
  document.querySelectorAll(".rb-path").forEach((path) => {
    if (!("at" in path.dataset)) equip(path);
    else go(path, location.hash);
  });
}

function equip(path) {
  path.addEventListener("click", (event) => {
    const link = event.target.closest('.rb-step a[href^="#"]');
    if (!link || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    event.stopPropagation(); // the theme would scroll away from the path
    history.pushState(history.state, "", link.hash);
    go(path, link.hash);
    const head = path.querySelector(".rb-step:not(.rb-step--away) h3");
    head.focus({ preventScroll: true });
    path.scrollIntoView({ block: "nearest" });
  });
  path.dataset.at = "";
  show(path, path.querySelector(".rb-step"));
  go(path, location.hash);
}

/** Show the step of an address; an address of something else changes nothing. */
function go(path, hash) {
  const step = [...path.querySelectorAll(".rb-step")].find(({ id }) => `#${id}` === hash);
  if (step) show(path, step);
}

function show(path, step) {
  const steps = [...path.querySelectorAll(".rb-step")];
  steps.forEach((each) => each.classList.toggle("rb-step--away", each !== step));
  path.dataset.at = step === steps[0] ? "start" : "on";
}
