import { describe, expect, it } from 'vitest';
import { toDecimal } from '../../../src/quantity/fraction.ts';
import { fromBase, unitNamed } from '../../../src/quantity/units.ts';
import { limitsOf, sessionOf } from '../../shopOf.ts';
import { jobsIn } from '../planOf.ts';

/** Standard limits, wear limit, and each step as the manual prints it. */
interface Published {
  readonly source: string;
  readonly unit: 'in' | 'mm';
  readonly measure: 'main_journal_diameter' | 'crankpin_diameter' | 'cylinder_bore';
  readonly std: string;
  readonly steps: readonly (readonly [size: string, least: string, greatest: string])[];
}

/** A printed table: what is standard, then each step. */
function printed(
  source: string,
  unit: Published['unit'],
  measure: Published['measure'],
  { std, ...steps }: { readonly std: string; readonly [size: string]: string },
): Published {
  const rows = Object.entries(steps).map(([size, limits]) => {
    const [least = '', greatest = ''] = limits.split(' to ');
    return [size, least, greatest] as const;
  });
  return { source, unit, measure, std, steps: rows };
}

const TABLES: readonly Published[] = [
  printed('TM 5-3805-262-34, p. 4-23, main journals', 'in', 'main_journal_diameter', {
    std: '2.998 to 2.999',
    '0.010 under': '2.988 to 2.989',
    '0.020 under': '2.978 to 2.979',
    '0.030 under': '2.968 to 2.969',
  }),
  printed('TM 5-3805-262-34, p. 4-23, rod journals', 'in', 'crankpin_diameter', {
    std: '2.748 to 2.749',
    '0.010 under': '2.738 to 2.739',
    '0.020 under': '2.728 to 2.729',
    '0.030 under': '2.718 to 2.719',
  }),
  printed('TM 5-3805-262-34, p. 3-485, compressor crankshaft', 'in', 'crankpin_diameter', {
    std: '1.1230 to 1.1235',
    '0.010 under': '1.1130 to 1.1135',
    '0.020 under': '1.1030 to 1.1035',
    '0.030 under': '1.0930 to 1.0935',
  }),
  printed('TM 5-3805-260-24, p. 1-23, rod journal 2.7496 ± .0006', 'in', 'crankpin_diameter', {
    std: '2.7490 to 2.7502',
    '0.010 under': '2.7390 to 2.7402',
    '0.020 under': '2.7290 to 2.7302',
    '0.050 under': '2.6990 to 2.7002',
  }),
  printed('TM 5-3805-260-24, p. 1-23, main journal 3.4995 ± .0006', 'in', 'main_journal_diameter', {
    std: '3.4989 to 3.5001',
    '0.010 under': '3.4889 to 3.4901',
    '0.020 under': '3.4789 to 3.4801',
  }),
  printed('TM 10-3930-641-34-1, p. 2-92, main journal 4.7500 ± .0008', 'in', 'main_journal_diameter', {
    std: '4.7492 to 4.7508',
    '0.025 under': '4.7242 to 4.7258',
    '0.050 under': '4.6992 to 4.7008',
  }),
  printed('TM 5-4320-300-14, p. 6-103, rod journals', 'in', 'crankpin_diameter', {
    std: '2.499 to 2.500',
    '0.002 under': '2.497 to 2.498',
    '0.010 under': '2.489 to 2.490',
    '0.020 under': '2.479 to 2.480',
    '0.030 under': '2.469 to 2.470',
  }),
  printed(
    'TM 5-4320-300-14, p. 6-103, main journals (2.996 of .002 is a misprint)',
    'in',
    'main_journal_diameter',
    {
      std: '2.999 to 3.000',
      '0.002 under': '2.997 to 2.998',
      '0.010 under': '2.989 to 2.990',
      '0.020 under': '2.979 to 2.980',
      '0.030 under': '2.969 to 2.970',
    },
  ),
  printed('TM 10-3930-653-14&P, p. 60, journals by .25', 'mm', 'main_journal_diameter', {
    std: '62.942 to 62.955',
    '0.25 under': '62.692 to 62.705',
    '0.50 under': '62.442 to 62.455',
    '0.75 under': '62.192 to 62.205',
    '1.00 under': '61.942 to 61.955',
  }),
  printed('TM 10-3930-641-34-1, p. 2-92, rod journal 3.8200 ± .0008 (.02 mm)', 'in', 'crankpin_diameter', {
    std: '3.8192 to 3.8208',
    '0.025 under': '3.7942 to 3.7958',
    '0.050 under': '3.7692 to 3.7708',
  }),
  printed(
    'TM 5-2420-230-24-2, p. 1-49, rod journals (it prints their least sizes)',
    'mm',
    'crankpin_diameter',
    {
      std: '68.987 to 68.987',
      '0.25 under': '68.737 to 68.737',
      '0.50 under': '68.487 to 68.487',
      '0.75 under': '68.237 to 68.237',
      '1.00 under': '67.987 to 67.987',
    },
  ),
  printed(
    'TM 5-2420-230-24-2, p. 1-49, main journals (it prints their least sizes)',
    'mm',
    'main_journal_diameter',
    {
      std: '82.987 to 82.987',
      '0.25 under': '82.737 to 82.737',
      '0.50 under': '82.487 to 82.487',
    },
  ),
  printed(
    'TM 5-4320-302-14, p. 6-181, journals computed from the bores and clearances of its four sizes',
    'mm',
    'main_journal_diameter',
    {
      std: '59.971 to 59.990',
      '0.5 under': '59.471 to 59.490',
      '1.0 under': '58.971 to 58.990',
      '1.5 under': '58.471 to 58.490',
    },
  ),
  printed(
    'TM 5-4310-354-14, table 5-2, rod journals; its sizes of the steps are computed',
    'in',
    'crankpin_diameter',
    {
      std: '2.3730 to 2.3740',
      '0.010 under': '2.3630 to 2.3640',
      '0.020 under': '2.3530 to 2.3540',
      '0.030 under': '2.3430 to 2.3440',
      '0.040 under': '2.3330 to 2.3340',
      '0.060 under': '2.3130 to 2.3140',
    },
  ),
  printed(
    'TM 5-4310-354-14, table 5-2, main journals (2.8444 of .010 is a misprint); the others are computed',
    'in',
    'main_journal_diameter',
    {
      std: '2.8734 to 2.8744',
      '0.010 under': '2.8634 to 2.8644',
      '0.020 under': '2.8534 to 2.8544',
      '0.030 under': '2.8434 to 2.8444',
      '0.040 under': '2.8334 to 2.8344',
      '0.060 under': '2.8134 to 2.8144',
    },
  ),
  printed(
    'TM 9-2815-225-34&P, app. F and p. 183, main journals; its sizes of the steps are computed',
    'in',
    'main_journal_diameter',
    {
      std: '4.4985 to 4.5000',
      '0.010 under': '4.4885 to 4.4900',
      '0.020 under': '4.4785 to 4.4800',
      '0.030 under': '4.4685 to 4.4700',
    },
  ),
  printed(
    'TM 9-2815-225-34&P, app. F and p. 183, rod journals; its sizes of the steps are computed',
    'in',
    'crankpin_diameter',
    {
      std: '3.1235 to 3.1250',
      '0.010 under': '3.1135 to 3.1150',
      '0.020 under': '3.1035 to 3.1050',
      '0.030 under': '3.0935 to 3.0950',
    },
  ),
  printed('Ford Truck 1998, Econoline E250, 7.3 diesel, main journals', 'in', 'main_journal_diameter', {
    std: '3.1228 to 3.1236',
    '0.010 under': '3.1128 to 3.1136',
    '0.020 under': '3.1028 to 3.1036',
    '0.030 under': '3.0928 to 3.0936',
  }),
  printed('service data nsxb07012a and nsxb07013b, rebores (W12)', 'mm', 'cylinder_bore', {
    std: '90.00 to 90.01',
    '0.25 over': '90.25 to 90.26',
    '0.50 over': '90.50 to 90.51',
  }),
];

