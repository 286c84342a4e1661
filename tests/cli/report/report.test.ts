import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { callHere } from '../../inProcess.ts';
import { inCopyOf } from '../../replay.ts';
import { commit, git } from '../../shell/gitShop.ts';
import { call } from '../call.ts';
import { readingsOn, sheetOf, shown } from './page.ts';

const SIX = 'engines/generator-set-6';
const PUMP = 'engines/reservoir-pump-2';
const DRAINAGE = 'engines/drainage-pump-8';
const REBUILD = `${PUMP}/sessions/2026-03-14-rebuild.yaml`;

const inShop = <Result>(act: (folder: string) => Promise<Result>): Promise<Result> =>
  inCopyOf('examples', act);

interface Checked {
  readonly engines: readonly {
    readonly state: {
      readonly rows: readonly {
        readonly measure: string;
        readonly position: string;
        readonly half: string | null;
        readonly decimals: number;
        readonly least: number | null;
        readonly greatest: number | null;
      }[];
      readonly findings: readonly { readonly message: string }[];
    };
  }[];
}

const stateOf = async (folder: string, engine: string) => {
  const { out } = await call(folder, ['check', engine, '--format', 'json']);
  const [first] = (JSON.parse(out) as Checked).engines;
  if (first === undefined) throw new Error('no engine was checked');
  return first.state;
};

it.each(['sheet.html', 'sheet.md'])(
  '%s has the clearance of the running engine beside the cold one',
  (name) =>
    inCopyOf('tests/cases/judging/hot-clearance', async (folder) => {
      const text = shown(await sheetOf(folder, ['.'], name));
      expect(text.match(/hot 0\.0021 \(estimate\)/g)).toHaveLength(2);
    }),
);

