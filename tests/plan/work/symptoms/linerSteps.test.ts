import { describe, expect, it } from 'vitest';
import { outText } from '../../../../src/plan/closing/outText.ts';
import { jobsOf } from '../../../../src/plan/work/jobs.ts';
import { unitNamed } from '../../../../src/quantity/units.ts';
import { limitsOf, sessionOf } from '../../../shopOf.ts';
import { contextOf } from '../../planOf.ts';

/** Read twice: one that is far from the others might be a slip. */
function adjusted(at: string, points = ''): readonly string[] {
  const context = contextOf({
    'shop.yaml': 'kind: shop\nunits: { length: mm }\n',
    'e/engine.yaml': 'kind: engine\nname: Pump\nlayout: { cylinders: 6 }\n',
    'e/limits.yaml': limitsOf(
      'liner_protrusion: { new: 0.04 to 0.10 }\nliner_protrusion_step: { new: { max: 0.04 } }',
    ),
    'e/session.yaml': sessionOf(
      'machined',
      `- { measure: liner_protrusion, ${points}at: { ${at} } }\n`.repeat(2),
    ),
  });
  return jobsOf(context)
    .filter(({ operation }) => operation === 'adjust')
    .flatMap(({ name, rows }) => [name, ...rows.map((row) => outText(row, () => unitNamed('mm')))]);
}

describe('liners that are uneven', () => {
  it('because one of them is low are one job with that one', () => {
    expect(adjusted('1: 0.060, 2: 0.060, 3: 0.015, 4: 0.060, 5: 0.055, 6: 0.055')).toEqual([
      'adjust liner protrusion',
      'liner protrusion 3: 0.015 mm, low by 0.025 mm (new min 0.040)',
      'liner protrusion step 2: 0.045 mm, uneven by 0.005 mm (new max 0.040)',
      'liner protrusion step 3: 0.045 mm, uneven by 0.005 mm (new max 0.040)',
      'liner protrusion step 4: 0.045 mm, uneven by 0.005 mm (new max 0.040)',
    ]);
  });

  it('are a job of their own beside one that is low elsewhere', () => {
    expect(
      adjusted('1: 0.045, 2: 0.090, 3: 0.075, 4: 0.060, 5: 0.045, 6: 0.030').filter((each) =>
        /^adjust|step/.test(each),
      ),
    ).toEqual([
      'adjust liner protrusion',
      'adjust liner protrusion step',
      'liner protrusion step 1: 0.045 mm, uneven by 0.005 mm (new max 0.040)',
      'liner protrusion step 2: 0.045 mm, uneven by 0.005 mm (new max 0.040)',
    ]);
  });

  it('by less than the last digit of their readings say a digit more, and so does the limit', () => {
    const points = '1: [0.05, 0.05, 0.06, 0.05], 2: [0.09, 0.09, 0.10, 0.10], 3: [0.08, 0.08, 0.08, 0.08]';
    expect(adjusted(points, 'stations: [front, rear, left, right], ')).toEqual([
      'adjust liner protrusion step',
      'liner protrusion step 1: 0.043 mm, uneven by 0.003 mm (new max 0.040)',
      'liner protrusion step 2: 0.043 mm, uneven by 0.003 mm (new max 0.040)',
    ]);
  });
});
