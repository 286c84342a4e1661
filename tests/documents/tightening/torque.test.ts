import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { registryWith } from '../../../src/characteristics/registry.ts';
import { reportEngine } from '../../../src/checks/judge/report.ts';
import type { TorqueDocument } from '../../../src/documents/tightening/torque.ts';
import { writtenLines } from '../../../src/output/escape/line.ts';
import { paintWith } from '../../../src/output/terminal/paint.ts';
import { PLAIN } from '../../../src/output/terminal/picture.ts';
import { torqueCardLines } from '../../../src/output/torque/torqueCard.ts';
import { add, toNumber } from '../../../src/quantity/fraction.ts';
import { unitNamed } from '../../../src/quantity/units.ts';
import { tighteningCard } from '../../../src/torque/card.ts';
import {
  AIRCRAFT_THREADS,
  aircraftTorqueOf,
  judgeAircraftTorque,
} from '../../../src/torque/fasteners/aircraftTorques.ts';
import { runs } from '../../propertyRuns.ts';
import { span } from '../../torque/amounts.ts';
import { assembled, engineOf } from '../engineOf.ts';

/** A torque document with these lines, and passes and a source unless it has its own. */
const written = (lines: string): string =>
  [
    'kind: torque',
    'joint: main caps',
    lines,
    ...(lines.includes('passes:') ? [] : ['passes: [{ to: 40 }, { to: 80 }]']),
    'source: Invented.',
    '',
  ].join('\n');

function read(lines: string): TorqueDocument {
  const [document] = engineOf({ 'torque/caps.yaml': written(lines) }).sequences;
  if (document === undefined) throw new Error('no sequence');
  return document;
}

const problems = (lines: string): readonly string[] =>
  assembled({ 'torque/caps.yaml': written(lines) }).diagnostics.map(
    ({ place, code, message, help }) =>
      `${place.line}:${place.column} ${code} ${message}${help === undefined ? '' : ` | ${help}`}`,
  );

const orderOf = (lines: string): string => {
  const { sequence, orderFrom } = read(lines).joint;
  return `${orderFrom}: ${sequence.order.join(' ')}`;
};

describe('a nut factor that is stated', () => {
  const NAMED = 'fasteners: { names: [a, b] }\nnut_factor: 0.16\n';

  // NSTS 08307, torque wrench (from memory): unlubricated 35 %, cadmium plated 30 %, lubricated 25 %.
  test.each([
    ['', 0.35],
    ['lubricant: dry', 0.35],
    ['lubricant: cadmium plated', 0.3],
    ['lubricant: anti-seize paste', 0.25],
    ['lubricant: engine oil', 0.25],
    ['lubricant: engine oil\nscatter: 12 %', 0.12],
  ])('scatters as its lubrication does: %s', (more, scatter) => {
    expect(read(NAMED + more).joint.lubrication).toMatchObject({ nutFactor: 0.16, scatter });
  });
});

describe('the order of a joint', () => {
  test.each([
    ['as the maker writes it', 'fasteners: { names: [a, b, c] }\norder: [b, a, c]', 'maker: b a c'],
    [
      'as the maker draws it, a number at each',
      'fasteners: { names: [a, b, c] }\norder: { a: 2, b: 1, c: 3 }',
      'maker: b a c',
    ],
    [
      'the printed row of nine of TM 5-3800-205-23-1',
      'fasteners: { names: [8, 5, 3, 1, 2, 4, 6, 9, 7] }\norder: [1, 2, 3, 4, 5, 6, 7, 8, 9]',
      'maker: 1 2 3 4 5 6 7 8 9',
    ],
    [
      'made for three caps of two, named by their places',
      'fasteners: { thread: 1/2-13 }\npositions: { caps: 3, each_cap: 2 }\norder: centre out',
      'generated: 2L 2R 1L 1R 3L 3R',
    ],
    [
      'made for caps with names of their own',
      'fasteners: {}\npositions: { caps: [[a, b], [c, d], [e, f]] }\norder: centre out',
      'generated: c d a b e f',
    ],
    [
      'made for a row of nine',
      'fasteners: { count: 9 }\npositions: { row: 9 }\norder: centre out',
      'generated: 5 4 6 3 7 2 8 1 9',
    ],
    [
      'made for rows with an empty place',
      'fasteners: {}\npositions: [[a, b, c], [d, ~, e]]\norder: centre out',
      'generated: b d c a e',
    ],
    [
      'made for a circle',
      'fasteners: { count: 4 }\npositions: { circle: 4 }\norder: centre out',
      'generated: 1 3 2 4',
    ],
    ['none: as they are listed', 'fasteners: { count: 3 }', 'listed: 1 2 3'],
  ])('%s', (_, lines, expected) => {
    expect(orderOf(lines)).toBe(expected);
  });
});

