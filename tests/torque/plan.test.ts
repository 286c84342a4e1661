import { describe, expect, test } from 'vitest';
import { add, type Fraction, fraction, toDecimal } from '../../src/quantity/fraction.ts';
import { fromBase, unitNamed } from '../../src/quantity/units.ts';
import { doubtsAbout } from '../../src/torque/fasteners/doubts.ts';
import { type PlanStep, planSequence, planWithRunOn, type ResolvedAction } from '../../src/torque/plan.ts';
import type { AmountRange, Pass, Sequence } from '../../src/torque/sequence.ts';
import { amount, loosen, only, sequence, span, to, toShare, turn } from './amounts.ts';

function stepsOf(of: Sequence): readonly PlanStep[] {
  const plan = planSequence(of);
  if ('problems' in plan) throw new Error(plan.problems.map(({ message }) => message).join('; '));
  return plan.steps;
}

const inUnit = (value: Fraction, unit: string): string =>
  toDecimal(fromBase(value, unitNamed(unit)), 4).replace(/\.?0+$/, '');
const inWords = ({ least, greatest }: AmountRange, unit: string): string => {
  const [from, upTo] = [inUnit(least, unit), inUnit(greatest, unit)];
  return from === upTo ? `${from} ${unit}` : `${from} to ${upTo} ${unit}`;
};

function actionInWords(action: ResolvedAction): string {
  if (action.kind === 'to' || action.kind === 'check')
    return `${action.kind} ${inWords(action.torque, 'lbf ft')}`;
  if (action.kind === 'stretch') {
    const torque = action.torque === undefined ? '' : ` at ${inWords(action.torque, 'lbf ft')}`;
    return `stretch ${inWords(action.stretch, 'in')}${torque}`;
  }
  return action.angle === undefined ? 'loosen' : `${action.kind} ${inWords(action.angle, 'deg')}`;
}

const stepInWords = (step: PlanStep): string =>
  step.kind === 'confirm'
    ? `${step.when}: ${step.text}`
    : `${step.pass}: ${actionInWords(step.action)}: ${step.fasteners.join(' ')}`;

const planInWords = (passes: readonly Pass[], more: Partial<Sequence> = {}): readonly string[] =>
  stepsOf(sequence(passes, more)).map(stepInWords);

describe('procedures of published manuals become plans without a doubt', () => {
  test.each([
    [
      'TM 10-3930-669-20, table E-1: a head to 29.5 lbf ft, then 45 + 45 + 45 + 30 degrees',
      [to('29.5 lbf ft'), turn('45 deg'), turn('45 deg'), turn('45 deg'), turn('30 deg')],
      ['1: to 29.5 lbf ft', '2: turn 45 deg', '3: turn 45 deg', '4: turn 45 deg', '5: turn 30 deg'],
    ],
    [
      'TM 5-2815-241-34&P: rod nuts up in two, loosened to nothing, up in three',
      [
        to('70 to 75 lbf ft'),
        to('140 to 150 lbf ft'),
        loosen,
        to('25 to 30 lbf ft'),
        to('70 to 75 lbf ft'),
        to('140 to 150 lbf ft'),
      ],
      [
        '1: to 70 to 75 lbf ft',
        '2: to 140 to 150 lbf ft',
        '3: loosen',
        '4: to 25 to 30 lbf ft',
        '5: to 70 to 75 lbf ft',
        '6: to 140 to 150 lbf ft',
      ],
    ],
    [
      'TM 5-3800-205-23-1: above 30 lbf ft first to 70 % of the final torque',
      [toShare(70), to('110 lbf ft')],
      ['1: to 77 lbf ft', '2: to 110 lbf ft'],
    ],
    [
      'TM 5-3805-260-24: rod nuts to 30 +/- 3 lbf ft, then 60 +/- 5 degrees',
      [to('27 to 33 lbf ft'), turn('55 to 65 deg')],
      ['1: to 27 to 33 lbf ft', '2: turn 55 to 65 deg'],
    ],
    [
      'TM 9-2815-220-24 WP 0139: 58 to 69 lbf ft together with .019 to .024 in',
      [{ action: { kind: 'stretch', stretch: span('.019 to .024 in'), torque: span('58 to 69 lbf ft') } }],
      ['1: stretch 0.019 to 0.024 in at 58 to 69 lbf ft'],
    ],
    [
      'TM 55-1905-223-24-1: a rod bolt stretched .0135 to .0185 in',
      [{ action: { kind: 'stretch', stretch: span('.0135 to .0185 in') } }],
      ['1: stretch 0.0135 to 0.0185 in'],
    ],
    [
      'Ford service data of 2007, a 6.8 litre crank pulley: 90 N m, loosened a turn, 50 N m, then 90 degrees',
      [to('90 N m'), { action: { kind: 'loosen', angle: span('360 deg') } }, to('50 N m'), turn('90 deg')],
      ['1: to 66.3806 lbf ft', '2: loosen 360 deg', '3: to 36.8781 lbf ft', '4: turn 90 deg'],
    ],
  ] as const)('%s', (_, passes, words) => {
    const steps = stepsOf(sequence(passes));
    expect(steps.map(stepInWords)).toEqual(words.map((each) => `${each}: b c a d`));
    expect(doubtsAbout(steps)).toEqual([]);
  });

  test('Chrysler service data of 2000, a 3.2 litre head: 45, 65, 65 lbf ft, a quarter turn, then it must hold 90 lbf ft', () => {
    const check: Pass = { action: { kind: 'check', torque: span('90 lbf ft') } };
    const passes = [to('45 lbf ft'), to('65 lbf ft'), to('65 lbf ft'), turn('90 deg'), check];
    expect(planInWords(passes).at(-1)).toBe('5: check 90 lbf ft: b c a d');
    expect(doubtsAbout(stepsOf(sequence(passes)))).toEqual([]);
  });
});

