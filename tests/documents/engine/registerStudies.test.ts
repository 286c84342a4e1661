import { describe, expect, it } from 'vitest';
import { gaugeAnova } from '../../../src/measurement/gaugeAnova.ts';
import { readingTerms } from '../../../src/measurement/readingTerms.ts';
import { fraction, toNumber } from '../../../src/quantity/fraction.ts';
import { ENGINE, type Files, refusalsOf, shopOf } from '../../shopOf.ts';

const INCH = 254_000_000;

const REPEATS = {
  P1: { RK: [3.2478, 3.2477, 3.2478], JM: [3.2478, 3.2478, 3.2477] },
  P2: { RK: [3.2471, 3.2472, 3.2471], JM: [3.2472, 3.2472, 3.2473] },
  P3: { RK: [3.2465, 3.2465, 3.2466], JM: [3.2465, 3.2464, 3.2465] },
};

const study = (about: string, parts: unknown = REPEATS): string =>
  `kind: session\nstage: service\ndate: 2026-01-12\n${about}study: { measure: main_journal_diameter, with: mic, parts: ${JSON.stringify(parts)} }\n`;

const files = (session: string, path = 'e/gauges.yaml', type = 'micrometer'): Files => ({
  'e/engine.yaml': ENGINE,
  'e/gauges.yaml': session,
  'i.yaml': `kind: instruments\ninstruments:\n  mic: { type: ${type}, repeatability: { study: ${path} } }\n`,
});

const micOf = (all: Files) => {
  const found = shopOf(all).engine?.instruments.get('mic');
  if (found === undefined) throw new Error(refusalsOf(all).join(', '));
  return found;
};

describe('an instrument whose repeatability is that of a study', () => {
  const worked = gaugeAnova(Object.values(REPEATS).map((people) => Object.values(people)));
  if (worked.kind === 'no study') throw new Error(worked.reason);
  const { dof } = worked.table.pooled ?? worked.table.repeatability;

  it('has the deviation of repeats that the study shows, with the degrees of freedom that it left', () => {
    const mic = micOf(files(study('')));
    expect(mic.repeatability && toNumber(mic.repeatability) / INCH).toBeCloseTo(
      worked.repeatability.deviation,
      9,
    );
    expect(mic.study).toEqual({ name: 'gauges', dof });
    const terms = readingTerms(mic, { amount: fraction(INCH * 3), id: 'x' });
    expect(terms.get('repeatability of mic by study gauges at x')).toEqual({
      u: expect.closeTo(worked.repeatability.deviation * INCH, 0),
      dof,
      estimate: 'study gauges of mic',
      of: 'mic',
    });
  });

  it('has it in whatever units the study is written', () => {
    const inMillimetres = Object.fromEntries(
      Object.entries(REPEATS).map(([part, people]) => [
        part,
        Object.fromEntries(
          Object.entries(people).map(([who, all]) => [
            who,
            all.map((each) => Number((each * 25.4).toFixed(5))),
          ]),
        ),
      ]),
    );
    const mic = micOf(files(study('units: { length: mm }\n', inMillimetres)));
    expect(mic.repeatability && toNumber(mic.repeatability) / INCH).toBeCloseTo(
      worked.repeatability.deviation,
      9,
    );
  });

  it.each([
    ['that is not there', files(study(''), 'e/none.yaml'), 'there is no study e/none.yaml'],
    ['that is no session', files(study(''), 'e/engine.yaml'), 'e/engine.yaml is not a session'],
    [
      'that holds none',
      files('kind: session\nstage: service\ndate: 2026-01-12\n'),
      'e/gauges.yaml holds no study',
    ],
    ['of another instrument', files(study('').replace('with: mic', 'with: mic-2')), 'is a study of mic-2'],
    ['of another quantity', files(study(''), 'e/gauges.yaml', 'torque wrench'), 'is a study of length'],
    [
      'of one part alone',
      files(study('', { P1: REPEATS.P1 })),
      'shows no repeatability: a study needs two or more parts',
    ],
    ['that is broken', files(study('').replace('2026-01-12', 'soon')), 'e/gauges.yaml cannot be used: '],
    [
      'of something that nobody knows',
      files(study('').replace('main_journal_diameter', 'main_jornal_diameter')),
      'e/gauges.yaml cannot be used: unknown characteristic main_jornal_diameter',
    ],
  ])('is refused a study %s', (_title, all, message) => {
    const told = shopOf(all).diagnostics.filter(({ place }) => place.path === 'i.yaml');
    expect(told).toHaveLength(1);
    expect(told[0]?.message).toContain(message);
    expect(shopOf(all).engine).toBeUndefined();
  });
});
