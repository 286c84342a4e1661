import { describe, expect, it } from 'vitest';
import { pageOf } from '../../../../src/cli/plan/pages.ts';
import { NO_OFFERS } from '../../../../src/documents/parts/offeredPart.ts';
import { writtenLines } from '../../../../src/output/escape/line.ts';
import { pageLines } from '../../../../src/output/plan/pageText.ts';
import { textStyle } from '../../../../src/shell/process/terminal.ts';
import { type Files, reportOf, sessionOf } from '../../../shopOf.ts';
import { jobsIn } from '../../planOf.ts';
import { veeEngine } from '../../veeEngine.ts';

const LIMITS = `compression_pressure: { new: 11.0 to 13.5, wear: { min: 9.0 } }
compression_share: { wear: { min: 85 } }
cylinder_bore: { new: 89.000 to 89.020, wear: { max: 89.080 } }
oil_pressure_idle: { wear: { min: 1.0 } }`;
const COMPRESSION =
  '- { measure: compression_pressure, at: { 1: 11.4, 2: 10.2, 3: 11.1, 4: 11.2, 5: 8.1, 6: 11.4 } }';
const BORES = (fifth: string): string =>
  `- { measure: cylinder_bore, at: { 1: 89.01, 2: 89.01, 3: 89.01, 4: 89.01, 5: ${fifth}, 6: 89.01 } }`;
const WEAK = `${COMPRESSION}\n- { measure: oil_pressure_idle, value: 0.6 }`;

const engine = (stage: string, blocks: string, more: Files = {}): Files =>
  veeEngine(LIMITS, { 'e/a.yaml': sessionOf(stage, blocks), ...more });

const names = (files: Files): readonly string[] =>
  jobsIn(files).flatMap(({ name, serves }) => (serves === undefined ? [name] : []));

const CAUSES = [
  'find the cause of compression pressure',
  'find the cause of oil pressure, idling',
  'find the cause of lowest compression',
];

function textOf(files: Files, customer: boolean): string {
  const report = reportOf(files);
  const { page } = pageOf(customer ? { for: 'customer' } : {}, report, report.engine, () => NO_OFFERS);
  const style = textStyle({ isTTY: true, columns: 200 }, { NO_COLOR: '1' }, false);
  return writtenLines(pageLines(page, style)).replace(/\s+/g, ' ');
}

describe('what an engine showed before it was taken apart', () => {
  const taken = engine('teardown', `${WEAK}\n${BORES('89.12')}`);

  it('is no work of its own beside what is found in it', () => {
    expect(names(taken)).toEqual(['bore cylinders']);
    expect(names(engine('teardown', `${WEAK.replace('6: 11.4', '6: ~')}\n${BORES('89.12')}`))).toEqual([
      'bore cylinders',
    ]);
  });

  it.each([false, true])('is said on the plan and to the customer as what was seen: %s', (customer) => {
    const text = textOf(taken, customer);
    expect(text).toMatch(/before it was taken apart/);
    expect(text).toMatch(/compression pressure 5(: | is )8\.1 bar/);
    expect(text).toMatch(/oil pressure, idling(: | is )0\.6 bar/);
    expect(text).not.toContain('find the cause');
    if (customer) expect(text).toContain('We found 1 job that must be done.');
  });

  it('has no cause found where nothing else is to be done', () => {
    expect(names(engine('teardown', `${WEAK}\n${BORES('89.01')}`)).toSorted()).toEqual(CAUSES.toSorted());
  });

  it('is a fault with a cause to be found in an engine that runs', () => {
    expect(names(engine('service', `${WEAK}\n${BORES('89.12')}`))).toEqual(expect.arrayContaining(CAUSES));
  });

  it('and is one again when it is measured after the rebuild', () => {
    const later = (pressure: string): Files => ({
      'e/z.yaml': sessionOf(
        'rebuild',
        `${COMPRESSION.replace('10.2', '11.2').replace('8.1', pressure)}\n${BORES('89.01')}`,
        'replaced: [{ part: cylinders }]\n',
      ).replace('02-03', '03-03'),
    });
    const rebuilt = (pressure: string): Files =>
      engine('teardown', `${WEAK}\n${BORES('89.12')}`, later(pressure));
    expect(names(rebuilt('8.1'))).toContain('find the cause of compression pressure');
    expect(names(rebuilt('11.4'))).not.toContain('find the cause of compression pressure');
  });
});
