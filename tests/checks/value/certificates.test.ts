import { describe, expect, it, test } from 'vitest';
import { toNumber } from '../../../src/quantity/fraction.ts';
import { codesOf, type Files, refusalsOf, rowsOf } from '../../shopOf.ts';

const inMicrometres = (amount: number): number => amount / 10_000;

const shop = (register: string, readings: string, date = '2026-02-03', units = 'mm'): Files => ({
  'instruments.yaml': `kind: instruments\nunits: { length: ${units} }\ninstruments:\n${register}`,
  'e/engine.yaml': `kind: engine\nname: A\nunits: { length: ${units} }\nlayout: { mains: 2 }\n`,
  'e/session.yaml': `kind: session\nstage: trial\ndate: ${date}\nreadings:\n${readings}`,
});

const readAs = (files: Files) => {
  const route = rowsOf(files)[0]?.routes[0]?.route;
  if (route === undefined) throw new Error('not measured');
  return {
    mean: inMicrometres(toNumber(route.measured.mean.amount)),
    u: inMicrometres(route.u),
    terms: route.worse.terms,
  };
};

describe('JCGM 100:2008 example H.1, an end gauge of 50 mm compared with a standard', () => {
  // The standard is 50.000 623 mm with 75 nm at k = 3; the difference is 215 nm with 9.7 nm, of which 5.8 nm is its
  // repeatability, 3.9 and 6.7 nm the comparator. The temperature adds 2.9 and 16.6 nm (H.1.3 and H.1.4).
  const files = shop(
    `  standard:
    type: gauge block
    correct_readings: true
    certificates: [{ date: 2026-01-10, errors: [{ at: 50 mm, as_found: -0.000623 mm }], uncertainty: 0.000075 mm, k: 3 }]
  comparator: { type: other, repeatability: 0.0000097 mm }
`,
    '  - { measure: main_journal_diameter, with: comparator, set_to: 50, set_with: standard, at: { 1: 0.000215 } }\n',
  );

  it('comes out as 50.000 838 mm, as printed', () => {
    expect(readAs(files).mean / 1000).toBeCloseTo(50.000838, 9);
  });

  it('has the printed combined uncertainty of 32 nm, with what the temperature adds', () => {
    const { u } = readAs(files);
    expect(1000 * Math.hypot(u, 0.0029, 0.0166)).toBeCloseTo(31.7, 1);
  });
});

const REGISTER = (more: string): string => `  mic:
    type: micrometer
    resolution: 0.001 mm
    max_error: 0.004 mm
    ${more}
    certificates:
      - { date: 2025-01-10, due: 2026-01-10, errors: [{ at: 50 mm, as_found: 0.002 mm }, { at: 75 mm, as_found: 0.004 mm }], uncertainty: 0.001 mm }
      - { date: 2026-01-10, due: 2027-01-10, errors: [{ at: 50 mm, as_found: 0.006 mm, as_left: 0 mm }, { at: 75 mm, as_found: 0.006 mm, as_left: -0.001 mm }], uncertainty: 0.001 mm }
`;
const READING = '  - { measure: main_journal_diameter, with: mic, at: { 1: 62.500 } }\n';

describe('a reading of a micrometer with certificates', () => {
  it.each([
    ['is put right by the one that counts on its day', 'correct_readings: true', '2025-06-01', 62_497],
    ['is put right by the next from its day on', 'correct_readings: true', '2026-06-01', 62_500.5],
    ['stays as it is before the first', 'correct_readings: true', '2024-06-01', 62_500],
    ['stays as it is where the shop does not say so', 'serial: M1', '2025-06-01', 62_500],
  ])('%s', (_, more, date, expected) => {
    expect(readAs(shop(REGISTER(more), READING, date)).mean).toBeCloseTo(expected, 6);
  });

  it('has the uncertainty of the certificate in place of the largest error, where it is put right', () => {
    const own = (more: string): readonly string[] =>
      [...readAs(shop(REGISTER(more), READING, '2026-06-01')).terms.keys()].filter((name) =>
        / of mic$/.test(name),
      );
    expect(own('correct_readings: true')).toEqual(['calibration of mic']);
    expect(own('serial: M1')).toEqual(['largest error of mic', 'calibration of mic']);
  });

  it('keeps its largest error beyond the sizes that the certificate states', () => {
    const far = READING.replace('62.500', '75.001');
    const { mean, terms } = readAs(shop(REGISTER('correct_readings: true'), far, '2025-06-01'));
    expect(mean).toBeCloseTo(75_001, 6);
    expect([...terms.keys()]).toContain('largest error of mic before 2026-01-10');
  });

  it('shares no error with a reading under another certificate', () => {
    const names = (date: string): readonly string[] => [
      ...readAs(shop(REGISTER('serial: M1'), READING, date)).terms.keys(),
    ];
    expect(
      names('2025-06-01').filter((each) => names('2026-06-01').includes(each) && !each.includes('#')),
    ).toEqual([]);
  });

  it.each([
    ['2025-06-01', []],
    ['2026-01-09', []],
    ['2027-02-01', ['instrument/overdue']],
  ])('is overdue by the certificate in force: on %s', (date, expected) => {
    expect(
      codesOf(shop(REGISTER('serial: M1'), READING, date)).filter((each) => each === 'instrument/overdue'),
    ).toEqual(expected);
  });
});

test('a register says when it was calibrated in one place, and corrects nothing unproven', () => {
  const refused = (text: string): readonly string[] =>
    refusalsOf(shop(`  mic: { type: micrometer, ${text} }\n`, READING));
  expect(refused('calibrated: 2026-01-10, certificates: [{ date: 2026-01-10 }]')).toEqual([
    'instruments.yaml:4:40 value',
  ]);
  expect(refused('correct_readings: true, certificates: [{ date: 2026-01-10 }]')).toEqual([
    'instruments.yaml:4:46 value',
  ]);
  expect(refused('certificates: [{ date: 2026-01-10 }, { date: 2026-01-10 }]')).toHaveLength(1);
});
