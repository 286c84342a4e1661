import { describe, expect, it } from 'vitest';
import { pageOf } from '../../../../src/cli/plan/pages.ts';
import { NO_OFFERS } from '../../../../src/documents/parts/offeredPart.ts';
import { writtenLines } from '../../../../src/output/escape/line.ts';
import { pageLines } from '../../../../src/output/plan/pageText.ts';
import { orderList } from '../../../../src/plan/order/orderList.ts';
import { jobsOf } from '../../../../src/plan/work/jobs.ts';
import { titleOf } from '../../../../src/plan/work/jobTitle.ts';
import { textStyle } from '../../../../src/shell/process/terminal.ts';
import { ENGINE, type Files, limitsOf, REGISTER, reportOf, sessionOf } from '../../../shopOf.ts';
import { contextOf } from '../../planOf.ts';

const LIMITS = `main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 }, last_size: 2.9680 }
main_bearing_clearance: { new: 0.0010 to 0.0020, wear: { max: 0.0030 } }
cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 }, largest_bore: 4.1560 }
rod_housing_bore: { new: 3.0000 to 3.0010 }
head_flatness: { wear: { max: 0.004 } }
piston_diameter: { wear: { min: 4.1200 } }`;

const twice = (block: string): string => `${block}\n${block}\n`;
const MAINS = twice(
  '- { measure: main_journal_diameter, with: mic, at: { 1: 2.9960, 2: 2.9983, 3: 2.9985 } }',
);
const BORES = twice(
  '- { measure: cylinder_bore, with: bore, at: { 1: 4.1315, 2: 4.1255, 3: 4.1255, 4: 4.1255 } }',
);
const AGREED =
  'agreed: { by: Owner, items: [grind main journals, bore cylinders, resize rod housings, surface cylinder head] }\n';

const shop = (blocks: string, more = AGREED, files: Files = {}): Files => ({
  'shop.yaml': 'kind: shop\nunits: { length: in }\n',
  'register.yaml': REGISTER,
  'e/engine.yaml': ENGINE,
  'e/limits.yaml': limitsOf(LIMITS),
  'e/session.yaml': sessionOf('teardown', blocks, more),
  ...files,
});

const titlesOf = (files: Files): readonly string[] => {
  const context = contextOf(files);
  return jobsOf(context).map((job) => `${titleOf(job, context.engine.document)} (${job.urgency})`);
};

const orderedOf = (files: Files): readonly string[] => {
  const context = contextOf(files);
  return orderList(context, jobsOf(context))
    .filter((line) => line.for !== 'opened engine')
    .map(({ count, what, size }) => `${count} ${what} ${size}`);
};

function textOf(files: Files, reader: 'customer' | 'machine-shop' | 'work'): string {
  const report = reportOf(files);
  const style = textStyle({ isTTY: true, columns: 200 }, { NO_COLOR: '1' }, false);
  const choice = reader === 'work' ? {} : { for: reader };
  return writtenLines(pageLines(pageOf(choice, report, report.engine, () => NO_OFFERS).page, style)).replace(
    /\s+/g,
    ' ',
  );
}

const test = (measure: string, outcome: string): string => `- { measure: ${measure}_crack_test, ${outcome} }`;

