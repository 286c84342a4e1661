import { describe, expect, test } from 'vitest';
import { planSequence } from '../../src/torque/plan.ts';
import { sequenceProblems } from '../../src/torque/sequenceProblems.ts';
import { amount, loosen, only, sequence, span, to, toShare, turn } from './amounts.ts';

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
