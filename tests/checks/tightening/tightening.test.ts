import { describe, expect, test } from 'vitest';
import { registryWith } from '../../../src/characteristics/registry.ts';
import { reportEngine } from '../../../src/checks/judge/report.ts';
import { assembled, engineOf, type Files } from '../../documents/engineOf.ts';

const REGISTER = `kind: instruments
instruments:
  beam-150: { type: torque wrench, range: { from: 0 lbf ft, to: 150 lbf ft }, max_error: 4 %, due: 2026-12-01 }
  beam-300: { type: torque wrench, range: { from: 0 lbf ft, to: 300 lbf ft }, max_error: 4 %, due: 2026-01-01 }
  small: { type: torque wrench, range: { from: 0 lbf ft, to: 60 lbf ft }, max_error: 1 lbf ft }
  mic-3-4: { type: micrometer, max_error: 0.0001 in }
`;
const CAPS = `kind: torque
joint: main caps
fasteners: { names: [1L, 1R, 2L, 2R], thread: 9/16-12, grade: 8, reuse: true }
order: [1L, 1R, 2R, 2L]
lubricant: engine oil on threads and under heads
passes: [{ to: 40 }, { to: 80 }, { to: 110 }]
before: [threads clean]
after: [crankshaft turns freely]
source: Invented.
`;
const RODS = `kind: torque
joint: rod bolts
fasteners: { names: [1A, 1B, 2A, 2B], reuse: false }
passes: [{ to: 30 }, { to: 58 to 69, stretch: 0.019 to 0.024 }]
source: TM 9-2815-220-24, WP 0139.
`;
const HEAD = `kind: torque
joint: cylinder head
fasteners: { count: 4 }
passes: [{ to: 31 }, { turn: 45 deg }, { turn: 40 to 50 deg }, { loosen: 360 deg }, { to: 50 }, { check: 45, at_most: 60 }]
source: Invented.
`;

const session = (log: string, date = '2026-03-14', stage = 'trial'): string =>
  `kind: session\nstage: ${stage}\ndate: ${date}\ntightened:\n${log}\n`;

const files = (torque: string, log: string): Files => ({
  'instruments.yaml': REGISTER,
  'torque/joint.yaml': torque,
  'sessions/s.yaml': session(`  - { sequence: joint, confirmed: all, with: beam-150, ${log} }`),
});

/** The findings of all sessions as `code message`. */
const found = (of: Files): readonly string[] =>
  reportEngine(engineOf(of), registryWith([]), {}).sessions.flatMap(({ findings }) =>
    findings.filter(({ severity }) => severity !== 'remark').map(({ code, message }) => `${code} ${message}`),
  );

describe('a log that follows its sequence raises nothing', () => {
  test.each([
    ['as it is written', CAPS, 'passes: [{ to: 40 }, { to: 80 }, { to: 110 }]'],
    ['in the other unit', CAPS, 'passes: [{ to: 54.2 N m }, { to: 108 N m }, { to: 149 N m }]'],
    [
      'exactly on the edge of what the wrench can tell: 115 lbf ft less 4 % is not above 110.4, 110 is inside',
      CAPS,
      'passes: [{ to: 40 }, { to: 80 }, { to: 110, values: { 1L: 110, 1R: 114.5, 2L: 105.8, 2R: 110 } }]',
    ],
    [
      'a pass made in two parts',
      CAPS,
      'passes: [{ to: 40, fasteners: [1L, 1R] }, { to: 40, fasteners: [2L, 2R] }, { to: 80 }, { to: 110 }]',
    ],
    ['with its order', CAPS, 'order: [1L, 1R, 2R, 2L], passes: [{ to: 40 }, { to: 80 }, { to: 110 }]'],
    ['oil by a shorter name', CAPS, 'lubricant: Engine oil, passes: [{ to: 40 }, { to: 80 }, { to: 110 }]'],
    [
      'stretches inside the window, its ends included, read as two lengths or as one',
      RODS,
      'passes: [{ to: 30 }, { to: 60, stretch: 0.019 to 0.024, values: { 1A: 0.019, 1B: 0.0240, 2A: { zero: 5.0012, tight: 5.0222 }, 2B: 0.6096 mm } }]',
    ],
    [
      'turns within five degrees, a window kept, a check between its ends',
      HEAD,
      'passes: [{ to: 31 }, { turn: 45 deg, values: { 1: 40, 2: 50, 3: 45, 4: 45 } }, { turn: 44 deg }, { loosen: 360 deg }, { to: 50 }, { check: 45, values: { 1: 45, 2: 60, 3: 50, 4: 50 } }]',
    ],
  ])('%s', (_, torque, log) => {
    expect(found(files(torque, log))).toEqual([]);
  });
});