const MICROMETER =
  'kind: instruments\ninstruments:\n  exact: { type: micrometer, resolution: 0.0000001 mm, max_error: 0.0000001 mm }\n';

const PER_UNIT = { in: 10_000n, mm: 1_000n } as const;

/** The reading of which a step lacks a number of last digits, or leaves them over. */
function reading(
  { unit, measure, std }: Published,
  size: readonly [string, string, string],
  by: bigint,
): string {
  const digits = PER_UNIT[unit];
  const whole = (text: string): bigint => {
    const [units = '', rest = ''] = text.split('.');
    return BigInt(units) * digits + BigInt(rest.padEnd(String(digits).length - 1, '0'));
  };
  const aimTwice = whole(size[1]) + whole(size[2]);
  if (measure === 'cylinder_bore') {
    // 2 × largest − smallest = aim − by: with the smallest at the least of new parts.
    const least = whole(std.split(' ')[0] ?? '');
    return text((aimTwice / 2n - by + least) / 2n);
  }
  return text((aimTwice + 1n) / 2n + by);

  function text(of: bigint): string {
    const places = String(digits).length - 1;
    return `${of / digits}.${String(of % digits).padStart(places, '0')}`;
  }
}

const KEYS = {
  main_journal_diameter: 'main journals',
  crankpin_diameter: 'crankpins',
  cylinder_bore: 'cylinders',
};

