import { describe, expect, it } from 'vitest';
import { pageOf } from '../../../src/cli/plan/pages.ts';
import { NO_OFFERS } from '../../../src/documents/parts/offeredPart.ts';
import { writtenLines } from '../../../src/output/escape/line.ts';
import { pageLines } from '../../../src/output/plan/pageText.ts';
import { textStyle } from '../../../src/shell/process/terminal.ts';
import { ENGINE, type Files, limitsOf, REGISTER, reportOf, sessionOf } from '../../shopOf.ts';

const LIMITS = `main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 } }
main_bearing_clearance: { new: 0.0010 to 0.0030 }
main_shell_thickness: { new: 0.1240 to 0.1250, wear: { min: 0.1235 } }`;
const twice = (block: string): string => `${block}\n${block}\n`;
const TEARDOWN = twice(
  '- { measure: main_journal_diameter, with: mic, at: { 1: 2.9960, 2: 2.9983, 3: 2.9983 } }\n- { measure: main_shell_thickness, with: mic, at: { 1: 0.1245, 2: 0.1245, 3: 0.1245 } }',
);
const BACK = sessionOf(
  'machined',
  '- { measure: main_journal_diameter, with: mic, at: { 1: 2.9885, 2: 2.9885, 3: 2.9885 } }',
  'machined: [{ part: main journals, size: 0.010 under }]\n',
).replace(/date: .*/, 'date: 2026-02-10');

function pageFor(teardown: string, more = '', files: Files = {}): string {
  const report = reportOf({
    'shop.yaml': 'kind: shop\nunits: { length: in }\n',
    'register.yaml': REGISTER,
    'e/engine.yaml': ENGINE,
    'e/limits.yaml': limitsOf(LIMITS),
    'e/session.yaml': sessionOf('teardown', teardown, more),
    ...files,
  });
  const style = textStyle({ isTTY: true, columns: 200 }, { NO_COLOR: '1' }, false);
  const { page } = pageOf({ for: 'customer' }, report, report.engine, () => NO_OFFERS);
  return writtenLines(pageLines(page, style)).replace(/\s+/g, ' ');
}

describe('the page for the customer', () => {
  it('counts jobs, and says so', () => {
    expect(pageFor(TEARDOWN)).toContain('We found 1 job that must be done.');
    const found = 'found: [{ on: piston 1, is: cracked, do: renew }]\n';
    expect(pageFor(TEARDOWN, found)).toContain('We found 2 jobs that must be done.');
  });

  it('asks for no price for what the shop has to measure', () => {
    const page = pageFor(TEARDOWN.replaceAll('3: 2.9983', '3: ~'));
    expect(page).toContain('We found 1 job that must be done.');
    expect(page).not.toMatch(/\d measure/);
  });

  it('asks for nothing again that comes with a cut which is done', () => {
    expect(pageFor(TEARDOWN, '', { 'e/z.yaml': BACK })).toContain(
      'Nothing needs your answer: what is left to do is our own, or comes with what you have agreed to.',
    );
  });

  it('asks for what was seen on other parts alone: shells of ground journals are new in any case', () => {
    const found = 'found: [{ on: [main shell 2, rod shell 2], is: wiped, do: renew }]\n';
    const page = pageFor(TEARDOWN, found, { 'e/z.yaml': BACK });
    expect(page).toContain('1 renew rod shell 2');
    expect(page).not.toContain('main shell');
  });
});