describe('torques, angles and stretches that are not those of their pass', () => {
  test.each([
    [
      'beyond the error of the wrench, low and high',
      CAPS,
      'passes: [{ to: 40 }, { to: 80 }, { to: 110, values: { 1L: 110, 1R: 114.6, 2L: 105.7, 2R: 110 } }]',
      [
        'torque/out main caps, pass 3: 1R at 114.6 lbf ft, 2L at 105.7 lbf ft, specified 110 lbf ft; beam-150: tolerance ±4.228 to 4.584 lbf ft',
      ],
    ],
    [
      'a whole pass at a wrong figure is that pass, not another',
      CAPS,
      'passes: [{ to: 40 }, { to: 70 }, { to: 110 }]',
      [
        'torque/out main caps, pass 2: all at 70 lbf ft, specified 80 lbf ft; beam-150: tolerance ±2.8 lbf ft',
      ],
    ],
    [
      'a pass that the sequence does not have, beyond its greatest torque',
      CAPS,
      'passes: [{ to: 40 }, { to: 80 }, { to: 110 }, { to: 130 }]',
      [
        'torque/out main caps: a pass to 130 lbf ft goes beyond 110 lbf ft, the most of the sequence',
        'torque/order main caps: the sequence has no such pass: a pass to 130 lbf ft',
      ],
    ],
    [
      'a bolt that is too long before its torque (TM 9-2815-220-24: replace it)',
      RODS,
      'passes: [{ to: 30 }, { to: 58 to 69, stretch: 0.019 to 0.024, values: { 1A: 0.020, 1B: 0.0241, 2A: 0.020, 2B: 0.020 }, torques: { 1B: 57 } }]',
      [
        'torque/stretch rod bolts, pass 2: 1B stretched by 0.0241 in at 57 lbf ft, specified 0.019 to 0.024 in: too much for this torque, replace it',
      ],
    ],
    [
      'a bolt that has spent its torque before the least stretch',
      RODS,
      'passes: [{ to: 30 }, { to: 58 to 69, stretch: 0.019 to 0.024, values: { 1A: 0.020, 1B: 0.0189, 2A: 0.020, 2B: 0.020 }, torques: { 1B: 69 } }]',
      [
        'torque/stretch rod bolts, pass 2: 1B stretched by 0.0189 in at 69 lbf ft, specified 0.019 to 0.024 in: too little for this torque, replace it',
      ],
    ],
    [
      'a turn outside five degrees, and outside a written window',
      HEAD,
      'passes: [{ to: 31 }, { turn: 39 deg }, { turn: 51 deg }, { loosen: 360 deg }, { to: 50 }, { check: 45 }]',
      [
        'torque/out cylinder head, pass 2: all at 39 deg, specified 45 deg within 5 deg',
        'torque/out cylinder head, pass 3: all at 51 deg, specified 40 to 50 deg',
      ],
    ],
    [
      'a fastener that turned before the check torque',
      HEAD,
      'passes: [{ to: 31 }, { turn: 45 deg }, { turn: 45 deg }, { loosen: 360 deg }, { to: 50 }, { check: 45, values: { 1: 45, 2: 45, 3: 40, 4: 45 } }]',
      [
        'torque/out cylinder head, pass 6: 3 at 40 lbf ft, specified 45 to 60 lbf ft; beam-150: tolerance ±1.6 lbf ft',
      ],
    ],
  ])('%s', (_, torque, log, expected) => {
    expect(found(files(torque, log))).toEqual(expected);
  });

  test('a percentage asks each fastener for a share of its own final torque', () => {
    const apart = CAPS.replace(
      /^passes.*$/m,
      'passes: [{ to: 50 % }, { to: 60, fasteners: [1L, 1R] }, { to: 100, fasteners: [2R, 2L] }]',
    );
    const log =
      'passes: [{ to: 50 %, values: { 1L: 40, 1R: 30, 2R: 50, 2L: 40 } }, { to: 60, fasteners: [1L, 1R] }, { to: 100, fasteners: [2R, 2L] }]';
    expect(found(files(apart, log))).toEqual([
      'torque/out main caps, pass 1: 1L at 40 lbf ft, specified 30 lbf ft; beam-150: tolerance ±1.6 lbf ft',
      'torque/out main caps, pass 1: 2L at 40 lbf ft, specified 50 lbf ft; beam-150: tolerance ±1.6 lbf ft',
    ]);
  });

  test('what the wrench showed with an adapter is not what the fastener got', () => {
    const adapted = `${CAPS.replace('{ to: 80 }, ', '')}wrench: { length: 18 in }\nadapter: { length: 6 in }\n`;
    expect(found(files(adapted, 'passes: [{ to: 40 }, { to: 82.5 }]'))).toEqual([
      'torque/out main caps, pass 2: all at 82.5 lbf ft, specified 110 lbf ft; beam-150: tolerance ±3.3 lbf ft (that is the setting with the adapter: the log is of the torque at the fastener)',
    ]);
  });

  test('run-on torque may be in the figure or not', () => {
    const dragging = `${CAPS}run_on: 10\n`;
    expect(found(files(dragging, 'passes: [{ to: 50 }, { to: 90 }, { to: 110 }]'))).toEqual([]);
  });
});

