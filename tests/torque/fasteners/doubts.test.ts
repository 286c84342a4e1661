import { describe, expect, test } from 'vitest';
import { doubtsAbout } from '../../../src/torque/fasteners/doubts.ts';
import { planSequence } from '../../../src/torque/plan.ts';
import type { Pass } from '../../../src/torque/sequence.ts';
import { loosen, only, sequence, span, to, turn } from '../amounts.ts';

function doubtsIn(...passes: readonly Pass[]): readonly string[] {
  const plan = planSequence(sequence(passes));
  if ('problems' in plan) throw new Error(plan.problems.map(({ message }) => message).join('; '));
  return doubtsAbout(plan.steps).map(({ pass, message }) => `${pass} ${message}`);
}

const check: Pass = { action: { kind: 'check', torque: span('20 N m') } };
const stretch: Pass = { action: { kind: 'stretch', stretch: span('.01 to .02 in') } };

describe('a pass that is hardly what was meant', () => {
  test.each([
    [
      'less torque than before',
      [to('40 N m'), to('20 N m')],
      ['2 b goes to less torque than before without being loosened'],
    ],
    [
      'a turn before any torque',
      [turn('90 deg'), to('20 N m')],
      ['1 b is turned by an angle before any torque has closed the joint'],
    ],
    ['loosened while loose', [loosen, to('20 N m')], ['1 b is loosened before it was tightened']],
    ['checked before it was tightened', [check, to('20 N m')], ['1 b is checked before it was tightened']],
    [
      'one group left out',
      [only(to('20 N m'), 'a', 'b'), turn('90 deg')],
      ['2 c is turned by an angle before any torque has closed the joint'],
    ],
  ])('%s', (_, passes, doubts) => {
    expect(doubtsIn(...passes)).toEqual(doubts);
  });

  test.each([
    ['the same torque again', [to('20 N m'), to('20 N m')]],
    ['less torque after loosening', [to('90 N m'), loosen, to('50 N m')]],
    ['a window that reaches what there is', [to('20 N m'), to('18 to 20 N m')]],
    ['a turn after a stretch', [stretch, turn('10 deg')]],
    ['less torque in another group', [only(to('40 N m'), 'a', 'b'), only(to('20 N m'), 'c', 'd')]],
  ])('%s is nothing to ask about', (_, passes) => {
    expect(doubtsIn(...passes)).toEqual([]);
  });
});
