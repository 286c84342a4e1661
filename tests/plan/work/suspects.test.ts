import { describe, expect, it } from 'vitest';
import { jobWords } from '../../../src/output/plan/jobWords.ts';
import { jobsOf } from '../../../src/plan/work/jobs.ts';
import { titleOf } from '../../../src/plan/work/jobTitle.ts';
import { unitNamed } from '../../../src/quantity/units.ts';
import { ENGINE, type Files, limitsOf, REGISTER, sessionOf } from '../../shopOf.ts';
import { contextOf, jobCalled, jobsIn } from '../planOf.ts';

const LIMITS = `main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 } }
main_housing_bore: { new: 3.2500 to 3.2510 }`;

const shop = (blocks: string, more: Files = {}): Files => ({
  'shop.yaml': 'kind: shop\nunits: { length: in }\n',
  'register.yaml': REGISTER,
  'e/engine.yaml': ENGINE,
  'e/limits.yaml': limitsOf(LIMITS),
  'e/session.yaml': sessionOf('teardown', blocks),
  ...more,
});

const mains = (third: string, first = '2.9985'): string =>
  `- { measure: main_journal_diameter, with: mic, at: { 1: ${first}, 2: 2.9983, 3: ${third} } }`;

/** Two figures swapped: the check says so. */
const SLIP = '2.9895';

const names = (files: Files): readonly string[] => jobsIn(files).map(({ name }) => name);

describe('a reading that the check takes for a slip', () => {
  it('is measured again, for the reason that the check gives, and cuts nothing', () => {
    expect(names(shop(mains(SLIP)))).toEqual(['measure again']);
    const [suspect, ...others] = jobCalled('measure again', shop(mains(SLIP))).suspects;
    expect(others).toEqual([]);
    expect(suspect?.why).toMatch(/^main journal diameter 3: .*written 2\.9895/);
  });

  it('is measured again beside another that is undecided', () => {
    const guarded = { 'shop.yaml': 'kind: shop\nunits: { length: in }\ndecision_rule: guarded\n' };
    const { rows, suspects } = jobCalled('measure again', shop(mains(SLIP, '2.9970'), guarded));
    expect([rows.length, suspects.length]).toEqual([1, 1]);
  });

  it('leaves the others to their own step, and its place is one that nobody measured', () => {
    const job = jobCalled('grind main journals', shop(mains(SLIP, '2.9965')));
    expect(job.cut?.unmeasured.map(({ name }) => name)).toEqual(['3']);
    expect(job.cut?.groups[0]?.deciding.position.name).toBe('1');
  });

  it('is one of each journal that came back ground without its size: what was seen before cuts nothing', () => {
    const scored = sessionOf(
      'teardown',
      mains('2.9985'),
      'found: [{ on: main journal 2, is: scored, do: machine }]\n',
    );
    const back = (machined: string): Files =>
      shop('', {
        'e/session.yaml': scored,
        'e/later.yaml': sessionOf(
          'machined',
          '- { measure: main_journal_diameter, with: mic, at: { 1: 2.9785, 2: 2.9785, 3: 2.9785 } }',
          machined,
        ).replace(/date: .*/, 'date: 2026-03-01'),
      });
    expect(names(shop('', { 'e/session.yaml': scored }))).toContain('grind main journals');
    expect(names(back(''))).toEqual(['state the size of main journals']);
    const context = contextOf(back(''));
    const [job] = jobsOf(context);
    expect(job && titleOf(job, context.engine.document)).toBe('state the size of main journals 1 to 3');
    expect(job?.suspects[0]?.why).toContain('write `machined: [{ part: main journals, size: 0.020 under }]`');
    expect(job && jobWords(job, [], context.engine, () => unitNamed('in')).follows).toEqual([
      'state the size that is stamped on the part: machined: or fitted:',
    ]);
    // Of what was ground the crack test is left.
    expect(names(back('machined: [{ part: main journals, size: 0.020 under }]\n'))).toEqual(['measure']);
  });

  it('decides nothing of what is worked out from it either', () => {
    const limits = limitsOf(`${LIMITS}\nmain_bearing_clearance: { new: 0.0010 to 0.0030 }`);
    const bore = '- { measure: main_bearing_bore, with: bore, at: { 1: 3.0005, 2: 3.0003, 3: 3.0004 } }';
    const withBore = (third: string): Files => shop(`${mains(third)}\n${bore}`, { 'e/limits.yaml': limits });
    expect(names(withBore('2.9972'))).toContain('choose main shells');
    expect(names(withBore(SLIP))).toEqual(['measure again']);
  });

  it.each([
    ['reads the same', SLIP, SLIP, true],
    ['reads a tenth more, within what both are known to', SLIP, '2.9896', true],
    ['reads three tenths more, which the micrometer tells apart', SLIP, '2.9898', false],
    ['reads what is impossible again', '-2.9895', '-2.9895', false],
  ])('whose second reading in its session %s is believed or not', (_, first, second, isBelieved) => {
    const found = names(shop(`${mains(first)}\n${mains(second)}`));
    expect(found.includes('grind main journals')).toBe(isBelieved);
    expect(found.includes('measure again')).toBe(!isBelieved);
  });

  it.each([
    ['reads the same', SLIP],
    ['reads the same within what both are known to', '2.9896'],
  ])('is believed once a later session %s', (_, again) => {
    const later = sessionOf('teardown', mains(again))
      .replace('stage: teardown', 'stage: machined')
      .replace(/date: .*/, 'date: 2026-02-04');
    expect(names(shop(mains(SLIP), { 'e/later.yaml': later }))).toContain('grind main journals');
  });
});