describe('what was left out, and in which order it was done', () => {
  test.each([
    [
      'a pass',
      'passes: [{ to: 40 }, { to: 110 }]',
      ['torque/skipped main caps: pass 2, to 80 lbf ft, was not made'],
    ],
    [
      'fasteners named as left out',
      'passes: [{ to: 40, left_out: [2L] }, { to: 80 }, { to: 110 }]',
      ['torque/skipped main caps, pass 1: 2L was not reached'],
    ],
    [
      'fasteners without a value',
      'passes: [{ to: 40 }, { to: 80 }, { to: 110, values: { 1L: 110, 1R: 110, 2L: ~ } }]',
      ['torque/skipped main caps, pass 3: 2R, 2L were not reached'],
    ],
    [
      'fasteners of a pass that names only some',
      'passes: [{ to: 40, fasteners: [1L, 1R] }, { to: 80 }, { to: 110 }]',
      ['torque/skipped main caps, pass 1: 2R, 2L were not reached'],
    ],
    [
      'passes in another turn',
      'passes: [{ to: 40 }, { to: 110 }, { to: 80 }]',
      ['torque/order main caps: pass 3, to 110 lbf ft, was done out of sequence'],
    ],
    [
      'fasteners in another order',
      'order: [1L, 1R, 2L, 2R], passes: [{ to: 40 }, { to: 80 }, { to: 110 }]',
      ['torque/order main caps: 2L was tightened as number 3, where the order has 2R'],
    ],
    [
      'an order that ends early',
      'order: [1L, 1R], passes: [{ to: 40 }, { to: 80 }, { to: 110 }]',
      ['torque/order main caps: the order in the log ends before 2R'],
    ],
  ])('%s', (_, log, expected) => {
    expect(found(files(CAPS, log))).toEqual(expected);
  });
});

