// The last figures of a calculator, kept in this browser only: five jobs, each with its moment and headline.
// A tab goes on with its own job and adds one for whatever else comes; it never writes over another's.

import { forget, recall, remember } from "./memory.mjs";

/** @import { Job } from "./types.d.ts" */

const MOST = 5;

export class KeptJobs {
  #key;
  /** @type {string | null} */
  #id = null;
  /** @type {string | null} */
  #written = null;

  /** @param {string} calculator */
  constructor(calculator) {
    this.#key = `jobs-1.${calculator}`;
    this.#takeOver(`job.${calculator}`);
  }

  /**
   * The jobs, newest first.
   * @returns {Job[]}
   */
  list() {
    try {
      /** @type {Job[]} */
      const jobs = JSON.parse(recall(this.#key) ?? "[]");
      return jobs.filter(({ id, link, own }) => id && typeof link === "string" && (own === null || Array.isArray(own)));
    } catch {
      return [];
    }
  }

  /** @param {string} link */
  find(link) {
    return this.list().find((job) => job.link === link);
  }

  /**
   * @param {string} link
   * @param {string} headline
   * @param {string[]} own
   */
  keep(link, headline, own) {
    const jobs = this.list();
    const mine = jobs.find(({ id }) => id === this.#id);
    if (!mine || mine.link !== this.#written) this.#id = `${Date.now()}-${Math.random()}`;
    const job = { id: this.#id, link, moment: Date.now(), headline, own };
    const others = jobs.filter((each) => each.id !== this.#id && each.link !== link);
    remember(this.#key, JSON.stringify([job, ...others].slice(0, MOST)));
    this.#written = link;
  }

  /**
   * Let what comes next be a further stage of this job; of none: a new job.
   * @param {Job | null | undefined} job
   */
  goOn(job) {
    this.#id = job?.id ?? null;
    this.#written = job?.link ?? null;
  }

  /**
   * An earlier release kept one job, as an address.
   * @param {string} former
   */
  #takeOver(former) {
    const link = recall(former);
    if (!link) return;
    const job = { id: former, link, moment: null, headline: "", own: null };
    remember(this.#key, JSON.stringify([...this.list(), job].slice(0, MOST)));
    forget(former);
  }
}
