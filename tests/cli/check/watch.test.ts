import { spawn } from 'node:child_process';
import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { callHere } from '../../inProcess.ts';
import { builtProgram, SURROUNDINGS } from '../../program.ts';
import { atTheBench } from '../bench.ts';

interface Watching {
  /** Waits until the program has printed this since it was asked before, and gives all that it printed since. */
  readonly printed: (text: string) => Promise<string>;
  readonly interrupt: () => Promise<number | null>;
}

/** The built program as it watches a folder. */
function watching(cwd: string): Watching {
  const child = spawn(process.execPath, [builtProgram(), 'check', '--watch'], {
    cwd,
    env: { ...SURROUNDINGS, XDG_CACHE_HOME: join(cwd, '.cache') },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let output = '';
  let wake = (): void => {};
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    output += text;
    wake();
  });
  const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
  onTestFinished(() => void child.kill('SIGKILL'));
  return {
    printed: async (text) => {
      while (!output.includes(text)) {
        await new Promise<void>((resolve) => {
          wake = resolve;
        });
      }
      const since = output;
      output = '';
      return since;
    },
    interrupt: () => {
      child.kill('SIGINT');
      return ended;
    },
  };
}

const session = (readings: string): string =>
  `kind: session\nstage: teardown\ndate: 2026-02-03\nreadings:\n  - measure: main_journal_diameter\n    with: mic-3-4\n    at: { ${readings} }\n`;

describe('a check that watches', () => {
  it(
    'prints what changed in verdict whenever a document changes, and leaves at Ctrl-C',
    { timeout: 30_000 },
    () =>
      atTheBench({}, async (folder) => {
        const write = (path: string, text: string): void => writeFileSync(join(folder, path), text);
        const { printed, interrupt } = watching(folder);
        expect(await printed('watching 3 folders; Ctrl-C ends it\n')).toContain('1 error');

        write('sound/teardown.yaml', session('1: 3.2481, 2: 3.2459'));
        const out = await printed('reading/out');
        expect(out).toContain('changed: sound/teardown.yaml\nSound pump: 1 out: ');
        expect(out).toContain('  main journal diameter 2: ok → out\n');
        expect(out).not.toContain('Worn pump');

        // As editors and `record` save: written beside it, then renamed over it.
        write('sound/.teardown.tmp', session('1: 3.2481, 2: 3.2482'));
        renameSync(join(folder, 'sound/.teardown.tmp'), join(folder, 'sound/teardown.yaml'));
        expect(await printed('→')).toContain('  main journal diameter 2: out → ok\n');

        write('sound/teardown.yaml', `# a word\n${session('1: 3.2481, 2: 3.2482')}`);
        expect(await printed('stay')).toBe('\nchanged: sound/teardown.yaml; the verdicts stay\n');

        write('sound/teardown.yaml', session('1: [3.2481'));
        const broken = await printed('document/yaml');
        expect(broken).not.toContain('→');
        write('sound/teardown.yaml', session('1: 3.2481, 2: 3.2482'));
        const mended = await printed('no more');
        expect(mended).not.toContain('→');

        mkdirSync(join(folder, 'new'));
        write('new/engine.yaml', 'kind: engine\nname: New pump\nlayout: { mains: 2 }\n');
        write('new/teardown.yaml', session('1: 3.2459, 2: 3.2482'));
        expect(await printed('reading/out')).toContain('New pump: 1 out');
        write('new/teardown.yaml', session('1: 3.2480, 2: 3.2482'));
        expect(await printed('→')).toContain('  main journal diameter 1: out → ok\n');

        expect(await interrupt()).toBe(0);
      }),
  );

  it('prints text alone, of what stands in the folder', () =>
    atTheBench({}, async (cwd) => {
      for (const words of ['--format json', '--staged', '--at HEAD', '--since HEAD']) {
        const ran = await callHere(['check', '--watch', ...words.split(' ')], { cwd });
        expect(ran, words).toMatchObject({ stdout: '', exitCode: 2 });
        expect(ran.stderr, words).toContain('--watch');
      }
    }));
});
