import { describe, expect, it } from 'vitest';
import { isCommand } from '../../output/escape/commands.ts';
import { call } from '../call.ts';
import { benchFolder } from '../calling.ts';

const bench = benchFolder();

const LONG = 'of the usual quantity for all the threads and heads of such fasteners as these';

const shop = (label: string, name = 'Pump', words = 'oil'): Readonly<Record<string, string>> => ({
  'shop.yaml': `kind: shop\nname: Shop\nunits: { length: in }\ncharacteristics: { stud_length: { label: ${label}, quantity: length, positions: main } }\n`,
  'engines/pump/engine.yaml': `kind: engine\nname: ${JSON.stringify(name)}\nlayout: { mains: 1 }\n`,
  'engines/pump/limits.yaml':
    'kind: limits\nsource: Invented.\nlimits: { stud_length: { new: { min: 1, max: 2 } } }\n',
  'engines/pump/sessions/trial.yaml':
    'kind: session\nstage: trial\ndate: 2026-02-03\nreadings: [{ measure: stud_length, with: rule, at: { 1: 2.5 } }]\n',
  'engines/pump/torque/caps.yaml': `kind: torque\njoint: caps\nsource: ${JSON.stringify(words)}\nlubricant: ${JSON.stringify(words)}\nnote: ${JSON.stringify(words)}\nbefore: [${JSON.stringify(words)}]\nfasteners: { names: [${JSON.stringify(words)}, b, c] }\npasses: [{ to: 40 lbf ft, note: ${JSON.stringify(words)} }]\n`,
});

/** Lines that a log would obey. */
async function commandsOf(words: readonly string[], columns?: number): Promise<readonly string[]> {
  const { out, err } = await call(bench.folder(), words, columns);
  expect(out).not.toBe('');
  return `${out}${err}`.split('\n').filter(isCommand);
}

describe('the label of a characteristic that the shop adds', () => {
  it.each([
    ['a colour', '"a\\e[31m"', 'a\\u{1b}[31m, length'],
    ['a bell', '"a\\a"', 'a\\u{7}, length'],
    ['a return of the carriage', '"a\\rb"', 'a\\rb, length'],
  ])('is explained as it stands, not obeyed: %s', async (_, label, shown) => {
    bench.put(shop(label));
    const { out } = await call(bench.folder(), ['explain', 'stud_length']);
    expect(out).toContain(`stud_length  ${shown}`);
    expect(out).not.toMatch(/[\u0007\r\u001b]/);
  });

  it.each(['check', 'check --detail', 'explain stud_length', 'explain pump stud_length 1'])(
    'begins no line of tenths %s',
    async (words) => {
      bench.put(shop('"a\\n::error file=x::pwn"'));
      expect(await commandsOf(words.split(' '))).toEqual([]);
    },
  );
});

describe('a command to a log', () => {
  it.each(['Pump ##[add-mask]out', '\u00a0::error::out', '\u3000\u2003 ::error::out'])(
    'is broken wherever a log would look for it: %j',
    async (name) => {
      bench.put(shop('length', name));
      expect(await commandsOf(['check'])).toEqual([]);
    },
  );

  it.each([40, 60, 80])('does not come about by wrapping at %i columns', async (columns) => {
    const found: string[] = [];
    // Somewhere among so many lengths a line breaks just before it.
    for (let length = 0; length < LONG.length; length += 5) {
      bench.put(shop('length', 'Pump', `${LONG.slice(0, length)} ::error file=x::out`));
      found.push(...(await commandsOf(['torque', 'caps'], columns)));
    }
    expect(found).toEqual([]);
  });
});