describe('groups of fasteners', () => {
  const groups = new Map([
    ['inner', ['a', 'b']],
    ['outer', ['c', 'd']],
  ]);

  test('each pass takes its own, in the order of the whole joint', () => {
    const passes = [
      only(to('20 lbf ft'), 'inner'),
      only(to('10 lbf ft'), 'outer'),
      only(turn('90 deg'), 'inner', 'd'),
    ];
    expect(planInWords(passes, { groups })).toEqual([
      '1: to 20 lbf ft: b a',
      '2: to 10 lbf ft: c d',
      '3: turn 90 deg: b a d',
    ]);
  });

  test('a percentage of different final torques is a step for each torque, with one pass number', () => {
    const passes = [toShare(50), only(to('20 lbf ft'), 'inner'), only(to('10 lbf ft'), 'outer')];
    expect(planInWords(passes, { groups }).slice(0, 2)).toEqual([
      '1: to 10 lbf ft: b a',
      '1: to 5 lbf ft: c d',
    ]);
  });

  test('a final torque that is stated wins over the last pass', () => {
    expect(planInWords([toShare(50), to('20 lbf ft')], { final: span('60 to 70 lbf ft') })[0]).toBe(
      '1: to 30 to 35 lbf ft: b c a d',
    );
  });
});

test('a reversed pass goes against the order', () => {
  expect(planInWords([to('20 lbf ft'), { ...loosen, reversed: true }])[1]).toBe('2: loosen: d a c b');
});

test('what must be confirmed stands before the first pass and after the last', () => {
  const more = { before: ['threads clean', 'caps facing forward'], after: ['crankshaft turns freely'] };
  expect(planInWords([to('20 lbf ft')], more)).toEqual([
    'before: threads clean',
    'before: caps facing forward',
    '1: to 20 lbf ft: b c a d',
    'after: crankshaft turns freely',
  ]);
});

test('a third of 100 N m is exactly that, and keeps its percentage beside it', () => {
  const [step] = stepsOf(
    sequence([{ action: { kind: 'to', torque: { percent: fraction(100, 3) } } }, to('100 N m')]),
  );
  expect(step).toMatchObject({ action: { percent: { n: 100n, d: 3n } } });
  expect(
    step?.kind === 'tighten' && step.action.kind === 'to' && toDecimal(step.action.torque.least, 9),
  ).toBe('33.333333333');
});

