import { describe, expect, it } from 'vitest';
import { benchFolder } from './calling.ts';
import { INSTRUMENTS } from './fourCylinder.ts';
import { hasTerminal, Terminal } from './terminal.ts';

const bench = benchFolder();

const LIMITS = `kind: limits
source: Invented for this test.
limits:
  crankshaft_end_play: { new: 0.006 to 0.013, wear: { max: 0.018 } }
  main_bearing_clearance: { new: 0.0020 to 0.0038, wear: { max: 0.0050 } }
  main_journal_diameter: { new: 3.2475 to 3.2485 }
`;

/** The screen without what moves its cursor. */
const plain = (shown: string): string => shown.replace(/\u001b\[[0-9;]*[A-Za-z]/g, '').replace(/\r/g, '');

// Node opens no terminal by itself; `script` comes with util-linux and is on nearly every Linux.
describe.skipIf(!hasTerminal)('a first session', () => {
  it('goes from an empty folder to a checked teardown at a terminal', async () => {
    await bench.call('init', '--no-git');
    await bench.call('new', 'engine', 'Pump', '--cylinders', '1', '--mains', '2');
    bench.put({ 'engines/pump/limits.yaml': LIMITS, 'instruments.yaml': INSTRUMENTS });
    const terminal = new Terminal(bench.folder(), ['record', '--stage', 'teardown', '--date', '2026-02-03'], {
      LANG: 'C.UTF-8',
    });
    const typed = [
      '0.0095',
      '0.0030',
      '0.0055',
      'n it dragged',
      'back',
      '0.0045',
      '478',
      '32.481',
      'back',
      '3.2481',
      'finish',
    ];
    for (const [index, line] of typed.entries()) {
      await terminal.seeTimes('> ', index + 1);
      terminal.send(`${line}\r`);
    }
    expect(await terminal.ended()).toBe(0);
    await expect(plain(terminal.shown)).toMatchFileSnapshot('firstSession.txt');
  });
});
