import { mkdirSync } from 'node:fs';

/** What one kind of fault was tried with, how often it met a write, and what came out wrong. */
export class Part {
  tried = 0;
  met = 0;
  wrong = [];
  /** Edits that were saved between the last look at a file and its replacing, where no program can see them. */
  unseen = 0;
  /** Why it could not be run; empty where it was. */
  leftOut = '';

  constructor(name, least, folder, effort) {
    Object.assign(this, { name, least, folder, effort });
    mkdirSync(folder);
  }

  /** So many of something, of which all are tried at full effort, at least one. */
  times(all) {
    return Math.max(1, Math.ceil(all * this.effort));
  }

  /** A part that meets nothing shows nothing. */
  finish() {
    if (this.leftOut === '' && this.met < this.least)
      this.wrong.push(`only ${this.met} faults met a write, and at least ${this.least} are wanted`);
  }
}

/** As many of a list, evenly spread. */
export const evenly = (all, count) =>
  all.length <= count
    ? all
    : Array.from({ length: count }, (_, at) => all[Math.floor((at * all.length) / count)]);
