import { describe, expect, it } from 'vitest';
import { planPage } from '../../../src/output/plan/planPage.ts';
import { workPlan } from '../../../src/plan/work/workPlan.ts';
import { ENGINE, limitsOf, REGISTER, reportOf, sessionOf } from '../../shopOf.ts';

const LIMITS = `main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 } }
crankpin_diameter: { new: 2.4980 to 2.4990, wear: { min: 2.4970 } }
cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 }, largest_bore: 4.1300 }`;

function pageOf(blocks: string, { shop = '', register = REGISTER } = {}) {
  const { engine, registry, state } = reportOf({
    'shop.yaml': `kind: shop\nunits: { length: in }\n${shop}`,
    'register.yaml': register,
    'e/engine.yaml': ENGINE,
    'e/limits.yaml': limitsOf(LIMITS),
    'e/session.yaml': sessionOf('teardown', blocks),
  });
  if (state === undefined) throw new Error('no session');
  return planPage(workPlan(engine, registry, state));
}

const mains = (first: string, third: string): string =>
  `- { measure: main_journal_diameter, with: mic, at: { 1: ${first}, 2: 2.9983, 3: ${third} } }`;
const BORES =
  '- { measure: cylinder_bore, with: bore, at: { 1: 4.1255, 2: 4.1280, 3: 4.1320, 4: 4.1285 } }\n'.repeat(2);
/** Two figures swapped: the check says so. */
const SLIP = '2.9895';
const GUARDED = 'decision_rule: guarded\n';

describe('the answer of a plan', () => {
  it('names the places of what must be done to some and should be to others', () => {
    expect(pageOf(BORES).answer).toEqual(['must: renew cylinder 3', 'should: renew cylinders 2, 4']);
  });

  it('names no places of what is done once', () => {
    const { answer } = pageOf(mains('2.9965', '2.9985').concat('\n').repeat(2));
    expect(answer).toEqual(['must: grind main journals']);
  });

  it('names what is measured, and what is measured again', () => {
    const pins = '- { measure: crankpin_diameter, with: mic, at: { 1: 2.4985, 2: ~, 3: ~, 4: 2.4985 } }';
    expect(pageOf(`${mains('2.9970', SLIP)}\n${pins}`, { shop: GUARDED }).answer).toEqual([
      'must: measure crankpin diameter 2, 3; measure again main journal diameter 1, 3',
    ]);
  });
});

it('what one finding says of several parts is told once, and the next job names the first', () => {
  const ground = [1, 2].map(
    () =>
      '- { measure: main_journal_diameter, with: mic, at: { 1: 2.9885, 2: 2.9884, 3: 2.9885 } }\n- { measure: crankpin_diameter, with: mic, at: { 1: 2.4785, 2: 2.4785, 3: 2.4785, 4: 2.4785 } }',
  );
  const stated = pageOf(ground.join('\n')).jobs.filter(({ title }) => title.startsWith('state the size'));
  expect(stated.map(({ title, why }) => [title, why.map((each) => each.slice(0, 80))])).toEqual([
    [
      'state the size of main journals 1 to 3',
      ['main journal diameter 1, 2, 3; crankpin diameter 1, 2, 3, 4: of another size, an'],
    ],
    ['state the size of crankpins 1 to 4', ['as for state the size of main journals']],
  ]);
});

describe('what is measured again', () => {
  const jobOf = (...said: Parameters<typeof pageOf>) => {
    const job = pageOf(...said).jobs.find(({ title }) => title.startsWith('measure again'));
    return { title: job?.title, why: job?.why, follows: job?.follows };
  };
  const SAME =
    'mend a figure that was wrong; one that reads the same in a second block or a later session is believed';

  it('says of a slip with what it is read again, and what settles it', () => {
    const { title, why, follows } = jobOf(mains('2.9985', SLIP));
    expect(title).toBe('measure again main journal diameter 3');
    expect(why).toHaveLength(1);
    expect(why?.[0]).toMatch(/^main journal diameter 3: .*written 2\.9895/);
    expect(follows).toEqual(['read again with mic', SAME]);
  });

  it('names no instrument where the register has none for it', () => {
    const { follows } = jobOf(mains('2.9985', SLIP).replace('with: mic, ', ''), {
      register: REGISTER.replace(/ {2}mic:.*\n/, ''),
    });
    expect(follows).toEqual(['read again', SAME]);
  });

  it('says of what cannot be that the figure is to be mended', () => {
    expect(jobOf(mains('2.9985', '-2.9985')).follows).toEqual([
      'read again with mic',
      'mend the figure that cannot be',
    ]);
  });

  it('says of a part that fits another size that its size is to be stated', () => {
    const ground = mains('2.9785', '2.9785').replace('2.9983', '2.9785');
    const [job, ...others] = pageOf(ground).jobs;
    expect(others).toEqual([]);
    expect(job?.title).toBe('state the size of main journals 1 to 3');
    expect(job?.follows).toEqual(['state the size that is stamped on the part: machined: or fitted:']);
  });

  it('names each figure where they are read with different instruments', () => {
    const bores =
      '- { measure: cylinder_bore, with: bore, at: { 1: 4.1255, 2: 4.1255, 3: 4.1525, 4: 4.1255 } }';
    expect(jobOf(`${mains('2.9985', SLIP)}\n${bores}`).follows).toEqual([
      'read again with mic: main journal diameter 3',
      'read again with fine and mic: cylinder bore 3',
      SAME,
    ]);
  });

  it('says of many of one figure the reason of the first, and where the others are', () => {
    const pins =
      '- { measure: crankpin_diameter, with: mic, at: { 1: 2.4958, 2: 2.4957, 3: 2.4956, 4: 2.4889 } }';
    const { why } = jobOf(pins);
    expect(why).toHaveLength(1);
    expect(why?.[0]).toMatch(/^crankpin diameter 1: .*; also in doubt: 2 to 4$/);
  });

  it('has a title with each figure and its places', () => {
    const pins =
      '- { measure: crankpin_diameter, with: mic, at: { 1: 2.4970, 2: 2.4985, 3: 2.4985, 4: 2.4985 } }';
    expect(jobOf(`${mains('2.9985', SLIP)}\n${pins}`, { shop: GUARDED }).title).toBe(
      'measure again crankpin diameter 1, main journal diameter 3',
    );
  });
});

it('what is cut with the others is told apart by whether nobody measured it or its reading is in doubt', () => {
  const answersTo = (blocks: string): string =>
    pageOf(blocks)
      .jobs.flatMap(({ cuts }) => cuts.flatMap(({ answer }) => answer))
      .join('\n');
  const doubted = answersTo(mains('2.9965', SLIP));
  expect(doubted).toContain('main journal 3: its reading is in doubt; measure it again before grinding');
  expect(doubted).not.toContain('not measured');
  const left = answersTo(mains('2.9965', '~'));
  expect(left).toContain('main journal 3 not measured: it may need more');
  expect(left).not.toContain('again');
});
