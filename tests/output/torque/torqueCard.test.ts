import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, test } from 'vitest';
import { writtenLines } from '../../../src/output/escape/line.ts';
import { writtenMarkdown } from '../../../src/output/escape/markdown.ts';
import { paintWith } from '../../../src/output/terminal/paint.ts';
import { PLAIN } from '../../../src/output/terminal/picture.ts';
import { torqueCardLines } from '../../../src/output/torque/torqueCard.ts';
import { torqueCardJson } from '../../../src/output/torque/torqueCardJson.ts';
import { torqueCardMarkdown } from '../../../src/output/torque/torqueCardMarkdown.ts';
import { type Tools, tighteningCard } from '../../../src/torque/card.ts';
import { engineOf } from '../../documents/engineOf.ts';
import { runs } from '../../propertyRuns.ts';
import { amount } from '../../torque/amounts.ts';

const ORIGIN = { engine: 'Reservoir pump no. 2', path: 'torque/joint.yaml' };
/** Letter paper holds 66 lines at six to the inch, A4 70: one is left above and below. */
const PAGE_LINES = 64;

function cardOf(yaml: string, tools: Tools = {}) {
  const [document] = engineOf({ 'torque/joint.yaml': `kind: torque\n${yaml}` }).sequences;
  if (document === undefined) throw new Error('no sequence');
  const carded = tighteningCard(document.joint, tools);
  if ('problem' in carded) throw new Error(carded.problem);
  return carded.card;
}

const printed = (yaml: string, tools: Tools = {}, width = 80): readonly string[] =>
  writtenLines(
    torqueCardLines(cardOf(yaml, tools), ORIGIN, {
      paint: paintWith(0),
      width,
      glyphs: PLAIN,
      detail: false,
    }),
  )
    .trimEnd()
    .split('\n');

/** The lines of a section, to the next empty line. */
function section(lines: readonly string[], title: string): readonly string[] {
  const from = lines.indexOf(title) + 1;
  const to = lines.indexOf('', from);
  return from === 0 ? [] : lines.slice(from, to < 0 ? undefined : to);
}

const procedure = (passes: string, more = 'joint: cylinder head\nfasteners: { count: 2 }\n'): string =>
  `${more}passes: ${passes}\nsource: As named beside the test.\n`;

