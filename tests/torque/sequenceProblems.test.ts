import { describe, expect, test } from 'vitest';
import { fraction } from '../../src/quantity/fraction.ts';
import { planSequence } from '../../src/torque/plan.ts';
import type { Pass } from '../../src/torque/sequence.ts';
import { sequenceProblems } from '../../src/torque/sequenceProblems.ts';
import { amount, loosen, only, sequence, span, to, toShare, turn } from './amounts.ts';

const check = (torque: string, atMost?: string): Pass => ({
  action: {
    kind: 'check',
    torque: span(torque),
    ...(atMost === undefined ? {} : { atMost: amount(atMost) }),
  },
});

const checkShare = (percent: number, atMost?: string): Pass => ({
  action: {
    kind: 'check',
    torque: { percent: fraction(percent) },
    ...(atMost === undefined ? {} : { atMost: amount(atMost) }),
  },
});

const FINE = sequence([to('20 lbf ft')]);

test('a sound sequence has no problems', () => {
  expect(sequenceProblems(FINE)).toEqual([]);
});

describe('a sequence that cannot be carried out says why', () => {
  test.each([
    [
      'a name twice',
      { ...FINE, fasteners: ['a', 'b', 'c', 'd', 'a'] },
      'a is named twice among the fasteners',
    ],
    ['order twice', { ...FINE, order: ['a', 'b', 'c', 'd', 'b'] }, 'b is named twice in the order'],
    ['order short', { ...FINE, order: ['a', 'b', 'c'] }, 'd is missing from the order'],
    [
      'stranger',
      { ...FINE, order: ['a', 'b', 'c', 'd', 'e'] },
      'e in the order is no fastener of this joint',
    ],
    [
      'group of strangers',
      { ...FINE, groups: new Map([['inner', ['a', 'x']]]) },
      'x of group inner is no fastener of this joint',
    ],
    [
      'group named as a fastener',
      { ...FINE, groups: new Map([['a', ['b']]]) },
      'a is both a fastener and a group',
    ],
    ['final of nothing', { ...FINE, final: span('0 N m') }, 'the final torque must be more than nothing'],
  ])('%s', (_, bad, message) => {
    expect(sequenceProblems(bad).map((each) => each.message)).toEqual([message]);
    expect(planSequence(bad)).toHaveProperty('problems');
  });

  test.each([
    ['unknown name', [only(to('20 N m'), 'a', 'outer')], 'outer is no fastener or group of this joint'],
    ['no torque', [to('0 N m')], 'the torque must be more than nothing'],
    ['window upside down', [to('69 to 58 lbf ft')], 'the torque has its least above its greatest'],
    ['no angle', [turn('0 deg')], 'the angle must be more than nothing'],
    [
      'loosened by nothing',
      [{ action: { kind: 'loosen', angle: span('0 deg') } }],
      'the angle must be more than nothing',
    ],
    [
      'stretch upside down',
      [{ action: { kind: 'stretch', stretch: span('.024 to .019 in') } }],
      'the stretch has its least above its greatest',
    ],
    ['no percent', [toShare(0), to('20 N m')], 'a percentage of the final torque lies above 0 and up to 100'],
    [
      '101 percent',
      [toShare(101), to('20 N m')],
      'a percentage of the final torque lies above 0 and up to 100',
    ],
    [
      'check upside down',
      [{ action: { kind: 'check', torque: span('90 N m'), atMost: amount('80 N m') } }],
      'the check torque is above the most it may be',
    ],
    ['tightens nothing', [only(to('20 N m'))], 'this pass tightens nothing'],
  ] as const)('%s', (_, passes, message) => {
    const problems = sequenceProblems(sequence(passes));
    expect(problems.map((each) => each.message)).toEqual([message]);
    expect(problems[0]?.pass).toBe(1);
  });

  test.each([
    ['the whole of the final torque', [toShare(100), to('20 N m')]],
    ['a hair of it', [{ action: { kind: 'to', torque: { percent: fraction(1, 1000) } } }, to('20 N m')]],
    ['one figure', [to('20 to 20 N m')]],
    ['a check at the most it may be', [check('80 N m', '80 N m')]],
    ['a check without a most', [check('80 N m')]],
    ['a share to be checked, with a most', [to('20 N m'), checkShare(50, '5 N m')]],
    ['loosened fully', [loosen]],
    ['a stretch without a torque', [{ action: { kind: 'stretch', stretch: span('.01 in') } }]],
    ['a turn of a hair', [turn('.001 deg')]],
  ] as const)('%s is no problem', (_, passes) => {
    expect(sequenceProblems(sequence(passes))).toEqual([]);
  });

  test.each([
    ['a hair more than all', 'to', fraction(100_001, 1000)],
    ['less than nothing', 'to', fraction(-1)],
    ['nothing to be checked', 'check', fraction(0)],
  ] as const)('%s is no percentage', (_, kind, percent) => {
    expect(sequenceProblems(sequence([{ action: { kind, torque: { percent } } }, to('20 N m')]))).toEqual([
      { pass: 1, message: 'a percentage of the final torque lies above 0 and up to 100' },
    ]);
  });

  test('a stretch is asked for its stretch and its torque, a check for its torque and its most', () => {
    const stretch: Pass = {
      action: { kind: 'stretch', stretch: span('0 in'), torque: span('9 to 8 N m') },
    };
    const checked: Pass = {
      action: { kind: 'check', torque: span('9 to 8 N m'), atMost: amount('7 N m') },
    };
    expect(sequenceProblems(sequence([stretch, checked]))).toEqual([
      { pass: 1, message: 'the stretch must be more than nothing' },
      { pass: 1, message: 'the torque has its least above its greatest' },
      { pass: 2, message: 'the torque has its least above its greatest' },
      { pass: 2, message: 'the check torque is above the most it may be' },
    ]);
  });

  test('a check of a share needs a final torque as well', () => {
    const problems = sequenceProblems(sequence([only(checkShare(50), 'a')]));
    expect(problems).toEqual([
      { pass: 1, fastener: 'a', message: 'a has no final torque for pass 1 to take a percentage of' },
    ]);
  });

  test('what is about a fastener or a group names it', () => {
    const bad = sequence([only(to('20 N m'), 'inner', 'x', 'a')], {
      fasteners: ['a', 'b', 'a', 'inner', 'a'],
      groups: new Map([['inner', ['b', 'y']]]),
      order: ['a', 'b', 'z', 'z'],
      final: span('2 to 1 N m'),
    });
    expect(sequenceProblems(bad)).toEqual([
      { fastener: 'a', message: 'a is named twice among the fasteners' },
      { fastener: 'a', message: 'a is named twice among the fasteners' },
      { fastener: 'inner', message: 'inner is both a fastener and a group' },
      { fastener: 'y', message: 'y of group inner is no fastener of this joint' },
      { fastener: 'z', message: 'z is named twice in the order' },
      { fastener: 'z', message: 'z in the order is no fastener of this joint' },
      { fastener: 'z', message: 'z in the order is no fastener of this joint' },
      { fastener: 'inner', message: 'inner is missing from the order' },
      { message: 'the final torque has its least above its greatest' },
      { pass: 1, fastener: 'x', message: 'x is no fastener or group of this joint' },
    ]);
  });

  test('a percentage where no torque is stated names each fastener', () => {
    const problems = sequenceProblems(sequence([only(to('20 N m'), 'a', 'b'), toShare(70)]));
    expect(problems).toEqual([
      { pass: 2, fastener: 'c', message: 'c has no final torque for pass 2 to take a percentage of' },
      { pass: 2, fastener: 'd', message: 'd has no final torque for pass 2 to take a percentage of' },
    ]);
  });

  test('every problem is reported, not the first alone', () => {
    const bad = sequence([to('0 N m'), loosen, turn('9 to 8 deg')], { order: ['a', 'a', 'b', 'c'] });
    expect(sequenceProblems(bad).map(({ pass, message }) => `${pass ?? '-'} ${message}`)).toEqual([
      '- a is named twice in the order',
      '- d is missing from the order',
      '1 the torque must be more than nothing',
      '3 the angle has its least above its greatest',
    ]);
  });
});
