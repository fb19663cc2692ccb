// Entries with one finger at the bench: a batch of strokes, and a reading that begins at the last one.
// A draft is kept at every tap, so that a dead battery loses nothing.

const BUZZ_MS = 15;
const READ = ["weight", "upper", "lower"];

export class QuickEntry {
  #bows;
  #batch;
  #reading;
  #asked = 0;
  #touched = new Set(); // of the reading: what is not the last one's

  constructor(bows, section) {
    this.#bows = bows;
    this.#batch = section.querySelector('dialog[data-quick="batch"]');
    this.#reading = section.querySelector('dialog[data-quick="reading"]');
    this.#equip(this.#batch, () => this.#saveBatch());
    this.#equip(this.#reading, () => this.#saveReading());
    this.#batch.addEventListener("click", ({ target }) => this.#count(target.closest("[data-add]")));
    this.#batch.addEventListener("input", () => this.#keepDraft("batch", this.#counted()));
    this.#reading.addEventListener("click", ({ target }) => this.#step(target.closest("[data-step]")));
    for (const type of ["input", "focusin"]) this.#reading.addEventListener(type, ({ target }) => this.#touch(target));
  }

  async openBatch() {
    const draft = new Map(await this.#draft("batch"));
    for (const tile of this.#tiles()) tile.querySelector("output").value = draft.get(tile.dataset.fact) ?? "0";
    this.#batch.querySelector('[name="paper"]').value = draft.get("paper") ?? this.#bows.last.get("strokes.paper") ?? "";
    say(this.#batch, []);
    this.#batch.showModal();
    this.#batch.querySelector("[data-add]").focus();
    this.#stayAwake();
  }

  /** The screen stays on while strokes are counted, where the browser lets a page ask for it. */
  async #stayAwake() {
    const lock = await navigator.wakeLock?.request("screen").catch(() => null);
    if (this.#batch.open) this.#batch.addEventListener("close", () => lock?.release(), { once: true });
    else lock?.release();
  }

  async openReading() {
    const draft = new Map(await this.#draft("reading"));
    this.#touched = new Set(READ.filter((fact) => draft.has(fact)));
    for (const fact of [...READ, "at_draw"]) {
      this.#box(fact).value = draft.get(fact) ?? this.#bows.last.get(`reading.${fact}`) ?? "";
    }
    this.#mark();
    say(this.#reading, []);
    this.#reading.showModal();
    this.#reading.querySelector("[data-step]").focus();
    await this.#foretell();
  }

  /** What the log of strokes foretells for this reading, and what is typed beside it. */
  async #foretell() {
    this.#asked += 1;
    const asked = this.#asked;
    const pairs = this.#bows.forms.withUnits("reading", this.#read());
    const found = await this.#bows.ask("foretold", { entries: this.#bows.record, pairs });
    if (!found || asked !== this.#asked) return;
    const line = this.#reading.querySelector(".rb-foretold");
    line.textContent = [found.expected, found.read].filter(Boolean).join(" ");
    line.dataset.level = found.level;
  }

  #equip(dialog, save) {
    dialog.querySelector("form").addEventListener("submit", (event) => {
      event.preventDefault();
      save();
    });
    dialog.addEventListener("click", async ({ target }) => {
      if (target.dataset.do === "close") dialog.close();
      if (target.dataset.do === "save-and-measure" && (await save())) {
        await this.#bows.drawn;
        await this.openReading();
      }
    });
  }

  // A batch --------------------------------------------------------------------

  #tiles() {
    return [...this.#batch.querySelectorAll(".rb-tile")];
  }

  #count(button) {
    if (!button) return;
    const shown = button.closest(".rb-tile").querySelector("output");
    shown.value = String(Math.max(0, Number(shown.value) + Number(button.dataset.add)));
    navigator.vibrate?.(BUZZ_MS);
    this.#keepDraft("batch", this.#counted());
  }

  #counted() {
    const counts = this.#tiles().map((tile) => [tile.dataset.fact, tile.querySelector("output").value]);
    return [...counts.filter(([, text]) => text !== "0"), ["paper", this.#batch.querySelector('[name="paper"]').value]];
  }

  async #saveBatch() {
    const pairs = this.#counted();
    if (pairs.length === 1) {
      say(this.#batch, [{ message: "No stroke is counted yet." }]);
      return false;
    }
    return this.#save("strokes", pairs, this.#batch, "batch");
  }

  // A reading ------------------------------------------------------------------

  #box(fact) {
    return this.#reading.querySelector(`[name="${fact}"]`);
  }

  async #step(button) {
    if (!button) return;
    const { fact } = button.closest(".rb-stepper").dataset;
    const box = this.#box(fact);
    const changed = await this.#bows.ask("step", { fact: `reading.${fact}`, text: box.value, by: button.dataset.step });
    say(this.#reading, changed?.refused ? [{ message: changed.refused }] : []);
    if (!changed?.text) return;
    box.value = changed.text;
    this.#touch(box);
  }

  #touch({ name }) {
    if (!READ.includes(name) && name !== "at_draw") return;
    if (READ.includes(name)) this.#touched.add(name);
    this.#mark();
    this.#keepDraft("reading", this.#read());
    this.#foretell();
  }

  #mark() {
    for (const fact of READ) this.#box(fact).toggleAttribute("data-last", !this.#touched.has(fact));
  }

  /** What was touched; a weight always with its draw. */
  #read() {
    const pairs = READ.filter((fact) => this.#touched.has(fact)).map((fact) => [fact, this.#box(fact).value]);
    return this.#touched.has("weight") ? [...pairs, ["at_draw", this.#box("at_draw").value]] : pairs;
  }

  async #saveReading() {
    return this.#save("reading", this.#read(), this.#reading, "reading");
  }

  // Both -----------------------------------------------------------------------

  async #save(sheet, pairs, dialog, draft) {
    const { id, errors = [] } = await this.#bows.add(sheet, this.#bows.forms.withUnits(sheet, pairs));
    say(dialog, errors);
    if (!id) return false;
    dialog.close();
    await this.#bows.store.dropDraft(this.#draftName(draft)).catch(() => {});
    return true;
  }

  #draftName(name) {
    return `${this.#bows.bow} quick-${name}`;
  }

  async #draft(name) {
    return (await this.#bows.store.draft(this.#draftName(name)).catch(() => null)) ?? [];
  }

  #keepDraft(name, pairs) {
    this.#bows.store.keepDraft(this.#draftName(name), pairs).catch(() => {});
  }
}

function say(dialog, errors) {
  const box = dialog.querySelector(".rb-problems");
  box.hidden = errors.length === 0;
  box.textContent = errors.map(({ message }) => message).join(" ");
}