describe('procedures of published manuals are documents that validate and print', () => {
  test.each([
    [
      'TM 10-3930-669-20, table E-1: a head by preload and four turns, 165 degrees together',
      '[{ to: 29.5 lbf ft }, { turn: 45 deg }, { turn: 45 deg }, { turn: 45 deg }, { turn: 30 deg }]',
      [
        '  [ ]  1  tighten to    29.5 lbf ft  40.0 N m',
        '  [ ]  2  turn further       45 deg',
        '  [ ]  3  turn further       45 deg',
        '  [ ]  4  turn further       45 deg',
        '  [ ]  5  turn further       30 deg',
      ],
    ],
    [
      'TM 5-2815-241-34&P: rod nuts up in two, loosened to nothing, up in three (its own newton metres are wrong)',
      '[{ to: 70 to 75 lbf ft }, { to: 140 to 150 lbf ft }, { loosen: fully }, { to: 25 to 30 lbf ft }, { to: 70 to 75 lbf ft }, { to: 140 to 150 lbf ft }]',
      [
        '  [ ]  1  tighten to      70 to 75 lbf ft  94.9 to 102 N m',
        '  [ ]  2  tighten to    140 to 150 lbf ft   190 to 203 N m',
        '  [ ]  3  loosen fully',
        '  [ ]  4  tighten to      25 to 30 lbf ft  33.9 to 40.7 N m',
        '  [ ]  5  tighten to      70 to 75 lbf ft  94.9 to 102 N m',
        '  [ ]  6  tighten to    140 to 150 lbf ft   190 to 203 N m',
      ],
    ],
    [
      'TM 5-3810-306-34: rod nuts 30, 60, 88 lbf ft (40, 80, 120 N m as printed)',
      '[{ to: 30 lbf ft }, { to: 60 lbf ft }, { to: 88 lbf ft }]',
      [
        '  [ ]  1  tighten to  30 lbf ft  40.7 N m',
        '  [ ]  2  tighten to  60 lbf ft  81.3 N m',
        '  [ ]  3  tighten to  88 lbf ft   119 N m',
      ],
    ],
    [
      'TM 5-3800-205-23-1: 70 % of final in the pattern, then final',
      '[{ to: 70 % }, { to: 100 lbf ft }]',
      [
        '  [ ]  1  tighten to (70 %)   70 lbf ft  94.9 N m',
        '  [ ]  2  tighten to         100 lbf ft   136 N m',
      ],
    ],
    [
      'TM 55-1905-223-24-1: rod bolts by stretch, .0135 to .0185 in (.343 to .470 mm)',
      '[{ stretch: 0.0135 to 0.0185 in }]',
      ['  [ ]  1  until stretched  0.0135 to 0.0185 in  0.343 to 0.470 mm'],
    ],
    [
      'TM 9-2815-220-24, WP 0139: 58 to 69 lbf ft (79 to 94 N m) with a stretch of .019 to .024 in (.4826 to .6096 mm)',
      '[{ to: 58 to 69 lbf ft, stretch: 0.019 to 0.024 in }]',
      [
        '  [ ]  1  until within       58 to 69 lbf ft   78.6 to 93.6 N m',
        '          and stretched  0.0190 to 0.0240 in  0.483 to 0.610 mm',
      ],
    ],
    [
      'TM 5-3805-260-24: rod nuts 30 ± 3 lbf ft and 60 ± 5 degrees',
      '[{ to: 27 to 33 lbf ft }, { turn: 55 to 65 deg }]',
      [
        '  [ ]  1  tighten to    27 to 33 lbf ft  36.6 to 44.7 N m',
        '  [ ]  2  turn further     55 to 65 deg',
      ],
    ],
    [
      'Chrysler service manual, 2000 Intrepid 3.2: three torques, a quarter turn, a check at more than 122 N m (90 lbf ft)',
      '[{ to: 61 N m }, { to: 88 N m }, { to: 88 N m }, { turn: 90 deg }, { check: 122 N m }]',
      [
        '  [ ]  1  tighten to      61 N m  45.0 lbf ft',
        '  [ ]  2  tighten to      88 N m  64.9 lbf ft',
        '  [ ]  3  tighten to      88 N m  64.9 lbf ft',
        '  [ ]  4  turn further    90 deg',
        '  [ ]  5  must hold      122 N m  90.0 lbf ft',
      ],
    ],
  ])('%s', (_, passes, expected) => {
    expect(section(printed(procedure(passes)), 'passes')).toEqual(
      expected.map((line) => expect.stringMatching(sameButForSpaces(line))),
    );
  });

  test('the printed row of nine of TM 5-3800-205-23-1', () => {
    const row =
      'joint: cover\nfasteners: { count: 9 }\npositions: [1, 2, 3, 4, 5, 6, 7, 8, 9]\norder: [4, 5, 3, 6, 2, 7, 9, 1, 8]\n';
    const drawn = printed(procedure('[{ to: 30 lbf ft }]', row)).find((line) => line.startsWith('|'));
    expect(
      drawn
        ?.replace(/[^\d ]/g, '')
        .trim()
        .split(/ +/),
    ).toEqual('8 5 3 1 2 4 6 9 7'.split(' '));
  });
});

const sameButForSpaces = (line: string): RegExp =>
  new RegExp(`^${line.trim().split(/ {2,}/).map(escaped).join(' {2,}')}$`.replace('^', '^ *'));
const escaped = (text: string): string => text.replace(/[[\]().%]/g, '\\$&');

