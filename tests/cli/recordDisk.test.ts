import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { startLine } from '../../src/bench/record/journalText.ts';
import { benchEngine } from '../../src/cli/record/benchEngine.ts';
import { Entry } from '../../src/cli/record/recordEntry.ts';
import { recordStart, recordTarget } from '../../src/cli/record/recordTarget.ts';
import { writtenLines } from '../../src/output/escape/line.ts';
import { promptLoop } from '../../src/shell/process/promptLoop.ts';
import { thisProcess } from '../../src/shell/process/thisProcess.ts';
import { openJournal } from '../../src/shell/write/journal.ts';
import { TODAY } from '../inProcess.ts';
import { failingFiles } from '../shell/failingFiles.ts';
import { benchFolder } from './calling.ts';
import { ENGINE, LIMITS, SHOP } from './fourCylinder.ts';

const bench = benchFolder();
const SESSIONS = 'engines/pump/sessions';
const SESSION = `${SESSIONS}/2026-02-03-teardown.yaml`;
const OPTIONS = { stage: 'teardown', date: '2026-02-03', measure: ['rod_side_clearance'] } as const;
const TYPED = ['0.008', '0.009', '0.010', '0.011'];
const WAITING = 'kind: session\nstage: teardown\ndate: 2026-02-03\nreadings: []   # none yet\n';

const shop = (): void =>
  bench.put({
    'shop.yaml': SHOP,
    'engines/pump/engine.yaml': ENGINE,
    'engines/pump/limits.yaml': LIMITS,
    [SESSION]: WAITING,
  });

interface Took {
  readonly ending: unknown;
  /** As many lines as were answered by going on to the next. */
  readonly acknowledged: number;
  readonly told: string;
  readonly calls: number;
}

/** An entry on a disk of which one call fails, and all after it too if it `keeps` failing. */
async function entryOn(fault: Parameters<typeof failingFiles>[0]): Promise<Took> {
  const { files, calls } = failingFiles(fault);
  let told = '';
  const output = { write: (text: string) => (told += text) };
  const world = {
    workingDirectory: bench.folder(),
    environment: {},
    today: TODAY,
    out: output,
    err: output,
  };
  const opened = benchEngine(undefined, world);
  const target = recordTarget(opened, OPTIONS, world);
  const path = `${SESSIONS}/.${target.name}.part`;
  const journal = openJournal({ files, self: thisProcess, root: bench.folder(), path });
  const refused = (told: string): Took => ({
    ending: 'refused',
    acknowledged: 0,
    told,
    calls: calls().length,
  });
  if (!journal.ok) return refused(journal.problem.message);
  try {
    const start = recordStart(opened, target, OPTIONS, world);
    const begun = journal.value.append(startLine(start));
    if (!begun.ok) return refused(begun.problem.message);
    const entry = new Entry(opened, target, start, journal.value, world, false);
    let acknowledged = 0;
    const counting = {
      opening: () => writtenLines([]),
      prompt: () => entry.prompt(),
      hear: (line: string) => {
        const next = entry.hear(line, false);
        acknowledged += next === 'go on' ? 1 : 0;
        return next;
      },
    };
    const ending = await promptLoop(
      counting,
      Readable.from([TYPED.map((each) => `${each}\n`).join('')]),
      output,
    );
    if (ending !== 'finished') entry.leave(ending);
    return { ending, acknowledged, told, calls: calls().length };
  } finally {
    journal.value.close();
  }
}

const PART = `${SESSIONS}/.2026-02-03-teardown.part`;

const takenIn = (part: string): number =>
  existsSync(join(bench.folder(), part)) ? (read(part).match(/^\{"do":"take".*\}$/gm) ?? []).length : 0;

const read = (path: string): string => readFileSync(join(bench.folder(), path), 'utf8');

describe('an entry on a disk that fails', () => {
  it.each(['ENOSPC', 'EROFS', 'EIO'])(
    'by %s at any call, for good, says so, keeps what it acknowledged, and goes on from there',
    async (code) => {
      shop();
      const { calls } = await entryOn({ at: Number.POSITIVE_INFINITY, code, keeps: true });
      for (let at = 1; at <= calls; at++) {
        bench.put({ [SESSION]: WAITING });
        for (const name of readdirSync(join(bench.folder(), SESSIONS))) {
          if (name.startsWith('.')) rmSync(join(bench.folder(), SESSIONS, name));
        }
        const { ending, acknowledged, told } = await entryOn({ at, code, keeps: true });
        expect(read(SESSION)).toBe(WAITING);
        if (ending !== 'finished') expect(told).toContain(code);
        const kept = takenIn(PART);
        // A line of which the disk did not confirm that it holds it may be there all the same.
        expect([acknowledged, acknowledged + 1]).toContain(kept);
        if (acknowledged === 0) continue;
        const rest = TYPED.slice(kept).map((each) => `${each}\n`);
        const again = await bench.pipe(rest.join(''), 'record', '--session', '2026-02-03-teardown');
        expect(again.err).not.toContain('tenths:');
        expect(read(SESSION).match(/0\.0\d\d/g)).toEqual(TYPED);
      }
    },
  );
});