describe('where the fasteners stand', () => {
  test('is told by names such as 3L', () => {
    expect(read('fasteners: { names: [1L, 1R, 2L, 2R] }').joint.places?.kind).toBe('caps');
  });

  test('is not guessed from names that say nothing, nor is an order made of it', () => {
    expect(read('fasteners: { names: [a, b] }').joint.places).toBeUndefined();
    expect(problems('fasteners: { names: [1L, 1R] }\norder: centre out')).toEqual([
      '4:8 document/missing-key an order cannot be made without knowing where the fasteners stand | add positions, such as { caps: 5, each_cap: 2 } or [[1L, 2L], [1R, 2R]]',
    ]);
  });
});

describe('passes', () => {
  test('come with their units, windows and percentages worked out', () => {
    const { joint } = read(
      'fasteners: { names: [a, b], groups: { inner: [a] } }\npasses: [{ to: 70 % }, { to: 58 to 69 }, { loosen: fully, reversed: true }, { to: 58 to 69 lbf in, fasteners: [inner] }, { turn: 90 }, { check: 100 N m, at_most: 120 N m }]',
    );
    const told = joint.steps.map((step) =>
      step.kind === 'confirm'
        ? step.text
        : [
            step.action.kind,
            'torque' in step.action && step.action.torque !== undefined
              ? toNumber(step.action.torque.least).toFixed(2)
              : '',
            step.fasteners.join(''),
          ].join(' '),
    );
    expect(told).toEqual([
      'to 4.59 a',
      'to 55.05 b',
      'to 78.64 ab',
      'loosen  ba',
      'to 6.55 a',
      'turn  ab',
      'check 100.00 ab',
    ]);
  });

  test('a turn with the stretch measured after it is both, one after the other', () => {
    const { joint, passPlaces } = read(
      'fasteners: { count: 1 }\npasses: [{ turn: 90 deg, stretch: 0.008 to 0.011 }]',
    );
    expect(joint.sequence.passes.map(({ action }) => action.kind)).toEqual(['turn', 'stretch']);
    expect(passPlaces.map(({ column }) => column)).toEqual([10, 10]);
  });

  test('a torque beside a stretch is one pass with two windows', () => {
    const [pass] = read('fasteners: { count: 1 }\npasses: [{ to: 58 to 69, stretch: 0.019 to 0.024 in }]')
      .joint.sequence.passes;
    expect(pass?.action).toMatchObject({ kind: 'stretch', stretch: { least: { n: 4_826_000n } } });
  });
});