describe('a pass that was made once more than it is asked for', () => {
  const remarks = (of: Files): readonly string[] =>
    reportEngine(engineOf(of), registryWith([]), {}).sessions.flatMap(({ findings }) =>
      findings.flatMap(({ code, message, severity }) =>
        code === 'torque/order' ? [`${severity} ${message}`] : [],
      ),
    );
  test.each([
    [
      'is told, of a torque as a remark',
      CAPS,
      'passes: [{ to: 40 }, { to: 80 }, { to: 110 }, { to: 110 }]',
      ['remark main caps: pass 3, to 110 lbf ft, was made again'],
    ],
    [
      'also in its turn, and each time',
      CAPS,
      'passes: [{ to: 40 }, { to: 40 }, { to: 40 }, { to: 80 }, { to: 110 }]',
      [
        'remark main caps: pass 1, to 40 lbf ft, was made again',
        'remark main caps: pass 1, to 40 lbf ft, was made again',
      ],
    ],
    [
      'with the fasteners, where it was not all of them',
      CAPS,
      'passes: [{ to: 40 }, { to: 80 }, { to: 110, fasteners: [1L, 1R, 2L] }, { to: 110, fasteners: [2R, 2L] }]',
      ['remark main caps: pass 3, to 110 lbf ft, was made again on 2L'],
    ],
    [
      'gives no finding where it is for those that were left out',
      CAPS,
      'passes: [{ to: 40, left_out: [2L] }, { to: 40, fasteners: [2L] }, { to: 80 }, { to: 110, values: { 1L: 110, 1R: 110, 2R: 110, 2L: ~ } }, { to: 110, values: { 2L: 110 } }]',
      [],
    ],
    [
      'is a warning of a turn, which adds to the one before',
      HEAD,
      'passes: [{ to: 31 }, { turn: 45 deg }, { turn: 45 deg }, { turn: 45 deg, fasteners: [3] }, { loosen: 360 deg }, { to: 50 }, { check: 45 }]',
      [
        'warning cylinder head: pass 3, a turn of 40 to 50 deg, was made again on 3: a turn adds to the one before it',
      ],
    ],
    [
      'is out of its turn where later passes were made in between',
      CAPS,
      'passes: [{ to: 40 }, { to: 80 }, { to: 40 }, { to: 110 }]',
      ['warning main caps: pass 1, to 40 lbf ft, was done out of sequence'],
    ],
  ])('%s', (_, torque, log, expected) => {
    expect(remarks(files(torque, log))).toEqual(expected);
  });
});

const MADE = 'passes: [{ to: 40 }, { to: 80 }, { to: 110 }]';

describe('wrench, lubricant and steps', () => {
  const log = (text: string): Files => ({
    'instruments.yaml': REGISTER,
    'torque/joint.yaml': CAPS,
    'sessions/s.yaml': session(`  - { sequence: joint, ${text}, ${MADE} }`),
  });

  test.each([
    [
      'a wrench below a fifth of its range, and overdue',
      'with: beam-300, confirmed: all',
      [
        'instrument/overdue beam-300 was due for calibration on 2026-01-01, and was used on 2026-03-14',
        'torque/wrench main caps: beam-300 was used at 40 lbf ft, 13.3 % of its range; use it from 60 lbf ft on',
      ],
    ],
    [
      'a wrench beyond its range',
      'with: small, confirmed: all',
      ['torque/wrench main caps: small was used at 110 lbf ft, beyond its range up to 60 lbf ft'],
    ],
    [
      'a wrench that nobody knows',
      'with: beam-15, confirmed: all',
      ['torque/wrench main caps: beam-15 is not in the register of instruments: did you mean beam-150?'],
    ],
    [
      'a micrometer',
      'with: mic-3-4, confirmed: all',
      ['torque/wrench main caps: mic-3-4 is a micrometer, not a torque wrench'],
    ],
    [
      'paste in place of oil',
      'with: beam-150, confirmed: all, lubricant: moly paste',
      [
        'torque/lubricant main caps: moly paste was used, and engine oil on threads and under heads is stated: at the same torque about 1.5 times the clamp load (an estimate)',
      ],
    ],
    [
      'a lubricant that cannot be placed',
      'with: beam-150, confirmed: all, lubricant: what was in the can',
      [
        'torque/lubricant main caps: what was in the can was used, and engine oil on threads and under heads is stated',
      ],
    ],
    [
      'a step that was not confirmed',
      'with: beam-150, confirmed: [Threads clean.]',
      ['torque/unconfirmed main caps: not confirmed: crankshaft turns freely'],
    ],
  ])('%s', (_, text, expected) => {
    expect(found(log(text))).toEqual(expected);
  });

  test('a log without passes is asked for them', () => {
    expect(
      found({
        ...log('confirmed: all'),
        'sessions/s.yaml': session('  - { sequence: joint, confirmed: all }'),
      }),
    ).toEqual(['torque/unconfirmed main caps: no pass was written down']);
  });
});

