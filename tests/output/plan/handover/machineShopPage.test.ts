import { describe, expect, it } from 'vitest';
import { pageOf } from '../../../../src/cli/plan/pages.ts';
import { NO_OFFERS } from '../../../../src/documents/parts/offeredPart.ts';
import { writtenLines } from '../../../../src/output/escape/line.ts';
import { pageLines } from '../../../../src/output/plan/pageText.ts';
import { textStyle } from '../../../../src/shell/process/terminal.ts';
import { jobsIn } from '../../../plan/planOf.ts';
import { veeEngine } from '../../../plan/veeEngine.ts';
import { type Files, reportOf, sessionOf } from '../../../shopOf.ts';

const HEAD = `valve_guide_bore: { new: 6.000 to 6.015 }
valve_seat_runout: { new: { max: 0.03 } }
head_flatness: { new: { max: 0.05 }, wear: { max: 0.10 } }
head_thickness: { new: 131.95 to 132.05, least_thickness: 131.75 }`;
const WORN = `- { measure: valve_guide_bore, at: { 1: { I: 6.010, E: 6.080 } } }
- { measure: head_flatness, at: { L: 0.13, R: 0.03 } }
- { measure: head_thickness, at: { L: 131.98, R: 131.99 } }`;
const SEAT = 'found: [{ on: valve seat 1 E, is: burnt, do: renew }]\n';

const yes = (items: string): string => `agreed: { by: Owner, date: 2026-02-05, items: [${items}] }\n`;

const shop = (more: string, limits = HEAD, readings = WORN): Files =>
  veeEngine(limits, { 'e/a.yaml': sessionOf('teardown', readings, more) });

function pageFor(files: Files): string {
  const report = reportOf(files);
  const { page } = pageOf({ for: 'machine-shop' }, report, report.engine, () => NO_OFFERS);
  const style = textStyle({ isTTY: true, columns: 200 }, { NO_COLOR: '1' }, false);
  return writtenLines(pageLines(page, style)).replace(/[ \t]+/g, ' ');
}

const WORK = 'renew valve guide 1 E, renew valve seat 1 E, surface cylinder head';

describe('what is pressed in at a machine shop', () => {
  it('stands on its page in the order of work: guides, seats, the face of the head', () => {
    const page = pageFor(shop(SEAT + yes(WORK)));
    const lines = page.split('\n').map((each) => each.trim());
    expect(lines.filter((each) => /^(renew|surface)/.test(each))).toEqual(`${WORK} L`.split(', '));
    expect(page).toContain('hold valve guide bore 6.000 to 6.015 mm');
    expect(page).toContain('[ ] seat cut true to the new guide');
    expect(page).not.toContain('as for renew');
  });

  it('has room for one figure of each place', () => {
    const limits = `${HEAD}\nvalve_stem_clearance: { new: 0.015 to 0.045 }`;
    const stems = '- { measure: valve_stem_clearance, at: { 1: { I: 0.030, E: 0.110 } } }';
    const page = pageFor(shop(yes('renew valve guide 1 E'), limits, `${WORN}\n${stems}`));
    expect(page.match(/1 E _+/g)).toHaveLength(1);
  });

  it('is done in that order here', () => {
    const names = jobsIn(shop(SEAT)).map(({ name }) => name);
    expect(names.filter((each) => /valve|head/.test(each))).toEqual([
      'renew valve guides',
      'renew valve seats',
      'surface cylinder head L',
    ]);
  });

  it('waits for a yes there as all else', () => {
    expect(pageFor(shop(SEAT + yes('surface cylinder head')))).toMatch(
      /not agreed yet, not to be done\s+- renew valve guide 1 E\s+- renew valve seat 1 E/,
    );
  });

  it.each([
    ['renew cylinder 2', '{ on: cylinder 2, is: split, do: renew }', true],
    ['renew small end bush 4', '{ on: small end bush 4, is: loose, do: renew }', true],
    ['renew main shell 2', '{ on: main shell 2, is: wiped, do: renew }', false],
    ['renew valve spring 1 E', '{ on: valve spring 1 E, is: broken, do: renew }', false],
  ])('is told from what is done here: %s', (work, found, isThere) => {
    const page = pageFor(shop(`found: [${found}]\n${yes(work)}`));
    expect(page.includes(`\n${work}`)).toBe(isThere);
  });

  it('and so is what the program knows no part for, by its name', () => {
    const found = 'found: [{ on: exhaust manifold, is: warped, do: machine }]\n';
    const sent =
      'sent: { part: exhaust manifold, mark: M7, to: North grinding, work: [machine exhaust manifold] }\n';
    const page = pageFor(shop(`${found}${yes('machine exhaust manifold')}${sent}`));
    expect(page).toContain('exhaust manifold; only what the customer agreed to stands here');
    expect(page).toContain('exhaust manifold, marked M7\n - to North grinding');
    expect(page).toContain('\nmachine exhaust manifold\n - exhaust manifold: warped');
  });

  it('is no wet liner, which stands out of the deck and is put in by hand', () => {
    const more = `found: [{ on: cylinder 2, is: split, do: renew }]\n${yes('renew cylinder 2')}`;
    expect(pageFor(shop(more, `${HEAD}\nliner_protrusion: { new: 0.03 to 0.08 }`))).not.toContain(
      'renew cylinder',
    );
  });
});

describe('a head that is surfaced', () => {
  const page = (limits: string): string =>
    pageFor(shop(yes('surface cylinder head'), `head_flatness: { wear: { max: 0.10 } }\n${limits}`));

  it('is held to the least that limits state, with what may still come off', () => {
    const text = page('head_thickness: { new: 131.95 to 132.05, least_thickness: 131.75 }');
    expect(text).toContain('hold head thickness at least 131.75 mm');
    expect(text).toContain('head thickness L: 131.98 mm, 0.23 mm may still be cut (last min 131.75)');
    expect(text).toContain('- finish ________ (by the manual)');
    expect(text).not.toMatch(/131\.95|132\.05|least height/);
  });

  it('has room for the least height where no document states it, and is held to no thickness of a new one', () => {
    const text = page('head_thickness: { new: 131.95 to 132.05 }');
    expect(text).toContain('least height ________ finish ________ (by the manual)');
    expect(text).not.toMatch(/131\.95|132\.05/);
  });
});
