import { table } from '../table.js';

/** Counts what a run of vitest tried and what failed, by kind; a reporter of vitest. */
export class Tally {
  #rows;
  #kindOf;
  #wrong = [];
  #notRun = [];

  constructor(kinds) {
    this.#rows = new Map(Object.keys(kinds).map((kind) => [kind, { tried: 0, wrong: 0, notRun: 0 }]));
    const files = Object.entries(kinds).flatMap(([kind, files]) => files.map((file) => [file, kind]));
    this.#kindOf = (path) => files.find(([file]) => path.startsWith(file))?.[1];
  }

  onTestCaseResult(test) {
    const row = this.#rowOf(test.module);
    const { state, errors = [] } = test.result();
    if (state === 'skipped') {
      row.notRun++;
      this.#notRun.push(test.fullName);
      return;
    }
    row.tried += 1 + (test.meta().tried ?? 0);
    if (state === 'failed') this.#fail(row, `${test.module.relativeModuleId} > ${test.fullName}`, errors);
  }

  onTestModuleEnd(module) {
    const errors = module.errors();
    if (errors.length > 0) this.#fail(this.#rowOf(module), module.relativeModuleId, errors);
  }

  onTestRunEnd(_modules, unhandled) {
    if (unhandled.length > 0) this.#wrong.push(told('outside any test', unhandled));
  }

  #rowOf(module) {
    return this.#rows.get(this.#kindOf(module.relativeModuleId)) ?? { tried: 0, wrong: 0, notRun: 0 };
  }

  #fail(row, name, errors) {
    row.wrong++;
    this.#wrong.push(told(name, errors));
  }

  /** What nothing was tried of: its tests are gone, or their file. */
  #empty() {
    return [...this.#rows].flatMap(([kind, { tried }]) => (tried === 0 ? [kind] : []));
  }

  exitCode() {
    if (this.#wrong.length > 0 || this.#empty().length > 0) return 1;
    return this.#notRun.length > 0 ? 2 : 0;
  }

  text(seed) {
    const rows = [...this.#rows].map(([kind, { tried, wrong, notRun }]) => [kind, tried, wrong, notRun]);
    return [
      `seed ${seed}`,
      ...table(['kind', 'tried', 'wrong', 'not run'], rows),
      ...this.#notRun.map((name) => `not run, which is no pass: ${name}`),
      ...this.#empty().map((kind) => `WRONG nothing was tried of: ${kind}`),
      ...this.#wrong.slice(0, MOST_SHOWN).map((text) => `WRONG ${text}`),
      ...(this.#wrong.length > MOST_SHOWN ? [`and ${this.#wrong.length - MOST_SHOWN} more`] : []),
      '',
    ].join('\n');
  }
}

const MOST_SHOWN = 10;

/** As much of a failure as shows the seed and the smallest input. */
const told = (name, errors) =>
  [name, ...errors.flatMap((each) => [each.message, each.cause?.message ?? ''])].join('\n').slice(0, 3000);
