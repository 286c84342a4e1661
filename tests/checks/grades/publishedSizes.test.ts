import { describe, expect, it } from 'vitest';
import type { Row } from '../../../src/checks/judge/row.ts';
import type { BandName } from '../../../src/documents/limits/bands.ts';
import { type Fraction, fraction, parseDecimal } from '../../../src/quantity/fraction.ts';
import { toBase, unitNamed } from '../../../src/quantity/units.ts';
import { engineIn, type Files, limitsOf, rowsOf, sessionOf } from '../../shopOf.ts';
import { PRINTED, type PrintedRow, type PrintedTable } from './publishedSizes.ts';

/** A shop with the limits of one table, in which a part of some size was read. */
const shopWith = (table: PrintedTable, size: string, limits: string, reading: string): Files => ({
  'e/engine.yaml': engineIn(table.unit),
  'e/limits.yaml': limitsOf(`${table.measure}: { ${limits} }`),
  'e/session.yaml': sessionOf(
    'rebuild',
    `- { measure: ${table.measure}, at: { 1: ${reading} } }`,
    `fitted: { ${table.fitted.replace('SIZE', size)} }\n`,
  ),
});

const bandsOf = ({ min, max, wear }: Omit<PrintedRow, 'size'>): string => {
  const sides = [min && `min: ${min}`, max && `max: ${max}`].filter(Boolean).join(', ');
  return `new: { ${sides} }${wear === undefined ? '' : `, wear: { min: ${wear} }`}`;
};

function judged(
  table: PrintedTable,
  row: PrintedRow,
  limits: string,
  reading = row.min ?? row.max ?? '',
): Row {
  const [found] = rowsOf(shopWith(table, row.size, limits, reading));
  if (found === undefined) throw new Error(`${table.measure} has no row`);
  return found;
}

/** Every length that is printed is a whole number of the base unit. */
function amount(digits: string, unit: 'in' | 'mm'): Fraction {
  const { n, d } = toBase(parseDecimal(digits), unitNamed(unit));
  return fraction(n / d);
}

/** Each printed cell: the band, the side, the digits. */
const cellsOf = ({ min, max, wear }: PrintedRow): readonly (readonly [BandName, 'min' | 'max', string])[] => [
  ...(min === undefined ? [] : [['new', 'min', min] as const]),
  ...(max === undefined ? [] : [['new', 'max', max] as const]),
  ...(wear === undefined ? [] : [['wear', 'min', wear] as const]),
];

const CASES = PRINTED.flatMap((table) =>
  table.rows.map((row) => [`${table.what}, ${row.size} (${table.source})`, { table, row }] as const),
);

describe("a maker's table of service sizes", () => {
  it.each(CASES)('is used as it is stated: %s', (_, { table, row }) => {
    const rows = table.rows.map((each) => `${each.size}: { ${bandsOf(each)} }`).join(', ');
    const { limits } = judged(table, row, `${bandsOf(table.standard)}, sizes: { ${rows} }`);
    for (const [band, side, digits] of cellsOf(row)) {
      expect(limits.bands[band]?.[side]?.amount).toEqual(amount(digits, table.unit));
      expect(limits.inForce.rules[band]).toBe('stated');
    }
  });

  it.each(CASES)('is what the rule makes of its standard row: %s', (_, { table, row }) => {
    const { limits } = judged(table, row, bandsOf(table.standard));
    for (const [band, side, digits] of cellsOf(row)) {
      expect(limits.bands[band]?.[side]?.amount).toEqual(amount(digits, table.unit));
      expect(limits.bands[band]?.[side]?.written).toBe(Number(digits).toFixed(decimalsOf(table, row)));
      expect(limits.inForce.rules[band]).toBe('moved');
    }
  });

  it.each(CASES)('judges: on the printed size, and the smallest step beyond: %s', (_, { table, row }) => {
    const step = table.unit === 'in' ? 0.0001 : 0.001;
    for (const [band, side, digits] of cellsOf(row)) {
      if (band !== 'new') continue;
      const beyond = (Number(digits) + (side === 'min' ? -step : step)).toFixed(4);
      const standard = bandsOf({ ...table.standard });
      expect(judged(table, row, standard, digits).judgement.verdict).toBe('ok');
      expect(judged(table, row, standard, beyond).judgement).toMatchObject({
        verdict: 'out',
        past: { side },
      });
    }
  });

  it('has three cells that are printed wrongly: the rule gives what is meant', () => {
    const wrong = PRINTED.flatMap((table) =>
      table.rows.flatMap((row) => (row.misprint === undefined ? [] : [{ table, row, ...row.misprint }])),
    );
    expect(wrong.map(({ printed }) => printed)).toEqual(['2.996', '2.8444', '62.422']);
    for (const { table, row, cell, printed } of wrong) {
      const limit = judged(table, row, bandsOf(table.standard)).limits.bands.new?.[cell]?.amount;
      expect(limit).toEqual(amount(row[cell] ?? '', table.unit));
      expect(limit).not.toEqual(amount(printed, table.unit));
    }
  });

  it('holds all sizes that are asked for', () => {
    const sizes = new Set(
      PRINTED.flatMap(({ unit, rows }) => rows.map(({ size }) => `${Number.parseFloat(size)} ${unit}`)),
    );
    for (const size of ['0.002 in', '0.003 in', '0.01 in', '0.02 in', '0.03 in'])
      expect(sizes).toContain(size);
    for (const size of ['0.25 mm', '0.5 mm', '1 mm', '1.5 mm']) expect(sizes).toContain(size);
  });
});

/** A moved limit keeps the digits of the standard size. */
const decimalsOf = ({ standard }: PrintedTable, row: PrintedRow): number =>
  Math.max(
    ...cellsOf({ ...standard, size: row.size }).map(([, , digits]) => digits.split('.')[1]?.length ?? 0),
  );

describe('the numbers that stand in limits', () => {
  it('are exact: half of five tenths is not rounded', () => {
    const table = PRINTED.find(({ measure }) => measure === 'main_shell_thickness');
    if (table === undefined) throw new Error('no table of shells');
    const row: PrintedRow = { size: '0.0005 under', min: '0.12475' };
    const { limits } = judged(table, row, bandsOf(table.standard), '0.1249');
    expect(limits.bands.new?.min?.amount).toEqual(amount('0.12475', 'in'));
    expect(limits.bands.new?.min?.written).toBe('0.12475');
  });
});