describe('a slip in a sequence is reported where it stands', () => {
  test.each([
    [
      'a name in the order that the joint does not have',
      'fasteners: { names: [1L, 1R, 2L] }\norder: [1L, 1R, 2R]',
      [
        '4:17 document/unknown-position 2R in the order is no fastener of this joint | did you mean 1R?',
        '4:8 document/value 2L is missing from the order',
      ],
    ],
    [
      'a fastener twice in the order',
      'fasteners: { names: [a, b] }\norder: [a, b, a]',
      ['4:15 document/value a is named twice in the order'],
    ],
    [
      'a pass for a fastener that is not there',
      'fasteners: { names: [a, b] }\npasses: [{ to: 40 }, { to: 50, fasteners: [b, centre] }]',
      ['4:47 document/unknown-position centre is no fastener or group of this joint'],
    ],
    [
      'a pass that does two things',
      'fasteners: { count: 2 }\npasses: [{ to: 40, turn: 90 deg }]',
      [
        '4:10 document/value a pass does one thing, and this one does 2: to, turn | write a pass for each; `to` or `turn` may stand beside `stretch`',
      ],
    ],
    [
      'a percentage of nothing',
      'fasteners: { count: 1 }\npasses: [{ to: 70 % }]',
      ['4:10 document/value 1 has no final torque for pass 1 to take a percentage of'],
    ],
    [
      'a window upside down',
      'fasteners: { count: 1 }\npasses: [{ to: 69 to 58 }]',
      ['4:10 document/value the torque has its least above its greatest'],
    ],
    [
      'a stretch without its greatest',
      'fasteners: { count: 1 }\npasses: [{ stretch: { min: 0.01 } }]',
      ['4:21 document/missing-key the window has no greatest | give min and max'],
    ],
    [
      'a torque in inches',
      'fasteners: { count: 1 }\npasses: [{ to: 40 mm }]',
      [
        '4:16 document/wrong-quantity 40 mm is a length, and a torque is wanted here | write it in one of: lbf ft, lbf in, ozf in, N m, kgf m',
      ],
    ],
    [
      'a thread that is none',
      'fasteners: { count: 1, thread: 9/16 x twelve }',
      ['3:32 document/value `9/16 x twelve` is not a thread | write it as M10 x 1.25, M12, 9/16-12 or 10-32'],
    ],
    [
      'no fasteners at all',
      'fasteners: { thread: 1/2-13 }',
      [
        '3:12 document/missing-key the fasteners of the joint are not stated | write `fasteners: { names: [1L, 1R] }`, `fasteners: { count: 10 }`, or `positions:`',
      ],
    ],
    [
      'fewer places than fasteners',
      'fasteners: { count: 8 }\npositions: { caps: 5, each_cap: 2 }\norder: centre out',
      [
        '4:12 document/value these are places for 10 fasteners, and there are 8 | make both the same, or leave the names out',
      ],
    ],
    [
      'an adapter that reaches back past the hand',
      'fasteners: { count: 1 }\nwrench: { length: 10 in }\nadapter: { length: 12 in, angle: 180 deg }',
      ['5:10 document/value the adapter reaches back to the hand or past it'],
    ],
  ])('%s', (_, lines, expected) => {
    expect(problems(lines)).toEqual(expected);
  });

  test('thousands of fasteners from a stranger are refused, not worked through', () => {
    const names = Array.from({ length: 2000 }, (_, index) => `n${index}`).join(', ');
    const [first] = problems(`fasteners: { names: [${names}] }`);
    expect(first).toMatch(/2000 fasteners are more than 200/);
  });
});

describe('a torque document against FAA AC 43.13-1B, table 7-1', () => {
  const pounds = (newtonMetres: { readonly n: bigint; readonly d: bigint }): string =>
    (toNumber(newtonMetres) / toNumber(unitNamed('lbf in').factor)).toFixed(0);

  test.each([...AIRCRAFT_THREADS])(
    '%s: its recommended range is inside it, one pound more is not',
    (size) => {
      const { joint } = read(`fasteners: { count: 1, thread: ${size} }\npasses: [{ to: 1 lbf in }]`);
      const row = joint.thread && aircraftTorqueOf(joint.thread, 'tension');
      if (row === undefined) throw new Error(`no row for ${size}`);
      const { least, greatest } = row.recommended;
      const windowed = read(
        `fasteners: { count: 1, thread: ${size} }\npasses: [{ to: ${pounds(least)} to ${pounds(greatest)} lbf in }]`,
      ).joint.sequence.passes[0]?.action;
      const torque =
        windowed?.kind === 'to' && 'least' in windowed.torque ? windowed.torque : span('0 lbf in');
      expect([
        judgeAircraftTorque(torque.least, row),
        judgeAircraftTorque(torque.greatest, row),
        judgeAircraftTorque(add(torque.greatest, unitNamed('lbf in').factor), row),
      ]).toEqual(['recommended', 'recommended', 'above recommended']);
    },
  );
});

