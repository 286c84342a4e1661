import { describe, expect, it } from 'vitest';
import { fitPage } from '../../../src/output/plan/fit/fitPage.ts';
import { fitsOf } from '../../../src/plan/fit/fits.ts';
import { limitsOf, sessionOf } from '../../shopOf.ts';
import { contextOf } from '../planOf.ts';

const STOCK = `kind: stock
shells: [{ code: S, fits: main shells, wall: 2.475, count: 4 }]
pistons: [{ mark: P1, diameter: 79.955, weight: 400 }, { mark: P2, diameter: 79.955, weight: 404 }, { mark: P3, diameter: 79.955, weight: 402 }]
thrust_washers: [{ code: W, count: 2 }, { code: W5, size: 0.05 over, count: 2 }]
`;

const MEASURED = `- { measure: main_housing_bore, at: { 1: 55.000, 2: 55.000 } }
- { measure: main_journal_diameter, at: { 1: 50.000, 2: 50.000 } }
- { measure: cylinder_bore, at: { 1: 80.000, 2: 80.000 } }`;

const GOOD = `- { measure: main_bearing_clearance, at: { 1: 0.041, 2: 0.041 } }
- { measure: piston_clearance, at: { 1: 0.045, 2: 0.045 } }
- { measure: crankshaft_end_play, value: 0.190 }`;

const FITTED = `fitted:
  main_shells: { condition: new }
  pistons: { condition: new, at: { 1: { mark: P1 }, 2: { mark: P2 } } }
  thrust_washer: { condition: new }
`;

function pageOf(fitted: string, readings: string) {
  const context = contextOf({
    'shop.yaml': 'kind: shop\nunits: { length: mm, mass: g }\nplan: { weight_spread: 2 g }\n',
    'stock.yaml': STOCK,
    'e/engine.yaml': 'kind: engine\nname: Pump\nlayout: { mains: 2, cylinders: 2 }\n',
    'e/limits.yaml': limitsOf(
      'main_bearing_clearance: { new: 0.030 to 0.070 }\npiston_clearance: { new: 0.030 to 0.060 }\ncrankshaft_end_play: { new: 0.10 to 0.20 }',
    ),
    'e/a.yaml': sessionOf('machined', MEASURED).replace(/date: .*/, 'date: 2026-03-01'),
    'e/b.yaml': sessionOf('trial', readings, fitted).replace(/date: .*/, 'date: 2026-03-05'),
  });
  const { answer, sections } = fitPage(fitsOf(context), context, []);
  return {
    answer,
    sections: sections.map(({ table, lines = [] }) => [
      ...(table?.rows ?? []).map((cells) =>
        cells
          .slice(0, 2)
          .map((cell) => (typeof cell === 'string' ? cell : cell.text))
          .join(' '),
      ),
      ...lines,
    ]),
  };
}

describe('what is fitted, and was measured inside its limits since', () => {
  it('is not chosen again, and the page says so', () => {
    expect(pageOf(FITTED, GOOD)).toEqual({
      answer: ['nothing is left to choose: what is fitted is inside its limits'],
      sections: [
        ['1, 2: fitted in trial 2026-03-05, and inside: not chosen again'],
        ['1, 2: fitted in trial 2026-03-05, and inside: not chosen again'],
        ['fitted in trial 2026-03-05, and inside: not chosen again'],
      ],
    });
  });

  it('stays where it is, and what is out beside it is chosen anew', () => {
    const { answer, sections } = pageOf(
      FITTED,
      GOOD.replace('2: 0.041', '2: 0.081').replace('2: 0.045', '2: 0.081').replace('0.190', '0.250'),
    );
    expect(answer).toEqual([
      'each place has its part; taken together they lie as near to the middle as stock allows',
    ]);
    expect(sections).toEqual([
      ['2 S, both', '1: fitted in trial 2026-03-05, and inside: not chosen again'],
      // P1 is in cylinder 1; P2 is farther from its weight than they may differ.
      ['2 P3', '1: fitted in trial 2026-03-05, and inside: not chosen again'],
      ['W5, 0.05 over: 0.250 as read becomes 0.150 mm'],
    ]);
  });

  it.each([
    ['nobody says that it is fitted', '', GOOD],
    ['nobody measured it since', FITTED, '- { measure: crankshaft_end_play, value: 0.250 }'],
    [
      'it was found to be renewed since',
      `${FITTED}found: [{ on: [main shells, pistons], is: scored, do: renew }]\n`,
      GOOD,
    ],
  ])('is chosen where %s', (_, fitted, readings) => {
    const chosen = pageOf(fitted, readings).sections.flat();
    expect(chosen).toEqual(expect.arrayContaining(['1 S, both', '2 S, both', '1 P1', '2 P3']));
  });
});

describe('a head gasket that was fitted', () => {
  const READ = '- { measure: piston_protrusion, at: { 1: 0.800, 2: 0.810 } }';
  const OTHERS = '- { measure: cylinder_bore, at: { 1: 80.000, 2: 80.000 } }';
  const linesAfter = (secondReadings: string) => {
    const fitted = 'fitted: { head_gasket: { condition: new } }\n';
    const context = contextOf({
      'shop.yaml': 'kind: shop\nunits: { length: mm }\n',
      'stock.yaml': 'kind: stock\ngaskets: [{ code: B, thickness: 1.65, count: 1 }]\n',
      'e/engine.yaml': 'kind: engine\nname: Pump\nlayout: { cylinders: 2 }\n',
      'e/limits.yaml': limitsOf(
        'cylinder_bore: { new: 79.990 to 80.010 }',
        'gasket_choice: [{ code: B, protrusion: 0.705 to 0.855, thickness: 1.65 }]\n',
      ),
      'e/a.yaml': sessionOf('trial', READ, fitted).replace(/date: .*/, 'date: 2026-03-01'),
      'e/b.yaml': sessionOf('trial', secondReadings).replace(/date: .*/, 'date: 2026-03-05'),
    });
    return fitPage(fitsOf(context), context, []).sections.flatMap(({ lines = [] }) => lines);
  };

  it('once the pistons were read is not chosen again', () => {
    expect(linesAfter(OTHERS)).toEqual([
      'fitted in trial 2026-03-01, after the pistons were read: not chosen again',
    ]);
  });

  it('is chosen again where they were read anew', () => {
    expect(linesAfter(READ)).toEqual([
      'cylinder 2 stands out most, 0.810 mm on the mean: gasket B, 1.650 mm thick; 1 in stock',
    ]);
  });
});
