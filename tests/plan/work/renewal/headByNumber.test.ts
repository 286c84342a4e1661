import { describe, expect, it } from 'vitest';
import { NO_OFFERS } from '../../../../src/documents/parts/offeredPart.ts';
import { orderList } from '../../../../src/plan/order/orderList.ts';
import { jobsOf } from '../../../../src/plan/work/jobs.ts';
import { titleOf } from '../../../../src/plan/work/jobTitle.ts';
import { type Files, limitsOf, REGISTER, reportOf, sessionOf } from '../../../shopOf.ts';
import { contextOf } from '../../planOf.ts';

const engine = (layout: string): string =>
  `kind: engine\nname: Bench engine\nunits: { length: in, torque: lbf in }\nlayout: { ${layout}, mains: 3, crankpins: 4 }\n`;
const IN_LINE = engine('cylinders: 4, valves: [I, E]');
const VEE = engine('cylinders: 4, valves: [I, E], banks: { L: [1, 2], R: [3, 4] }');
const NUMBERED = engine('cylinders: 4, valves: [I, E], banks: { 1: [1, 2], 2: [3, 4] }');

const shop = (of: string, found: string, guides = '', later: Files = {}): Files => ({
  'register.yaml': REGISTER,
  'e/engine.yaml': of,
  'e/limits.yaml': limitsOf('valve_guide_bore: { new: 0.3440 to 0.3450, wear: { max: 0.3460 } }'),
  'e/session.yaml': sessionOf(
    'teardown',
    `- { measure: valve_guide_bore, with: bore, at: { 1I: 0.3444, 3E: 0.3444${guides} } }`,
    `found: [${found}]\n`,
  ),
  ...later,
});

function titlesOf(files: Files): readonly string[] {
  const context = contextOf(files);
  return jobsOf(context)
    .filter(({ operation }) => !operation.startsWith('measure'))
    .map((job) => titleOf(job, context.engine.document));
}

describe('a cylinder head that is called by a number or a bank', () => {
  it.each([
    ['of a cylinder', IN_LINE, 'head 1', ['renew cylinder head 1']],
    ['of a cylinder, in full', IN_LINE, 'cylinder head 3', ['renew cylinder head 3']],
    ['of a bank', VEE, 'head L', ['renew cylinder head L']],
    ['of two', IN_LINE, '[head 1, head 3]', ['renew cylinder head 1, 3']],
    ['of none', IN_LINE, 'head', ['renew cylinder head']],
  ])('%s is renewed, and not what is in it', (_, of, on, titles) =>
    expect(titlesOf(shop(of, `{ on: ${on}, is: cracked, do: renew }`))).toEqual(titles),
  );

  it.each([
    ['what is worn in it', ', 1E: 0.3475', ['renew cylinder head 1']],
    ['nothing of another', ', 2E: 0.3475', ['renew valve guide 2 E', 'renew cylinder head 1']],
  ])('takes along %s', (_, guides, titles) =>
    expect(titlesOf(shop(IN_LINE, '{ on: head 1, is: cracked, do: renew }', guides))).toEqual(titles),
  );

  it.each([
    ['its bank, where banks have numbers', NUMBERED, ['renew cylinder head 2']],
    ['its cylinder, where they have none', IN_LINE, ['renew valve guide 3 I', 'renew cylinder head 2']],
  ])('is that of %s', (_, of, titles) => {
    const guides = ', 3I: 0.3475';
    const files = shop(of, '{ on: head 2, is: cracked, do: renew }', guides);
    expect(
      titlesOf({ ...files, 'e/session.yaml': `${files['e/session.yaml']}`.replace('3E: 0.3444, ', '') }),
    ).toEqual(titles);
  });

  it('is agreed to by its number', () => {
    const files = shop(IN_LINE, '{ on: head 1, is: cracked, do: machine }');
    const agreed = (items: string): Files => ({
      ...files,
      'e/session.yaml': `${files['e/session.yaml']}agreed: [{ by: Owner, items: [${items}] }]\n`,
    });
    expect(titlesOf(files)).toEqual(['machine cylinder head 1']);
    expect(titlesOf(agreed('renew head 1'))).toEqual(['renew cylinder head 1']);
    expect(titlesOf(agreed('renew cylinder head'))).toEqual(['renew cylinder head 1']);
    expect(titlesOf(agreed('renew head 2'))).toEqual(['machine cylinder head 1']);
  });

  it('is bought as often as it is named', () => {
    const context = contextOf(shop(IN_LINE, '{ on: [head 1, head 3], is: cracked, do: renew }'));
    const heads = orderList(context, jobsOf(context), NO_OFFERS).filter(({ what }) => /head/.test(what));
    expect(heads.map(({ what, count }) => `${count} ${what}`)).toEqual(['2 cylinder heads']);
  });

  it.each([
    ['it was replaced', 'head 1', 0],
    ['all of them were', 'head', 0],
    ['another was', 'head 2', 1],
  ])('is settled where %s', (_, replaced, open) => {
    const later = `kind: session\nstage: rebuild\ndate: 2026-02-04\nreplaced: [{ part: ${replaced} }]\n`;
    const files = shop(IN_LINE, '{ on: cylinder head 1, is: cracked, do: renew }', '', { 'e/z.yaml': later });
    const findings = reportOf(files).state?.findings ?? [];
    expect(findings.filter(({ code }) => code === 'found/open')).toHaveLength(open);
  });
});