/** One part of an engine whose limits print no sizes, and whose shop cuts to these steps. */
const filesFor = (table: Published, read: string) => {
  const { unit, measure, std, steps } = table;
  const [least = '', , greatest = ''] = std.split(' ');
  const isBore = measure === 'cylinder_bore';
  const wear = isBore ? `{ max: ${greatest} }` : `{ min: ${least} }`;
  return {
    'shop.yaml': `kind: shop\nunits: { length: ${unit} }\nplan: { polish: 0, hone_stock: 0, steps: { ${KEYS[measure]}: [${steps.map(([size]) => size).join(', ')}] } }\n`,
    'register.yaml': MICROMETER,
    'e/engine.yaml': 'kind: engine\nname: One\nlayout: { cylinders: 1, mains: 1, crankpins: 1 }\n',
    'e/limits.yaml': limitsOf(`${measure}: { new: ${std}, wear: ${wear} }`),
    'e/session.yaml': sessionOf(
      'teardown',
      // Read twice: so far from standard it might be a slip.
      [1, 2]
        .map(
          () =>
            `- { measure: ${measure}, with: exact, stations: [a, b], at: { 1: [${isBore ? least : read}, ${read}] } }`,
        )
        .join('\n'),
    ),
  };
};

function cutOf(table: Published, read: string) {
  const isBore = table.measure === 'cylinder_bore';
  // Beyond the last step a crankshaft is renewed, or the bore itself.
  const job = jobsIn(filesFor(table, read)).find(({ cut }) => cut !== undefined);
  expect(job?.name).toMatch(
    isBore ? /^(?:bore|renew) cylinders$/ : /^(?:grind (?:main journals|crankpins)|renew crankshaft)$/,
  );
  const choice = job?.cut?.groups[0]?.deciding.choice;
  if (choice?.kind !== 'step') return [choice?.kind];
  const text = (amount: Parameters<typeof fromBase>[0]): string =>
    toDecimal(fromBase(amount, unitNamed(table.unit)), table.unit === 'in' ? 4 : 3);
  return [choice.step.name, text(choice.step.least), text(choice.step.greatest)];
}

const padded = (size: string, unit: 'in' | 'mm'): string => {
  const [whole = '', rest = ''] = size.split('.');
  return `${whole}.${rest.padEnd(unit === 'in' ? 4 : 3, '0')}`;
};

describe.each(TABLES.map((table) => [table.source, table] as const))('%s', (_, table) => {
  it.each(table.steps.map((step) => [step[0], step] as const))(
    '%s is taken by the last size that cleans up to it, and finished to its limits',
    (size, step) => {
      const [, least, greatest] = step;
      // The uncertainty of the reading is rounded up to its last digit.
      expect(cutOf(table, reading(table, step, 2n))).toEqual([
        size,
        padded(least, table.unit),
        padded(greatest, table.unit),
      ]);
      expect(cutOf(table, reading(table, step, -2n))[0]).not.toBe(size);
    },
  );
});