describe('the sheet for the shop', () => {
  const pages = new Map<string, string>();
  const states = new Map<string, Awaited<ReturnType<typeof stateOf>>>();
  beforeAll(() =>
    inShop(async (folder) => {
      for (const engine of [SIX, PUMP]) {
        pages.set(engine, await sheetOf(folder, [engine]));
        states.set(engine, await stateOf(folder, engine));
      }
    }),
  );

  it.each([SIX, PUMP])('of %s has every finding and every number of the check', (engine) => {
    const html = pages.get(engine) ?? '';
    const { rows = [], findings = [] } = states.get(engine) ?? {};
    const [text, readings] = [shown(html), readingsOn(html)];
    expect(findings.filter(({ message }) => !text.includes(message.replaceAll(/\s+/g, ' ')))).toEqual([]);
    expect(readings.size).toBe(rows.length);
    expect(rows.length).toBeGreaterThan(90);
    for (const { measure, position, half, decimals, least, greatest } of rows) {
      const ends = [least, greatest].flatMap((each) => each ?? []);
      const key = [measure, position, half].filter(Boolean).join(' ');
      const printed = (readings.get(key) ?? '').split(' to ').filter(Boolean);
      expect([printed[0], printed.at(-1)].flatMap((each) => each ?? [])).toHaveLength(ends.length);
      // The page rounds the exact number, of which JSON holds the nearest double.
      for (const [index, end] of ends.entries()) {
        const text = (index === 0 ? printed[0] : printed.at(-1)) ?? '';
        // Of what is passed or failed JSON has 1 or 0, and the page the words of it.
        if (/^[a-z]/.test(text)) {
          expect([0, 1]).toContain(end);
          continue;
        }
        expect(text.split('.')[1] ?? '').toHaveLength(decimals);
        expect(Math.abs(Number(text) - end)).toBeLessThanOrEqual(0.5 * 10 ** -decimals * (1 + 1e-9));
      }
    }
  });

  it('is small, fetches nothing, and runs and wears nothing but its own', () => {
    const html = pages.get(SIX) ?? '';
    const { rows = [] } = states.get(SIX) ?? {};
    expect(html.length / rows.length).toBeLessThan(450);
    expect(html).toContain("default-src 'none'; style-src 'sha256-");
    expect(html).not.toMatch(/\b(?:src|href|srcset|style|on\w+)=/);
    expect(html).not.toMatch(/url\(|@import|https?:/);
  });

  it('says NOT RELEASED on each page while anything is open', () => {
    const html = pages.get(PUMP) ?? '';
    expect(shown(html)).toContain('NOT RELEASED');
    expect(html).toContain('@top-right { content: "NOT RELEASED"');
  });

  it('is the same whenever it is written of one commit, and names that', () =>
    inShop(async (folder) => {
      git(folder, 'init', '--quiet');
      git(folder, 'config', 'user.name', 'bench');
      git(folder, 'config', 'user.email', 'bench@example.org');
      const made = commit(folder, 'as it is');
      const [first, second] = [
        await sheetOf(folder, [PUMP, '--at', 'HEAD'], 'a.html'),
        await sheetOf(folder, [PUMP, '--at', made], 'b.html'),
      ];
      expect(second).toBe(first);
      expect(shown(first)).toContain(made.slice(0, 10));
    }));
});

describe('a sheet', () => {
  it('names who released it once nothing is open', () =>
    inShop(async (folder) => {
      const path = join(folder, `${SIX}/sessions/2026-05-13-rebuild.yaml`);
      writeFileSync(path, `${readFileSync(path, 'utf8')}  - { what: released, by: A. Fitter }\n`);
      const html = await sheetOf(folder, [SIX]);
      expect(shown(html)).toContain('Released by A. Fitter, 2026-05-13');
      expect(html).toContain('@top-right { content: ""');
    }));

  it('says so where a session could not be judged, and so does the exit code', () =>
    inShop(async (folder) => {
      writeFileSync(join(folder, REBUILD), `${readFileSync(join(folder, REBUILD), 'utf8')}nonsense: 1\n`);
      const { exit } = await call(folder, ['report', PUMP, '--to', 'sheet.html']);
      expect(exit).toBe(2);
      expect(shown(readFileSync(join(folder, 'sheet.html'), 'utf8'))).toMatch(
        /NOT RELEASED .* Open .*2026-03-14-rebuild\.yaml has 1 error and is not taken/,
      );
    }));
});

describe('the sheet for the customer', () => {
  let text = '';
  beforeAll(() =>
    inShop(async (folder) => {
      const path = join(folder, REBUILD);
      writeFileSync(
        path,
        readFileSync(path, 'utf8')
          .replace('is: a new one fitted', 'is: "private: bought second hand"')
          .replace('found:\n', 'found:\n  - { on: fan, is: it is safe to run, do: reuse }\n')
          .replace('by: RK\n', 'by: RK\nnote: "private: pays late"\n'),
      );
      text = shown(await sheetOf(folder, [PUMP, '--for', 'customer']));
    }),
  );

  it('says that it is not released', () => expect(text).toContain('NOT RELEASED'));

  it('has what was found, done and agreed, and every final size', () => {
    for (const said of [
      'wiped to copper',
      'liners and pistons 1, 2, 4',
      'cylinder bore 3',
      '3.2477 to 3.2478',
    ])
      expect(text).toContain(said);
  });

  it('names parts by what tells them apart, and sessions by their days alone', () =>
    inShop(async (folder) => {
      const six = shown(await sheetOf(folder, [SIX, '--for', 'customer']));
      expect(six).toContain('mark G6-1, main 0.010 under, crankpin 0.010 under 2026-05-06');
      expect(six).not.toContain('trial 2026');
    }));

  it('holds nothing of forecasts, guesses, statistics, notes of the shop, nor that it is safe', () => {
    expect(text).not.toMatch(
      /E_n|95 %|uncertain|±|private|second hand|pays late|\bsafe|Trends|reading\/|torque\//i,
    );
  });

  it('holds nothing from before this job', () =>
    inShop(async (folder) => {
      const earlier = readFileSync(join(folder, `${PUMP}/sessions/2026-02-03-teardown.yaml`), 'utf8')
        .replace('2026-02-03', '2019-02-03')
        .replace('wiped to copper', 'the work of a former owner');
      writeFileSync(join(folder, `${PUMP}/sessions/2019-02-03-teardown.yaml`), earlier);
      const [customer, shop] = [
        await sheetOf(folder, [PUMP, '--for', 'customer']),
        await sheetOf(folder, [PUMP], 'shop.html'),
      ];
      expect(customer).not.toMatch(/former owner|2019/);
      expect(shop).toContain('2019-02-03');
    }));
});

it('holds for a machine shop only what the customer agreed to', () =>
  inShop(async (folder) => {
    const path = join(folder, `${SIX}/sessions/2026-04-07-teardown.yaml`);
    const words = [SIX, '--for', 'machine-shop', '--session', 'teardown'];
    writeFileSync(path, readFileSync(path, 'utf8').replace('items: [bore cylinders, ', 'items: ['));
    const text = shown(await sheetOf(folder, words));
    expect(text).toContain('grind main journals 1 to 7');
    expect(text).toMatch(/not agreed yet, not to be done .*bore cylinders/);
    expect(text).not.toContain('torque plate on');
  }));

it('shows before an engine is closed up what `plan --closing` says, with its boxes and room to sign', () =>
  inShop(async (folder) => {
    const html = await sheetOf(folder, [PUMP, '--closing']);
    const { out } = await call(folder, ['plan', PUMP, '--closing', '--format', 'json']);
    const told = JSON.parse(out) as { answer: string[]; sections: { lines: string[]; boxes: string[] }[] };
    const said = [...told.answer, ...told.sections.flatMap(({ lines, boxes }) => [...lines, ...boxes])];
    expect(said.length).toBeGreaterThan(15);
    for (const each of said) expect(shown(html)).toContain(each.replaceAll(/\s+/g, ' '));
    expect(html).toContain('@top-right { content: "NOT RELEASED"');
    expect(html).toMatch(/<ul class="blanks"><li>by<\/li><li>date and signature<\/li>/);
  }));

describe('the blank sheet', () => {
  it('has a box for every reading that the sheet in text has a blank for, and the same words', () =>
    inShop(async (folder) => {
      for (const stage of ['teardown', 'rebuild']) {
        const html = await sheetOf(folder, [SIX, '--blank', stage]);
        const { out } = await call(folder, ['new', 'session', SIX, '--stage', stage, '--sheet']);
        const [, ...blocks] = out.split('\n\n');
        const below = blocks.flatMap((each) => each.split('\n').slice(1)).join('\n');
        const boxes = html.match(/<td class="room">|<li>/g)?.length ?? 0;
        const others =
          html
            .match(/<ul(?: class="blanks")?>[\s\S]*?<\/ul>/g)
            ?.join()
            .match(/<li>/g)?.length ?? 0;
        expect(blocks.length).toBeGreaterThan(20);
        expect(boxes - others).toBe(below.match(/_{9}/g)?.length);
        for (const [, heading = ''] of out.matchAll(/^(\S.*?) {3}.*with /gm))
          expect(shown(html)).toContain(heading);
      }
    }));

  it('is none of a session that was measured', () =>
    inShop(async (folder) => {
      const words = ['report', SIX, '--blank', 'rebuild', '--session', 'teardown', '--to', 'blank.html'];
      expect(await call(folder, words)).toMatchObject({ exit: 2 });
    }));
});

it('draws the step at which a bearing drags, and is not released', () =>
  inCopyOf('tests/cases/findings/turning-jump', async (folder) => {
    const text = shown(await sheetOf(folder, []));
    expect(text).toContain('7.6, rose 3.8');
    expect(text).toContain('NOT RELEASED');
  }));

it('draws when a wear limit is reached as an interval', () =>
  inCopyOf('tests/cases/trend/one-gauge', async (folder) => {
    const html = await sheetOf(folder, []);
    expect(shown(html)).toContain('wear max 70.050 between 5 000 h and 31 000 h (95 %)');
    expect(html).toMatch(/<line class="forecast" [^>]*y1="122"/);
  }));

describe('photographs', () => {
  const PHOTO = 'href="engines/reservoir-pump-2/photos/main%203.jpg"';
  let [html, markdown, outside, customer] = ['', '', '', ''];
  beforeAll(() =>
    inShop(async (folder) => {
      const path = join(folder, REBUILD);
      const more =
        '  - { on: fan, is: cracked, do: renew, photos: [photos/main 3.jpg, ../../shop.jpg, notes.html] }\n';
      writeFileSync(path, readFileSync(path, 'utf8').replace('found:\n', `found:\n${more}${more}`));
      html = await sheetOf(folder, [PUMP]);
      markdown = await sheetOf(folder, [PUMP], 'sheet.md');
      outside = await sheetOf(folder, [PUMP], '../sheet-outside.html');
      rmSync(join(folder, '../sheet-outside.html'));
      customer = await sheetOf(folder, [PUMP, '--for', 'customer']);
    }),
  );

  it('are linked where they lie in the folder of the engine, and what they tell is said once', () => {
    expect(html.match(/href=/g)).toHaveLength(2);
    expect(html).toContain(PHOTO);
    expect(shown(html)).toContain('photos/main 3.jpg , ../../shop.jpg, notes.html');
    expect(shown(html).match(/A photograph may tell where/g)).toHaveLength(1);
    expect(markdown).toContain('](engines/reservoir-pump-2/photos/main%203.jpg)');
    expect(markdown.match(/\]\(/g)).toHaveLength(2);
  });

  it('are named alone on a sheet outside of the shop', () => {
    expect(outside).not.toContain('href=');
    expect(shown(outside)).toContain('photos/main 3.jpg, ../../shop.jpg, notes.html');
  });

  it('stand on no sheet of a customer', () => {
    expect(customer).toContain('cracked');
    expect(customer).not.toMatch(/href=|\.jpg/);
  });

  it('leave the rest of a sheet in Markdown with the same words', () => {
    expect(markdown).toContain('# Reservoir pump no. 2: build sheet');
    expect(markdown).toContain('| 3 | 4.1262 to 4.1287 | accepted, large by 2.5 thou | 4.1258 to 4.1286 |');
  });
});

describe('a file', () => {
  const refused: readonly (readonly [title: string, words: readonly string[], told: string])[] = [
    ['of another ending', ['--to', 'engine.yaml'], 'engine.yaml is not the name of a sheet'],
    ['that is there and no sheet', ['--to', 'README.md'], 'is there already and is no sheet'],
    ['in no folder', ['--to', 'nowhere/sheet.html'], 'there is no folder'],
    ['that needs a browser', ['--to', 'sheet.pdf'], 'a PDF needs a Chromium, and none is on this machine'],
    [
      'that a browser cannot print',
      ['--to', 'sheet.pdf', '--browser', '/bin/false'],
      '/bin/false ended with 1',
    ],
  ];
  it.each(refused)('%s is refused', (_, words, told) =>
    inShop(async (folder) => {
      const before = readFileSync(join(folder, 'README.md'), 'utf8');
      const { stderr, exitCode } = await callHere(['report', PUMP, ...words], {
        cwd: folder,
        env: { PATH: '/nowhere' },
      });
      expect(stderr).toContain(told);
      expect(exitCode).toBe(2);
      expect(readFileSync(join(folder, 'README.md'), 'utf8')).toBe(before);
    }),
  );

  it('that is a sheet is written anew', () =>
    inShop(async (folder) => {
      await sheetOf(folder, [PUMP]);
      expect(await sheetOf(folder, [DRAINAGE])).toContain('<h1>Drainage pump 8</h1>');
    }));
});