describe('the setting of the wrench', () => {
  const one = 'joint: nut\nfasteners: { count: 1 }\n';
  const straight = (length: string, adapter: string): Tools => ({
    wrenchLength: amount(length),
    adapter: { kind: 'straight', length: amount(adapter) },
  });

  test.each([
    ['TM 1-1500-204-23-9: 214', '300 lbf in', '10 in', '4 in', '214 (214.286) lbf in'],
    ['TM 5-3810-305-23: 225 lbf ft (305 N m)', '300 lbf ft', '18 in', '6 in', '225 lbf ft'],
    ['NAVEDTRA 14315: 66.7', '100 lbf in', '12 in', '6 in', '66.7 (66.667) lbf in'],
    ['TM 9-2350-261-20-1: 30', '40 lbf ft', '12 in', '4 in', '30 lbf ft'],
    ['TM 5-3805-274-13&P: 16.72, printed 17', '19 lbf ft', '22 in', '3 in', '16.7 (16.72) lbf ft'],
    ['a light aircraft manual, fig. 20-1: 24', '30 lbf ft', '12 in', '3 in', '24 lbf ft'],
  ])('%s', (_, torque, length, adapter, expected) => {
    const lines = section(
      printed(procedure(`[{ to: ${torque} }]`, one), straight(length, adapter)),
      'passes',
    );
    expect(lines[1]).toMatch(new RegExp(`set wrench to +${escaped(expected)} `));
  });

  test('from the document, with run-on torque added before the adapter is reckoned with (AC 43.13-1B, 7-40)', () => {
    const tools = 'wrench: { length: 10 in }\nadapter: { length: 10 in }\nrun_on: 10 lbf in\n';
    const lines = printed(procedure('[{ to: 90 lbf in }]', `${one}${tools}`));
    expect(section(lines, 'passes')).toEqual([
      '  [ ]  1  tighten to     100 lbf in  11.3 N m',
      '          set wrench to   50 lbf in  5.65 N m',
    ]);
    expect(lines).toContain('wrench 10 in with an adapter of 10 in straight on; run-on torque added: 10 lbf');
  });

  test('an adapter without the length of the wrench gives no card', () => {
    const [document] = engineOf({
      'torque/joint.yaml': `kind: torque\n${procedure('[{ to: 40 }]', one)}`,
    }).sequences;
    const carded =
      document && tighteningCard(document.joint, { adapter: { kind: 'straight', length: amount('6 in') } });
    expect(carded).toHaveProperty('problem');
  });
});

const CAPS = `joint: main caps
fasteners: { names: [1L, 1R, 2L, 2R, 3L, 3R, 4L, 4R, 5L, 5R], thread: 9/16-12, grade: 8, reuse: true }
positions: { caps: 5, each_cap: 2 }
order: centre out
lubricant: engine oil on threads and under heads
before: [threads clean, caps in their places and facing forward, shells seated]
after: [crankshaft turns freely]
passes: [{ to: 40 }, { to: 80 }, { to: 110 }]
source: Invented for this example.
`;
const HEAD = `joint: cylinder head
fasteners: { thread: M12x1.75, grade: 10.9, reuse: false, length: 110 mm, groups: { long: [A1, A2], short: [B1] } }
positions: { rows: 2, columns: 7 }
order: centre out
lubricant: engine oil
friction: { thread: 0.14, head: 0.14, head_diameter: 17 mm }
before: [gasket faces clean and dry, holes blown out]
after: [marks all turned alike]
passes: [{ to: 40 N m }, { loosen: fully, reversed: true }, { to: 40 N m }, { turn: 90 deg }, { turn: 90 deg, fasteners: [long], note: only the long ones }, { check: 100 N m }]
source: Invented for this example.
`;

