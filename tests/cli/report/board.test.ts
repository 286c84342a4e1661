import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { expect, it } from 'vitest';
import { inCopyOf } from '../../replay.ts';
import { call } from '../call.ts';
import { shown } from './page.ts';

const inShop = <Result>(act: (folder: string) => Promise<Result>): Promise<Result> =>
  inCopyOf('examples', act);

/** Of some engines alone, since every page of a board takes its time. */
const inShopOf = <Result>(
  engines: readonly string[],
  act: (folder: string) => Promise<Result>,
): Promise<Result> =>
  inShop((folder) => {
    for (const engine of readdirSync(join(folder, 'engines')))
      if (!engines.includes(engine)) rmSync(join(folder, 'engines', engine), { recursive: true });
    return act(folder);
  });

const SMALL = ['reservoir-pump-2'];

/** The board as it is written, and the engines of its rows. */
async function boardOf(folder: string, ...words: readonly string[]) {
  const { err, exit } = await call(folder, ['report', '--all', '--to', 'board', ...words]);
  const html = readFileSync(join(folder, 'board/index.html'), 'utf8');
  return {
    err,
    exit,
    html,
    rows: [...html.matchAll(/<tr data-engine="([^"]*)">([\s\S]*?)<\/tr>/g)].map(([, engine, cells = '']) => ({
      engine,
      text: shown(cells),
      page: /href="([^"]*)"/.exec(cells)?.[1],
    })),
  };
}

it('leads to a page of every engine, the most urgent first', () =>
  inShop(async (folder) => {
    rmSync(join(folder, 'engines/generator-set-6/sessions/2026-05-13-rebuild.yaml'));
    rmSync(join(folder, 'engines/generator-set-6/sessions/2026-05-06-trial.yaml'));
    const { rows, exit, html } = await boardOf(folder);
    expect(exit).toBe(0);
    expect(rows.map(({ engine }) => engine)).toHaveLength(4);
    expect(rows.at(-1)?.text).toMatch(/Drainage pump 8/);
    for (const { page, engine } of rows) {
      expect(page).toBe(`${engine}.html`);
      expect(existsSync(join(folder, 'board', `${engine}.html`))).toBe(true);
    }
    expect(html).not.toMatch(/https?:|<img|src=/);
  }));

/** Where a page leads, by the paths of the files that it leads to. */
const ledTo = (folder: string, page: string): readonly string[] =>
  [...readFileSync(join(folder, page), 'utf8').matchAll(/href="([^"]*)"/g)].map(([, address = '']) =>
    posix.join(posix.dirname(page), decodeURIComponent(address)),
  );

it('has a page of every part with a mark, that its engines lead to and that leads back', () =>
  inShopOf(['generator-set-6', 'drainage-pump-8'], async (folder) => {
    const session = join(folder, 'engines/drainage-pump-8/sessions/2026-06-09-trial.yaml');
    writeFileSync(session, readFileSync(session, 'utf8').replace('mark: D8-2', 'mark: "k 7/<b>"'));
    mkdirSync(join(folder, 'shelf'));
    writeFileSync(
      join(folder, 'shelf/crank.yaml'),
      'kind: part\npart: crankshaft\nmark: K9\nlies: rack 3\nfits: [Drainage pump 8]\n',
    );
    const { html, err } = await boardOf(folder);
    expect(err).toBe('');
    const pages = readdirSync(join(folder, 'board/parts')).map((each) => `board/parts/${each}`);
    expect(pages).toEqual([
      'board/parts/crankshaft-G6-1.html',
      'board/parts/crankshaft-K9.html',
      expect.stringMatching(/^board\/parts\/crankshaft-k-7-b-_[\da-f]{12}\.html$/),
    ]);
    expect(shown(html)).toMatch(/parts by their marks .*crankshaft G6-1 .*crankshaft K9 rack 3 .*k 7\/<b>/);
    const [six = '', shelf = ''] = pages;
    expect(ledTo(folder, 'board/engines/generator-set-6.html')).toContain(six);
    expect(ledTo(folder, six)).toEqual(['board/index.html', 'board/engines/generator-set-6.html']);
    expect(ledTo(folder, shelf)).toEqual(['board/index.html']);
    const written = [
      'index.html',
      ...readdirSync(join(folder, 'board/engines')).map((each) => `engines/${each}`),
    ];
    for (const page of [...written.map((each) => `board/${each}`), ...pages])
      expect(ledTo(folder, page).filter((each) => !existsSync(join(folder, each)))).toEqual([]);
    const { out } = await call(folder, ['part', 'G6-1', '--format', 'json']);
    const page = shown(readFileSync(join(folder, six), 'utf8'));
    const told = JSON.parse(out).pages[0].sections as { title: string; lines: string[] }[];
    expect(told.length).toBeGreaterThan(3);
    expect(page).toMatch(/crankshaft crack test day 2026-05-06 trial sound/);
    for (const { title, lines } of told)
      for (const text of [title, ...lines]) expect(page).toContain(text.replaceAll(/\s+/g, ' '));
  }));

