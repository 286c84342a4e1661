import { describe, expect, it } from 'vitest';
import { orderList } from '../../../src/plan/order/orderList.ts';
import { jobsOf } from '../../../src/plan/work/jobs.ts';
import { ENGINE, limitsOf, REGISTER, sessionOf } from '../../shopOf.ts';
import { contextOf } from '../planOf.ts';

const LIMITS = `valve_guide_hole_bore: { new: 0.5000 to 0.5007 }
cam_housing_bore: { new: 2.1250 to 2.1260 }
cylinder_bore: { new: 4.1250 to 4.1260 }`;

function linesOf(found: string, blocks = '- { measure: cylinder_bore, at: { 1: 4.1255 } }', shop = '') {
  const context = contextOf({
    'shop.yaml': `kind: shop\nunits: { length: in }\n${shop}`,
    'register.yaml': REGISTER,
    'e/engine.yaml': ENGINE.replace(
      'layout: {',
      'layout: { valves: [intake], cam_bearings: 3, lobes: [intake 1, intake 2],',
    ),
    'e/limits.yaml': limitsOf(LIMITS),
    'e/session.yaml': sessionOf('teardown', blocks, found === '' ? '' : `found: [${found}]\n`),
  });
  return orderList(context, jobsOf(context))
    .filter(({ for: job }) => job !== 'opened engine')
    .map(({ count, what, size, when, for: job, waitsFor }) =>
      [count, what, size, when, job, waitsFor ?? '-'].join('; '),
    );
}

const HOUSING_BORES = 'measure main housing bore 1 to 3; main journal diameter 1 to 3 of the new crankshaft';
const BIG_ENDS = 'measure rod housing bore 1 to 4; crankpin diameter 1 to 4 of the new crankshaft';

describe('nobody buys a hole or a journal', () => {
  it.each<readonly [string, string, readonly string[]]>([
    [
      'the guide goes by its hole',
      '{ on: [valve guide hole 1 intake, valve guide hole 3 intake], is: torn, do: renew }',
      [
        '2; valve guides; larger outside; after measuring; renew valve guide holes; measure valve guide hole bore 1 intake, 3 intake as it is finished',
      ],
    ],
    [
      'so does the lifter by its bore',
      '{ on: lifter bore 2 intake, is: scored, do: renew }',
      [
        '1; lifter; larger outside; after measuring; renew lifter bores; measure lifter bore 2 intake as it is finished',
      ],
    ],
    [
      'a thrust journal takes the crankshaft along, and its shells',
      '{ on: thrust journal, is: scored, do: renew }',
      [
        '1; crankshaft; as fitted; now; renew thrust journal; -',
        `3; main shell pairs; by the new crankshaft; after measuring; renew thrust journal; ${HOUSING_BORES}`,
        `4; rod shell pairs; by the new crankshaft; after measuring; renew thrust journal; ${BIG_ENDS}`,
      ],
    ],
    [
      'lobes take the camshaft along',
      '{ on: [cam lobe intake 1, cam lobe intake 2], is: worn flat, do: renew }',
      ['1; camshaft; as fitted; now; renew cam lobes; -'],
    ],
    [
      'a big end its rod',
      '{ on: [big end 2, big end 3], is: fretted, do: renew }',
      ['2; connecting rods; as fitted; now; renew rod housings; -'],
    ],
    [
      'a main is its shells',
      '{ on: main 2, is: run dry, do: renew }',
      ['1; main shell pair; std; now; renew main shells; -'],
    ],
    [
      'a main housing is bored, and the block bought where that cannot be',
      '{ on: main housing 3, is: fretted, do: renew }',
      [
        '1; block; as fitted; after measuring; renew main housings; decide: machine it, or renew the block where that cannot be done',
      ],
    ],
  ])('%s', (_, found, lines) => expect(linesOf(found)).toEqual(lines));

  it('nor a bore beyond its last size', () => {
    const blocks = '- { measure: valve_guide_hole_bore, with: fine, at: { 1: { intake: 0.5200 } } }\n'.repeat(
      2,
    );
    expect(linesOf('', blocks, 'plan: { steps: { valve guide holes: [0.010 over] } }\n')).toEqual([
      '1; valve guide; larger outside; after measuring; renew valve guide holes; measure valve guide hole bore 1 intake as it is finished',
    ]);
  });
});