describe('a sequence that cannot be right is reported where it was followed', () => {
  test('a torque beyond proof at the stated lubrication', () => {
    const strong = CAPS.replace('{ to: 110 }', '{ to: 200 }');
    expect(
      found(files(strong, 'passes: [{ to: 40 }, { to: 80 }, { to: 145 }, { to: 200 }]')).filter((each) =>
        each.startsWith('torque/over'),
      ),
    ).toEqual([
      'torque/over-proof main caps, pass 3: 109 % of the proof load of 9/16-12 UNC, SAE J429 grade 8, at K 0.18 (oiled)',
    ]);
  });

  test('nothing of proof where the lubricant is not known, however high the torque', () => {
    const unknown = CAPS.replace('{ to: 110 }', '{ to: 220 }').replace(/^lubricant.*\n/m, '');
    const log = 'passes: [{ to: 40 }, { to: 80 }, { to: 145 }, { to: 220 }]';
    expect(found(files(unknown, log)).filter((each) => each.startsWith('torque/over'))).toEqual([]);
  });

  test('a torque that is right for oil and beyond proof with paste', () => {
    const high = CAPS.replace('{ to: 110 }', '{ to: 130 }');
    const log = 'lubricant: moly paste, passes: [{ to: 40 }, { to: 80 }, { to: 130 }]';
    expect(found(files(high, log)).map((each) => each.split(' ')[0])).toEqual([
      'torque/over-proof',
      'torque/lubricant',
    ]);
  });

  test('a turn before any torque, and a stretch that no friction brings to its torque', () => {
    const turned = HEAD.replace('{ to: 31 }, { turn: 45 deg }', '{ turn: 45 deg }, { to: 31 }');
    const log =
      'passes: [{ turn: 45 deg }, { to: 31 }, { turn: 45 deg }, { loosen: 360 deg }, { to: 50 }, { check: 50 }]';
    expect(found(files(turned, log))).toEqual([
      'torque/contradiction cylinder head, pass 1: 1 is turned by an angle before any torque has closed the joint',
    ]);
    const apart = RODS.replace('reuse: false', 'reuse: true, thread: 7/16-20, length: 1 in');
    const [first] = found(files(apart, 'passes: [{ to: 30 }, { to: 60, stretch: 0.020 }]'));
    expect(first).toMatch(
      /^torque\/contradiction rod bolts, pass 2: torque and stretch contradict each other/,
    );
  });
});