it('is not written where two pages would be one file', () =>
  inShopOf(SMALL, async (folder) => {
    renameSync(join(folder, 'engines/reservoir-pump-2'), join(folder, 'Index'));
    const limits = join(folder, 'Index/limits.yaml');
    writeFileSync(limits, readFileSync(limits, 'utf8').replace('../../limits/', '../limits/'));
    const { exit, err } = await call(folder, ['report', '--all', '--to', 'board']);
    expect([exit, err]).toEqual([2, expect.stringContaining('two engines would have the page index.html')]);
  }));

it('says for whom an engine waits, and since when', () =>
  inShopOf(['generator-set-6'], async (folder) => {
    for (const session of ['2026-04-24-machined', '2026-05-06-trial', '2026-05-13-rebuild'])
      rmSync(join(folder, `engines/generator-set-6/sessions/${session}.yaml`));
    const path = join(folder, 'engines/generator-set-6/sessions/2026-04-07-teardown.yaml');
    const text = readFileSync(path, 'utf8').replaceAll(/, returned: [\d-]+/g, '');
    writeFileSync(path, text.replace('items: [bore cylinders, ', 'items: ['));
    const { rows } = await boardOf(folder);
    const [first] = rows;
    expect(first?.engine).toBe('engines/generator-set-6');
    for (const said of [
      "the customer's yes: bore cylinders",
      'machine shop: crankshaft at North grinding (invented), due 2026-04-22',
      'parts: renew main shells',
      '2026-04-07',
    ])
      expect(first?.text).toContain(said);
  }));

it('names no customer, on no page, unless asked to', () =>
  inShopOf(SMALL, async (folder) => {
    const customer = 'an invented water board';
    const page = () => readFileSync(join(folder, 'board/engines/reservoir-pump-2.html'), 'utf8');
    expect((await boardOf(folder)).html + page()).not.toContain(customer);
    const asked = await boardOf(folder, '--with-customers');
    expect(asked.html).toContain(customer);
    expect(page()).toContain(customer);
  }));

it('lists first what cannot be judged, and instruments by the day on which they are due', () =>
  inShop(async (folder) => {
    writeFileSync(join(folder, 'engines/drainage-pump-8/engine.yaml'), 'kind: engine\nname: 1\nlayout: {}\n');
    writeFileSync(
      join(folder, 'instruments.yaml'),
      readFileSync(join(folder, 'instruments.yaml'), 'utf8')
        .replace('due: 2027-01-10', 'due: 2026-03-01')
        .replace('due: 2027-01-10', 'due: 2026-07-01'),
    );
    const { rows, exit, html } = await boardOf(folder);
    expect(exit).toBe(2);
    expect(rows[0]).toMatchObject({ engine: 'engines/drainage-pump-8', page: undefined });
    expect(shown(html)).toMatch(/instruments due .*2026-03-01 overdue .*2026-07-01 within two months/);
    expect(shown(html)).not.toContain('2027-01-10');
  }));

it('is written over nothing but a board', () =>
  inShopOf(SMALL, async (folder) => {
    await boardOf(folder);
    writeFileSync(join(folder, 'board/index.html'), '<p>my own</p>');
    const { exit, err, html } = await boardOf(folder);
    expect(exit).toBe(2);
    expect(err).toContain('is there already and is no sheet');
    expect(html).toBe('<p>my own</p>');
  }));