test('run-on torque comes on top of every torque, never of a turn or a stretch', () => {
  const passes: Pass[] = [
    toShare(50),
    to('60 lbf in'),
    turn('60 deg'),
    { action: { kind: 'stretch', stretch: span('1 to 2 in'), torque: span('60 to 72 lbf in') } },
    { action: { kind: 'check', torque: span('72 lbf in'), atMost: amount('84 lbf in') } },
  ];
  const steps = planWithRunOn(stepsOf(sequence(passes, { before: ['clean'] })), amount('12 lbf in'));
  expect(steps.map(stepInWords)).toEqual([
    'before: clean',
    '1: to 3.5 lbf ft: b c a d',
    '2: to 6 lbf ft: b c a d',
    '3: turn 60 deg: b c a d',
    '4: stretch 1 to 2 in at 6 to 7 lbf ft: b c a d',
    '5: check 7 lbf ft: b c a d',
  ]);
  const last = steps.at(-1);
  const atMost = last?.kind === 'tighten' && last.action.kind === 'check' ? last.action.atMost : undefined;
  expect(atMost === undefined ? '' : inUnit(atMost, 'lbf in')).toBe('96');
});

test('a step says what its pass says, and no more', () => {
  const [noted, plain] = stepsOf(
    sequence([{ ...only(to('20 N m'), 'd', 'a'), note: 'by hand' }, only(turn('30 deg'), 'c')]),
  );
  expect(noted).toStrictEqual({
    kind: 'tighten',
    pass: 1,
    action: { kind: 'to', torque: span('20 N m') },
    fasteners: ['a', 'd'],
    note: 'by hand',
  });
  expect(plain).toStrictEqual({
    kind: 'tighten',
    pass: 2,
    action: { kind: 'turn', angle: span('30 deg') },
    fasteners: ['c'],
  });
});

test('finals that differ at one end only are steps of their own, and equal ones are one step', () => {
  const finals = [
    only(to('10 to 20 N m'), 'a'),
    only(to('10 to 30 N m'), 'b'),
    only(to('5 to 20 N m'), 'c'),
    only(to('10 to 20 N m'), 'd'),
  ];
  const inNewtonMetres = stepsOf(sequence([toShare(50), ...finals])).flatMap((step) =>
    step.kind === 'tighten' && step.action.kind === 'to' && step.pass === 1
      ? [`${inWords(step.action.torque, 'N m')}: ${step.fasteners.join(' ')}`]
      : [],
  );
  expect(inNewtonMetres).toEqual(['5 to 15 N m: b', '2.5 to 10 N m: c', '5 to 10 N m: a d']);
});

test('a check is no final torque, and neither is a share', () => {
  const check: Pass = { action: { kind: 'check', torque: span('90 N m') } };
  const passes = [to('20 N m'), toShare(50), check];
  expect(planInWords(passes)[1]).toBe(`2: to ${inUnit(amount('10 N m'), 'lbf ft')} lbf ft: b c a d`);
});

test('a check of a share takes its percentage, and keeps the most it may be', () => {
  const atMost = amount('20 N m');
  const [, step] = stepsOf(
    sequence([to('20 N m'), { action: { kind: 'check', torque: { percent: fraction(50) }, atMost } }]),
  );
  expect(step).toMatchObject({ action: { kind: 'check', percent: fraction(50), atMost } });
  expect(step?.kind === 'tighten' && step.action.kind === 'check' && inWords(step.action.torque, 'N m')).toBe(
    '10 N m',
  );
});

test('run-on torque changes nothing of a pass but its torque', () => {
  const runOn = amount('12 lbf in');
  const passes: Pass[] = [
    { action: { kind: 'stretch', stretch: span('1 in') } },
    { ...loosen, note: 'slowly' },
    { action: { kind: 'check', torque: span('72 lbf in') } },
  ];
  const steps = stepsOf(sequence(passes));
  const [stretch, loosened, checked] = planWithRunOn(steps, runOn);
  expect([stretch, loosened]).toStrictEqual(steps.slice(0, 2));
  expect(checked).toStrictEqual({
    ...steps[2],
    action: { kind: 'check', torque: planRaised('72 lbf in', '12 lbf in') },
  });
});

const planRaised = (torque: string, by: string): AmountRange => {
  const each = add(amount(torque), amount(by));
  return { least: each, greatest: each };
};
