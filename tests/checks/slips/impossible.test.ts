import { describe, expect, test } from 'vitest';
import { lastJudged, messages, rowAt } from '../bench.ts';

const leakDown = (supply: string, held: string) =>
  messages(
    lastJudged({
      'engine.yaml':
        'kind: engine\nname: A\nunits: { length: in, pressure: psi }\nlayout: { cylinders: 3 }\n',
      'limits.yaml': 'kind: limits\nsource: invented\nlimits: { leak_down: { wear: { max: 25 } } }\n',
      's.yaml': `kind: session
stage: teardown
date: 2026-02-03
conditions: { orifice: 0.040 in }
readings:
  - { measure: leak_down_supply, at: { ${supply} } }
  - { measure: leak_down_held, at: { ${held} } }
`,
    }),
    'reading/impossible',
  );

describe('a cylinder that holds more than it is given', () => {
  test('is impossible, and both pressures are named', () => {
    expect(leakDown('1: 80, 2: 80', '1: 90, 2: 60')).toEqual([
      'leak-down 1: -12.5 % is below zero, which is impossible (leak-down pressure, supply 1 80 psi, leak-down pressure, held 1 90 psi); check both gauges: were they exchanged?',
    ]);
  });

  test('where all cylinders do so it is said once', () => {
    expect(leakDown('1: 60, 2: 60, 3: 60', '1: 80, 2: 80, 3: 80')).toEqual([
      'leak-down: impossible at all 3 positions, at 1 -33.3 % is below zero, which is impossible (leak-down pressure, supply 1 60 psi, leak-down pressure, held 1 80 psi); are leak-down pressure, supply and leak-down pressure, held exchanged, or was a gauge set wrongly?',
    ]);
  });

  test('as much as it is given is a cylinder that loses nothing', () => {
    expect(leakDown('1: 80', '1: 80')).toEqual([]);
  });
});

describe('a dry liner in its bore', () => {
  test.each(['upper_belt', 'lower_belt', 'flange'])('may be pressed in at its %s, limits or none', (belt) => {
    const found = lastJudged({
      'engine.yaml': 'kind: engine\nname: A\nunits: { length: in }\nlayout: { cylinders: 1 }\n',
      's.yaml': `kind: session
stage: trial
date: 2026-02-03
readings:
  - { measure: block_${belt}_bore, at: { 1: 4.1250 } }
  - { measure: liner_${belt}_outside_diameter, at: { 1: 4.1280 } }
`,
    });
    expect(rowAt(found, `liner_${belt}_fit`, '1').routes).toHaveLength(1);
    expect(messages(found, 'reading/impossible')).toEqual([]);
  });
});
