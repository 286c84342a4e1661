import type { Command } from 'commander';
import { commandLine } from '../../src/cli/run.ts';
import { ENGINE, INSTRUMENTS, LIMITS, SHOP } from './fourCylinder.ts';

/** A command of the program, such as `new session`. */
export interface Leaf {
  readonly name: string;
  readonly command: Command;
}

const nowhere = { write: (): void => {} };

/** Every command as the program itself has them, hidden ones too: a new one cannot be forgotten. */
export const LEAVES: readonly Leaf[] = leavesOf(
  commandLine({ workingDirectory: '/', environment: {}, today: '', out: nowhere, err: nowhere }, () => {}),
  '',
);

function leavesOf(command: Command, before: string): readonly Leaf[] {
  return command.commands.flatMap((each) => {
    const name = `${before}${each.name()}`;
    return each.commands.length > 0 ? leavesOf(each, `${name} `) : [{ name, command: each }];
  });
}

/** How a command is called where all is well in the shop below. */
export interface GoodCall {
  readonly words: string;
  readonly exitCode: 0 | 1;
  /** The same for an engine that is not there; undefined where no engine is asked for. */
  readonly missing: string | undefined;
  /** It makes or changes a file. */
  readonly writes: boolean;
  /** What it says on stdout of files that are there already, though it can write none. */
  readonly keeps?: string;
  /** What is typed or piped into it. */
  readonly input?: string;
}

const reads = { exitCode: 0, writes: false } as const;
const writes = { exitCode: 0, writes: true } as const;

const KEPT = 'kept      shop.yaml\nkept      instruments.yaml\n';

export const CALLS: Readonly<Record<string, GoodCall>> = {
  check: { ...reads, words: 'engines/pump', missing: 'crane' },
  gather: { ...reads, words: 'share.json', missing: undefined },
  diff: { ...reads, words: 'teardown rebuild pump', missing: 'teardown rebuild crane' },
  trend: { ...reads, words: 'crankshaft_end_play pump', missing: 'crankshaft_end_play crane' },
  explain: { ...reads, words: 'pump crankshaft_end_play', missing: 'crane crankshaft_end_play' },
  study: { ...reads, words: 'pump', missing: 'crane' },
  part: { ...reads, words: '--format text', missing: undefined },
  instruments: { ...reads, words: '--on 2026-03-20', missing: undefined },
  recall: { ...reads, words: 'dial --error 0.001', missing: undefined },
  plan: { ...reads, words: '--session teardown pump', missing: '--session teardown crane' },
  report: { ...writes, words: 'pump --to sheet.html', missing: 'crane --to sheet.html' },
  film: { ...reads, words: 'pump', missing: 'crane' },
  calc: { ...reads, words: 'bore pump', missing: 'bore crane' },
  export: { ...writes, words: 'pump --to table.csv', missing: 'crane --to table.csv' },
  torque: { ...reads, words: 'caps pump', missing: 'caps crane' },
  init: { ...writes, words: '--no-git --ci', missing: undefined, keeps: KEPT },
  'new engine': { ...writes, words: 'Crane', missing: undefined },
  'new session': { ...writes, words: 'pump --stage trial', missing: 'crane --stage trial' },
  'new torque': {
    ...writes,
    words: 'rods --passes 40 --engine pump',
    missing: 'rods --passes 40 --engine crane',
  },
  record: {
    ...writes,
    words: 'pump --stage trial --measure crankshaft_end_play',
    missing: 'crane --stage trial',
    input: '0.009\rfinish\r',
  },
  import: {
    ...writes,
    words: 'sides.csv --stage machined --engine pump',
    missing: 'sides.csv --stage machined --engine crane',
  },
  completion: { ...reads, words: 'zsh', missing: undefined },
  complete: { ...reads, words: '-- ch', missing: undefined },
};

const session = (stage: string, date: string, more: string): string =>
  `kind: session\nstage: ${stage}\ndate: ${date}\nreadings: [{ measure: crankshaft_end_play, with: dial, value: 0.009 }, { measure: rod_bearing_clearance, at: { 1: 0.003 } }]\n${more}`;

const STUDY =
  'study: { measure: main_journal_diameter, with: mic-3-4, parts: { P1: { RK: [3.2478, 3.2479], JM: [3.2478, 3.2477] }, P2: { RK: [3.2472, 3.2472], JM: [3.2471, 3.2473] } } }\n';

export const COMMAND_SHOP: Readonly<Record<string, string>> = {
  'shop.yaml': SHOP,
  'instruments.yaml': INSTRUMENTS,
  'engines/pump/engine.yaml': `${ENGINE}oil: { viscosity: { 40 degC: 150 cSt, 100 degC: 14.5 cSt } }\nrunning: { speed: 1200 rpm }\n`,
  'engines/pump/limits.yaml': LIMITS,
  'engines/pump/sessions/teardown.yaml': session('teardown', '2026-02-03', ''),
  'engines/pump/sessions/rebuild.yaml': session('rebuild', '2026-03-14', STUDY),
  'engines/pump/torque/caps.yaml':
    'kind: torque\njoint: main caps\nsource: Invented.\nfasteners: { names: [1L, 1R] }\npasses: [{ to: 40 lbf ft }]\n',
  'share.json':
    '{"format":"tenths.check","version":2,"tool":{"version":""},"at":null,"since":null,"strict":false,"exit":0,"diagnostics":[],"findings":[],"engines":[],"follow_ups":[],"summary":{"sessions":0,"errors":0,"warnings":0,"remarks":0},"share":{"number":1,"of":1,"total":0,"detail":false,"engines":[],"texts":{}}}',
  'sides.csv': 'Pin,Side\n1,0.008\n2,0.009\n',
  'imports/sides.yaml':
    'columns: { position: Pin, value: Side }\nmeasure: rod_side_clearance\ndelimiter: comma\ndecimal: point\nunit: in\ndecimals: as written\n',
};