describe('a part whose crack test failed is renewed, and nothing of it is cut', () => {
  it.each<readonly [string, string, readonly string[]]>([
    ['crankshaft', `${MAINS}${test('crankshaft', 'value: fail')}`, ['renew crankshaft (must)']],
    ['block', `${BORES}${test('block', 'value: fail')}`, ['renew block (must)']],
    [
      'rod',
      `${twice('- { measure: rod_housing_bore, with: fine, at: { 1: 3.0030, 2: 3.0005, 3: 3.0005, 4: 3.0030 } }')}${test('rod', 'at: { 1: pass, 2: pass, 3: pass, 4: fail }')}`,
      ['resize rod housing 1 (must)', 'renew connecting rod 4 (must)'],
    ],
    [
      'head',
      `- { measure: head_flatness, stations: [first, second], directions: [along], at: { all: [[0.006], [0.006]] } }\n${test('head', 'at: { 1: pass, 2: fail, 3: pass, 4: pass }')}`,
      ['renew cylinder head (must)'],
    ],
    [
      'piston',
      test('piston', 'at: { 1: pass, 2: fail, 3: pass, 4: pass }'),
      ['renew piston 2 (must)', 'weigh and balance pistons (must)'],
    ],
  ])('%s', (_, blocks, titles) => expect(titlesOf(shop(blocks))).toEqual(titles));

  it('whatever was seen on it besides', () => {
    const more =
      'found: [{ on: rod 4, is: bent, do: machine }, { on: main journal 3, is: scored, do: machine, depth: 0.001 }]\n';
    const blocks = `${test('rod', 'at: { 1: pass, 2: pass, 3: pass, 4: fail }')}\n${MAINS}${test('crankshaft', 'value: fail')}`;
    expect(titlesOf(shop(blocks, more))).toEqual([
      'renew crankshaft (must)',
      'renew connecting rod 4 (must)',
    ]);
  });

  it('and it says so, with what else was wrong with it', () => {
    const text = textOf(shop(`${MAINS}${test('crankshaft', 'value: fail')}`), 'work');
    expect(text).toContain('crankshaft crack test failed: cracked');
    expect(text).toContain('main journal diameter 1: 2.9960 in, small by 1 thou');
    expect(text).not.toMatch(/under|clean at|grind/);
  });

  it('and the customer reads that it is cracked', () => {
    const files = shop(
      `${MAINS}${test('crankshaft', 'value: fail')}\n${test('rod', 'at: { 1: pass, 2: pass, 3: pass, 4: fail }')}`,
    );
    expect(textOf(files, 'customer')).toContain('Tested: crankshaft is cracked.');
    expect(textOf(files, 'customer')).toContain('Tested: connecting rod 4 is cracked.');
  });

  it('and no machine shop is given any of it, agreed or not', () => {
    const files = shop(`${MAINS}${BORES}${test('crankshaft', 'value: fail')}`);
    expect(textOf(files, 'machine-shop')).toContain('bore cylinders 1 to 4');
    expect(textOf(files, 'machine-shop')).not.toMatch(/crankshaft|journal/);
  });

  it('and a new one is bought, with shells by its journals and none for a cut', () => {
    const loose =
      '- { measure: main_bearing_clearance, with: fine, at: { 1: 0.0050, 2: 0.0015, 3: 0.0015 } }';
    expect(orderedOf(shop(`${MAINS}${loose}\n${test('crankshaft', 'value: fail')}`))).toEqual([
      '1 crankshaft as fitted',
      '3 main shell pairs by the new crankshaft',
      '4 rod shell pairs by the new crankshaft',
    ]);
  });

  it('and no pistons are bought for the bores of a cracked block', () => {
    expect(orderedOf(shop(`${BORES}${test('block', 'value: fail')}`))).toEqual(['1 block as fitted']);
  });

  it('though it was ground already', () => {
    const ground = sessionOf(
      'machined',
      `- { measure: main_journal_diameter, with: mic, at: { 1: 2.9885, 2: 2.9885, 3: 2.9885 } }\n${test('crankshaft', 'value: fail')}`,
      'machined: [{ part: main journals, size: 0.010 under }]\n',
    ).replace(/date: .*/, 'date: 2026-03-01');
    expect(orderedOf(shop(MAINS, AGREED, { 'e/z.yaml': ground }))).toEqual([
      '1 crankshaft as fitted',
      '3 main shell pairs by the new crankshaft',
      '4 rod shell pairs by the new crankshaft',
    ]);
  });

  it('and is no more to be renewed when a later test passes, or another one is in', () => {
    const later = (more: string): string => `kind: session\nstage: machined\ndate: 2026-03-01\n${more}`;
    const passed = later(`readings:\n  ${test('crankshaft', 'value: pass')}\n`);
    const replaced = later('replaced: [{ part: crankshaft }]\n');
    const blocks = test('crankshaft', 'value: fail');
    for (const text of [passed, replaced])
      expect(titlesOf(shop(blocks, '', { 'e/z.yaml': text }))).toEqual([]);
  });

  it('and a yes to grinding is none to renewing it', () => {
    expect(textOf(shop(`${MAINS}${test('crankshaft', 'value: fail')}`), 'customer')).toContain(
      'Please answer again: your yes was to grind main journals.',
    );
  });

  it('but a leak is no crack: whether it is machined or renewed is open', () => {
    expect(titlesOf(shop('- { measure: head_pressure_test, value: fail }'))).toEqual([
      'machine or renew cylinder head (must)',
    ]);
  });
});

describe('a crack test before grinding', () => {
  const isAsked = (blocks: string, files: Files = {}): boolean =>
    titlesOf(shop(blocks, AGREED, files)).some((each) => each.startsWith('crack test crankshaft'));
  const PASSED = test('crankshaft', 'value: pass');

  it('is asked for until one has passed', () => {
    expect(isAsked(MAINS)).toBe(true);
    expect(isAsked(`${MAINS}${PASSED}`)).toBe(false);
  });

  it('is asked for again when journals were ground since', () => {
    const ground = (test: string): Files => ({
      'e/z.yaml': sessionOf(
        'machined',
        `${twice('- { measure: main_journal_diameter, with: mic, at: { 1: 2.9865, 2: 2.9885, 3: 2.9885 } }')}${test}`,
        'machined: [{ part: main journals, size: 0.010 under }]\n',
      ).replace(/date: .*/, 'date: 2026-03-01'),
    });
    expect(isAsked(`${MAINS}${PASSED}`, ground(''))).toBe(true);
    expect(isAsked(`${MAINS}${PASSED}`, ground(PASSED))).toBe(false);
  });

  it('leaves the one after it to be done', () => {
    expect(textOf(shop(`${MAINS}${PASSED}`), 'work')).toContain('then crack test again after grinding');
  });
});

describe('a crankshaft that somebody saw and wants renewed', () => {
  const seen = (is: string, more = ''): string =>
    textOf(shop(`${MAINS}${more}`, `found: [{ on: crankshaft, is: ${is}, do: renew }]\n`), 'work');

  it('is told with the step that is left', () => {
    expect(seen('bent')).toContain('main journals: a step is left, 0.010 under');
  });

  it('is told where none is left', () => {
    expect(
      textOf(
        shop(MAINS.replaceAll('2.9960', '2.9670'), 'found: [{ on: crankshaft, is: bent, do: renew }]\n'),
        'work',
      ),
    ).toContain('main journals: no step is left');
  });

  it('is told where nobody knows how deep it is scored', () => {
    const files = shop(
      MAINS,
      'found: [{ on: crankshaft, is: bent, do: renew }, { on: main journal 2, is: scored, do: machine }]\n',
    );
    expect(textOf(files, 'work')).toContain('main journals: no step is proven');
  });

  it('but a cracked one has no step', () => {
    expect(seen('cracked at pin 2')).not.toContain('step is');
    expect(seen('bent', test('crankshaft', 'value: fail'))).not.toContain('step is');
  });
});