describe('a card', () => {
  test('shows what is expected of three passes on oiled 9/16-12 bolts of grade 8, as an estimate', () => {
    expect(section(printed(CAPS), 'expected clamp load of one fastener: an estimate').slice(0, 6)).toEqual([
      '  pass                load            between  of proof  at most',
      '     1   21.1 kN  4740 lbf   3560 to 5930 lbf      22 %     27 %',
      '     2   42.2 kN  9480 lbf  7110 to 11900 lbf      43 %     54 %',
      '     3  58.0 kN  13000 lbf  9780 to 16300 lbf      60 %     75 %',
      '  - assumed: T = K d F with K = 0.18 (oiled); one bolt may lie 25 % off either',
      '    way',
    ]);
  });

  test('a turn with the length that stretches has a load too, up to yield, and friction has its say', () => {
    const lines = section(printed(HEAD), 'expected clamp load of one fastener: an estimate');
    expect(lines.filter((line) => /^ +[1345],? /.test(line))).toEqual([
      '  1, 3   18.5 kN  4160 lbf  13.9 to 23.1 kN      26 %     33 %',
      '  4, 5  79.2 kN  17800 lbf                      113 %    113 %',
    ]);
    expect(lines).toContain('  - by the friction formula: pass 1 17.0 kN, pass 3 17.0 kN');
  });

  test('says that an order was generated, and in which order nobody stated', () => {
    expect(printed(CAPS)).toContain("generated: the maker's order wins");
    expect(printed(CAPS.replace('order: centre out\n', ''))).toContain(
      'no order is stated: these are as they are listed',
    );
    const makers = CAPS.replace('centre out', '[3L, 3R, 4R, 4L, 2L, 2R, 5R, 5L, 1L, 1R]');
    expect(printed(makers).filter((line) => /generated|stated:/.test(line))).toEqual([]);
  });

  test('asks for every step before and after', () => {
    expect(section(printed(CAPS), 'confirm before')).toEqual([
      '  [ ] threads clean',
      '  [ ] caps in their places and facing forward',
      '  [ ] shells seated',
    ]);
    expect(section(printed(CAPS), 'confirm after')).toEqual(['  [ ] crankshaft turns freely']);
  });

  test('says why there is no clamp load', () => {
    const lines = printed(CAPS.replace(', grade: 8', ', grade: rod bolt'));
    expect(lines.join('\n')).toMatch(/rod bolt is not a known grade for 9\/16-12 UNC/);
    const bare = printed(CAPS.replace(', thread: 9/16-12, grade: 8', ''));
    expect(section(bare, 'expected clamp load of one fastener: an estimate')).toEqual([
      '  - none: the thread is not stated',
    ]);
  });

  test('warns of a torque beyond proof, and of passes at odds with each other', () => {
    const lines = section(
      printed(CAPS.replace('{ to: 80 }, { to: 110 }', '{ to: 200 }, { to: 110 }')),
      'doubtful',
    );
    expect(lines).toEqual([
      '  - pass 3: 3L goes to less torque than before without being loosened',
      '  - pass 2: 109 % of the proof load of 9/16-12 UNC, SAE J429 grade 8, at K 0.18',
      '    (oiled)',
    ]);
  });

  test('hidden characters of a document obey nobody', () => {
    const lines = printed(CAPS.replace('threads clean', '"threads\\u200b clean"'));
    expect(lines).toContain('  [ ] threads\\u{200b} clean');
    expect(
      writtenMarkdown(torqueCardMarkdown(cardOf(CAPS.replace('threads clean', '"![x](http://y)"')), ORIGIN)),
    ).toContain('- [ ] &#33;&#91;x&#93;(http:&#8203;//y)');
  });

  test('fits a page of 80 columns and 64 lines', () => {
    const tools: Tools = {
      wrenchLength: amount('18 in'),
      adapter: { kind: 'angled', length: amount('6 in'), angle: amount('30 deg') },
      runOn: amount('9 lbf in'),
    };
    const plain = HEAD.replace(/^friction.*\n/m, '');
    for (const [yaml, chosen] of [
      [CAPS, {}],
      [CAPS, tools],
      [plain, {}],
      [plain, { ...tools, runOn: undefined }],
    ] as const) {
      const lines = printed(yaml, chosen, Number.POSITIVE_INFINITY);
      expect(Math.max(...lines.map((line) => stringWidth(line)))).toBeLessThanOrEqual(80);
      expect(lines.length).toBeLessThanOrEqual(PAGE_LINES);
    }
  });

  test('fits every terminal from 60 columns up', () => {
    const tools: Tools = {
      wrenchLength: amount('18 in'),
      adapter: { kind: 'straight', length: amount('5 in') },
    };
    fc.assert(
      fc.property(fc.integer({ min: 60, max: 120 }), fc.constantFrom(CAPS, HEAD), (width, yaml) => {
        for (const line of printed(yaml, tools, width)) expect(stringWidth(line)).toBeLessThanOrEqual(width);
      }),
      runs(60, 20),
    );
  });

  test('says the same in Markdown and in JSON', () => {
    const markdown = writtenMarkdown(torqueCardMarkdown(cardOf(CAPS), ORIGIN));
    expect(markdown).toContain('| 3 | tighten to | 110 lbf ft | 149 N m | ☐ |');
    expect(markdown).toContain('- [ ] shells seated');
    expect(markdown).toContain('| 3 | 58.0 kN 13000 lbf | 9780 to 16300 lbf | 60 % | 75 % |');
    const json = torqueCardJson(cardOf(CAPS), ORIGIN, 0);
    expect(json.order_from).toBe('generated');
    expect(json.passes.map(({ torque_N_m }) => torque_N_m?.least)).toEqual([
      54.2327179333, 108.465435867, 149.139974316,
    ]);
  });
});