test('whatever pieces a document and a log are put together from, nothing throws: reading, judging, the card', () => {
  const cards: string[] = [];
  /** The first is sound, and comes more often, so that some documents are sound altogether. */
  const one = (sound: string, ...odd: readonly string[]) =>
    fc.oneof({ weight: 6, arbitrary: fc.constant(sound) }, { weight: 4, arbitrary: fc.constantFrom(...odd) });
  const pieces = fc.record({
    fasteners: one(
      '{ names: [a, b], thread: M12, grade: 10.9, length: 3 in }',
      '{ names: [a, b] }',
      '{}',
      '{ count: 3 }',
      '{ names: [a, b, a] }',
      '{ names: [1L, 1R], length: 0 in }',
      '[a]',
      '7',
      '{ names: [], groups: { g: [z] }, thread: M0x0 }',
    ),
    positions: one(
      '',
      '',
      '',
      'positions: []',
      'positions: [[a, ~], b]',
      'positions: { circle: [] }',
      'positions: { caps: 100, each_cap: 6 }',
      'positions: { rows: 2 }',
      'positions: { caps: [[a], [b, c, d]] }',
      'positions: x',
    ),
    order: one(
      '',
      '',
      '',
      '',
      '',
      'order: centre out',
      'order: [a, q]',
      'order: { a: 2, b: 2 }',
      'order: {}',
      'order: 3',
    ),
    passes: one(
      '[{ to: 40 }]',
      '[{ to: 40 }, { turn: 90 deg }, { check: 50 }]',
      '[]',
      '[{}]',
      '[{ to: -5 }]',
      '[{ to: 0 % }]',
      '[{ to: 70 % }, { to: 40 }]',
      '[{ turn: 90 deg, stretch: {} }]',
      '[{ loosen: fully, to: 3 }]',
      '[{ stretch: 2 to 1, to: 1 to 2 }]',
      '[{ check: 40, at_most: 30, fasteners: [g, g] }]',
      'x',
    ),
    tools: one(
      '',
      '',
      '',
      'adapter: { length: -1 in }',
      'adapter: { length: 5 in, angle: 180 }\nwrench: { length: 5 in }',
      'nut_factor: 0',
      'scatter: 900 %',
      'friction: { thread: 0 }',
      'run_on: x',
    ),
    log: one(
      '[]',
      'x',
      '[{ sequence: caps }]',
      '[{ sequence: caps, passes: [{ to: 40, values: { a: ~, b: { zero: 1 in, tight: 2 in } } }] }]',
      '[{ sequence: caps, order: [a, a], passes: [{ turn: 5, left_out: [a] }, {}] }]',
      '[{ sequence: nothing, confirmed: all }]',
    ),
  });
  fc.assert(
    fc.property(pieces, ({ fasteners, positions, order, passes, tools, log }) => {
      const torque = [
        'kind: torque',
        'joint: j',
        `fasteners: ${fasteners}`,
        positions,
        order,
        tools,
        `passes: ${passes}`,
        'source: s',
        '',
      ].join('\n');
      const session = `kind: session\nstage: rebuild\ndate: 2026-03-14\ntightened: ${log}\n`;
      const { engine } = assembled({ 'torque/caps.yaml': torque, 's.yaml': session });
      if (engine === undefined) throw new Error('the engine itself is sound');
      expect(reportEngine(engine, registryWith([]), {}).sessions.length).toBeLessThan(2);
      for (const { joint } of engine.sequences) {
        const carded = tighteningCard(joint, {});
        if ('card' in carded)
          cards.push(writtenLines(torqueCardLines(carded.card, { engine: 'e', path: 'p' }, STYLE)));
      }
    }),
    runs(400, 40),
  );
  expect(cards.length).toBeGreaterThan(3);
  for (const card of cards) expect(card).not.toMatch(/NaN|undefined|Infinity/);
});

const STYLE = { paint: paintWith(0), width: 80, glyphs: PLAIN, detail: false };
