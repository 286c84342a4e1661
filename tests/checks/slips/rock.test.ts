import { describe, expect, test } from 'vitest';
import { limitsOf, reportOf } from '../../shopOf.ts';

const ROCK = 'valve_rock: { wear: { max: 0.0140 } }';

/** What is said of slips in stem clearances, each valve of four cylinders as given. */
function said(readings: readonly string[], { limits = ROCK, instrument = '' } = {}): readonly string[] {
  const report = reportOf({
    'register.yaml': `kind: instruments
instruments:
  dial: { type: dial indicator, resolution: 0.0005 in, max_error: 0.0005 in }
  hole: { type: bore gauge, resolution: 0.0001 in, max_error: 0.0001 in }
`,
    'e/engine.yaml':
      'kind: engine\nname: A\nunits: { length: in }\nlayout: { cylinders: 4, mains: 5, crankpins: 4, valves: [I] }\n',
    'e/limits.yaml': limitsOf(
      `valve_stem_clearance: { new: 0.0012 to 0.0031, wear: { max: 0.0054 } }\n${limits}`,
    ),
    'e/s.yaml': `kind: session
stage: teardown
date: 2026-02-03
readings:
  - { measure: valve_stem_clearance,${instrument} at: { ${readings.map((each, at) => `${at + 1}: { I: ${each} }`).join(', ')} } }
`,
  });
  return (report.sessions[0]?.findings ?? [])
    .filter(({ code }) => code === 'reading/implausible')
    .map(({ message }) => message.replace(/; as read.*/, ''));
}

const all = (reading: string): readonly string[] => Array(4).fill(reading);

describe('the travel of a rocked valve, written as its clearance', () => {
  test('is named where no instrument is, rather than a moved decimal point', () => {
    expect(said(all('0.0120'))).toEqual([
      'valve stem clearance: all 4 readings lie beyond its limits and inside those of valve rock: the valve rocked, which reads more than the clearance?',
    ]);
  });

  test('is named before the decimal point where no limits of the rock tell how much it is', () => {
    expect(said(all('0.0105'), { limits: '' })).toEqual([
      'valve stem clearance: all 4 readings: the valve rocked, which reads more than the clearance? or the decimal point moved? 0.00105 for 0.0105',
    ]);
  });

  test('is named of one valve among others', () => {
    expect(said(['0.0020', '0.0120', '0.0021', '0.0021'])).toEqual([
      'valve stem clearance, cylinder 2 valve I: written 0.0120: the valve rocked, which reads more than the clearance? or the decimal point moved: 0.00120',
    ]);
  });

  test('is not thought of where it would be too much for a rock', () => {
    expect(said(all('0.0200'))).toEqual([
      'valve stem clearance: all 4 readings: the decimal point moved, or millimetres written as inches? 0.00200 for 0.0200',
    ]);
  });

  test('is not thought of with a gauge that measures sizes', () => {
    expect(said(all('0.0120'), { instrument: ' with: hole,' })).toEqual([
      'valve stem clearance: all 4 readings: the decimal point moved? 0.00120 for 0.0120',
    ]);
  });
});