describe('across sessions', () => {
  const rods = (fasteners: string): string =>
    `  - { sequence: rods, with: beam-150, ${fasteners}passes: [{ to: 30 }, { to: 60, stretch: 0.020 }] }`;
  const shop = { 'instruments.yaml': REGISTER, 'torque/rods.yaml': RODS };

  test('fasteners for one use need new ones each time', () => {
    const twice = (second: string): Files => ({
      ...shop,
      'sessions/a.yaml': session(rods('fasteners: new, '), '2026-03-01'),
      'sessions/b.yaml': session(rods(second), '2026-03-14'),
    });
    expect(found(twice('fasteners: new, '))).toEqual([]);
    expect(found(twice(''))).toEqual([
      'torque/reused rod bolts: fasteners that must not be used twice were tightened in a already, and the log does not say that these were new',
    ]);
    expect(found(twice('fasteners: reused, '))).toEqual([
      'torque/reused rod bolts: fasteners that must not be used twice were used again',
    ]);
  });

  describe('fasteners turned or stretched a second time, of which nothing says whether they may be', () => {
    const stretched = RODS.replace(', reuse: false', '');
    const turned = stretched
      .replace('58 to 69, stretch: 0.019 to 0.024', '58')
      .replace(' }]', ' }, { turn: 60 deg }]');
    const again = (torque: string, passes: string, first: string, second: string): readonly string[] => {
      const log = (fasteners: string): string =>
        `  - { sequence: rods, with: beam-150, ${fasteners}passes: ${passes} }`;
      return found({
        'instruments.yaml': REGISTER,
        'torque/rods.yaml': torque,
        'sessions/a.yaml': session(log(first), '2026-03-01'),
        'sessions/b.yaml': session(log(second), '2026-03-14'),
      });
    };
    const ANGLE = '[{ to: 30 }, { to: 58 }, { turn: 60 deg }]';
    const STRETCH = '[{ to: 30 }, { to: 60, stretch: 0.020 }]';
    const warned = (by: string, how: string): readonly string[] => [
      `torque/reuse-unstated rod bolts: fasteners tightened by ${by} were ${how}; the sequence does not say whether they may be used twice`,
    ];
    const BEFORE = 'tightened in a already, and the log does not say that these were new';
    test.each([
      ['turned, and tightened before', turned, ANGLE, '', '', warned('an angle', BEFORE)],
      ['stretched, and tightened before', stretched, STRETCH, '', '', warned('a stretch', BEFORE)],
      [
        'turned, and said to be used again',
        turned,
        ANGLE,
        '',
        'fasteners: reused, ',
        warned('an angle', 'used again'),
      ],
      ['new the second time', turned, ANGLE, '', 'fasteners: new, ', []],
      ['its maker allows it', turned.replace('2B]', '2B], reuse: true'), ANGLE, '', '', []],
      [
        'by torque alone',
        turned.replace(', { turn: 60 deg }', ''),
        ANGLE.replace(', { turn: 60 deg }', ''),
        '',
        '',
        [],
      ],
    ])('%s', (_, torque, passes, first, second, findings) => {
      expect(again(torque, passes, first, second)).toEqual(findings);
    });
  });

  test('a rebuild wants every joint logged, in whichever of its sessions', () => {
    const rebuilt = (stage: string): Files => ({
      ...shop,
      'sessions/a.yaml': session(rods('fasteners: new, '), '2026-03-01', stage),
      'sessions/b.yaml': 'kind: session\nstage: rebuild\ndate: 2026-03-14\n',
    });
    expect(found(rebuilt('rebuild'))).toEqual([]);
    const missing = ['torque/missing rod bolts: nobody has logged that this joint was tightened (rods)'];
    expect(found(rebuilt('trial'))).toEqual(missing);
    const before = {
      ...rebuilt('rebuild'),
      'sessions/t.yaml': 'kind: session\nstage: teardown\ndate: 2026-03-05\n',
    };
    expect(found(before)).toEqual(missing);
  });
});

describe('a log that speaks of what is not there is a wrong document', () => {
  test.each([
    [
      'another sequence',
      '  - { sequence: rod, passes: [{ to: 30 }] }',
      '5:17 document/value the engine has no torque document rod',
    ],
    [
      'another fastener',
      '  - { sequence: rods, passes: [{ to: 30, values: { 1C: 30 } }] }',
      '5:52 document/unknown-position rods has no fastener 1C',
    ],
    [
      'a day that is none',
      '  - { sequence: rods, date: 2026-02-30 }',
      '5:29 document/value 2026-02-30 is not in the calendar',
    ],
  ])('%s', (_, log, expected) => {
    const { diagnostics } = assembled({ 'torque/rods.yaml': RODS, 's.yaml': session(log) });
    expect(
      diagnostics.map(({ place, code, message }) => `${place.line}:${place.column} ${code} ${message}`),
    ).toEqual([expected]);
  });

  test('a sequence that is broken itself is not said to be missing', () => {
    const { diagnostics } = assembled({
      'torque/rods.yaml': RODS.replace('{ to: 30 }', '{ to: 30 mm }'),
      's.yaml': session('  - { sequence: rods, passes: [{ to: 30 }] }'),
    });
    expect(diagnostics.map(({ place }) => place.path)).toEqual(['torque/rods.yaml']);
  });
});
