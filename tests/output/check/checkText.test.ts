import { stripVTControlCharacters } from 'node:util';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { atTheBench } from '../../cli/bench.ts';
import { callHere } from '../../inProcess.ts';

type Files = Readonly<Record<string, string>>;

/** What `check` prints of a shop, on a terminal of so many columns or in a pipe. */
async function printed(words: readonly string[], files: Files = {}, columns?: number): Promise<string> {
  const { stdout, stderr } = await atTheBench(files, (cwd) =>
    callHere(['check', ...words], { cwd, ...(columns === undefined ? {} : { columns }) }),
  );
  return stdout + stderr;
}

const lines = (text: string): readonly string[] => text.split('\n');

/** The row of a position, without its picture. */
const rowOf = (text: string, position: string): string =>
  (lines(text).find((line) => line.startsWith(`  ${position} `)) ?? '')
    .replace(/[├┤─═●━◄►]+/g, '')
    .replace(/ +/g, ' ')
    .trim();

const LIMITS = `kind: limits
source: Invented.
limits:
  main_journal_diameter:
    target: { min: 3.2479, max: 3.2483 }
    new: { min: 3.2475, max: 3.2485 }
    wear: { min: 3.2465 }
    at: { 5: { wear: { min: 3.2470 } } }
`;
const engine = (more = ''): string => `kind: engine\nname: Worn pump\nlayout: { mains: 5 }\n${more}`;
const session = (at: string, stage = 'teardown', date = '2026-02-03'): string =>
  `kind: session\nstage: ${stage}\ndate: ${date}\nreadings:\n  - measure: main_journal_diameter\n    with: mic-3-4\n    at: ${at}\n`;

const worn = (at: string, more: Files = {}): Files => ({
  'limits.yaml': LIMITS,
  'worn/engine.yaml': engine(),
  'worn/teardown.yaml': session(at),
  ...more,
});

/** The session with two stations along each journal. */
const twoStations = (files: Files): Files => ({
  'worn/teardown.yaml': (files['worn/teardown.yaml'] ?? '').replace(
    'with: mic-3-4',
    'with: mic-3-4\n    stations: [front, rear]',
  ),
});

describe('a row of the report', () => {
  it.each([
    ['inside all its limits', '3.2481', '2 3.2481 ok'],
    ['exactly on its wear limit', '3.2465', '2 3.2465 worn, small by 1 thou, limit within ±0.00013'],
    ['off its target', '3.2478', '2 3.2478 off target, small by 1 tenth'],
    ['worn', '3.2470', '2 3.2470 worn, small by 5 tenths'],
    ['out', '3.2458', '2 3.2458 out, small by 7 tenths'],
    ['over a stretch', '{ front: 3.2480, rear: 3.2481 }', '2 3.2480 to 3.2481 ok'],
    ['left out', '~', '2 missing'],
  ])('says of a reading %s what a machinist would', async (_, reading, row) => {
    expect(rowOf(await printed(['worn'], worn(`{ 1: 3.2481, 2: ${reading} }`)), '2')).toBe(row);
  });

  it('says undecided, with the uncertainty, where the rule is guarded', async () => {
    const text = await printed(['worn', '--rule', 'guarded'], worn('{ 2: 3.2466 }'));
    expect(rowOf(text, '2')).toBe('2 3.2466 undecided at ±0.00013');
  });

  it('shows the label beside the number, and the earlier value behind the verdict', async () => {
    const text = await printed(
      ['worn', '--session', 'service'],
      worn('{ 3: 3.2478 }', {
        'worn/engine.yaml': engine('labels: { main: { 3: centre } }\n'),
        'worn/service.yaml': session('{ 3: 3.2472 }', 'service', '2026-06-01'),
      }),
    );
    expect(rowOf(text, '3')).toBe('3 centre 3.2472 worn, small by 3 tenths was 3.2478');
  });

  it('says limits of its own, which are not those above the table', async () => {
    const text = await printed(['worn', '--all'], worn('{ 1: 3.2481, 2: 3.2481, 5: 3.2481 }'));
    expect(text).toContain('in  target 3.2479 to 3.2483, new 3.2475 to 3.2485, wear min 3.2465\n');
    expect(rowOf(text, '5')).toBe('5 3.2481 ok wear min 3.2470');
  });
});

describe('a report', () => {
  it('names the rule by which it was judged', async () => {
    expect(await printed(['sound'])).toContain('\nrule simple: ');
    expect(await printed(['sound', '--rule', 'guarded'])).toContain('\nrule guarded (ISO 14253-1): ');
  });

  it('folds remarks away and says how many, and lists them with --detail', async () => {
    const files = worn('{ 1: 3.2470, 2: 3.2478, 3: 3.2481, 4: 3.2481, 5: 3.2481 }');
    const folded = await printed(['worn'], files);
    expect(folded).toContain('\n2 remarks (1 reading/off-target, 1 reading/worn): --detail lists them\n');
    const listed = await printed(['worn', '--detail'], files);
    expect(listed).not.toContain('--detail lists them');
    expect(listed).toContain('worn/teardown.yaml:7:14  reading/worn  limit limits.yaml:6:17');
  });

  it('has every word of a verdict, finding and place in a narrow window too', async () => {
    const files = worn('{ 1: 3.2481, 2: 3.2458, 5: 3.2481 }');
    const narrow = await printed(['worn', '--detail'], files, 60);
    for (const words of [
      'out, small by 7 tenths',
      'wear min 3.2470',
      'read directly, mic-3-4',
      'reading/out',
    ]) {
      expect(narrow.replace(/\s+/g, ' ')).toContain(words);
    }
    expect(Math.max(...lines(narrow).map((each) => stringWidth(each)))).toBeLessThanOrEqual(60);
  });

  it('moves a long remark below its own row alone, and shrinks bars before they vanish', async () => {
    const long = 'read at the end that the starter ring had worn';
    const files = worn(`{ 1: { value: 3.2470, note: ${long} }, 2: { value: 3.2468, note: wet } }`);
    const rowsAt = async (columns: number) => {
      const table = lines(stripVTControlCharacters(await printed(['worn'], files, columns)));
      return table.slice(table.findIndex((each) => each.startsWith('  1 ')));
    };
    const [first, below, second] = await rowsAt(70);
    expect(first).toMatch(/^ {2}1 .*├.*┤ {2,}worn, small by \d tenths$/);
    expect(below).toBe(`      ${long}`);
    expect(second).toMatch(/^ {2}2 .*├.*┤ {2,}worn, small by \d tenths {2}wet$/);
    expect((await rowsAt(51))[0]).toMatch(/^ {2}1 .*├.{2,8}┤ {2,}worn/);
  });

  it('has no line that runs over where a limit is near, and says that below the row', async () => {
    const labels =
      'labels: { main: { 1: between the pump and the first cylinder, 2: between the second and the third cylinder } }\n';
    const files = worn('{ 1: [3.2465, 3.2464], 2: [3.2465, 3.2464] }', {
      'worn/engine.yaml': engine(labels),
    });
    const narrow = await printed(['worn'], { ...files, ...twoStations(files) }, 60);
    expect(narrow).toContain('limit within ±0.00013');
    expect(Math.max(...lines(narrow).map((each) => stringWidth(each)))).toBeLessThanOrEqual(60);
  });

  it('has the general limits above the table, where as many positions have limits of their own', async () => {
    const text = await printed(['worn', '--all'], {
      ...worn('{ 5: 3.2481, 2: 3.2481 }'),
      'worn/engine.yaml': engine().replace('mains: 5', 'mains: [5, 2]'),
    });
    expect(text).toContain('in  target 3.2479 to 3.2483, new 3.2475 to 3.2485, wear min 3.2465\n');
    expect(rowOf(text, '5')).toBe('5 3.2481 ok wear min 3.2470');
  });

  it('draws all rows of a table to one scale', async () => {
    const limits =
      'kind: limits\nsource: Invented.\nlimits: { main_journal_diameter: { wear: { min: 3.2465 } } }\n';
    const files = { ...worn('{ 1: 3.2481, 2: 3.2473 }'), 'limits.yaml': limits };
    const text = await printed(['worn', '--detail'], files);
    const pictures = lines(text).flatMap((line) => /[├●][─●├]+/.exec(line)?.[0] ?? []);
    expect(pictures.map((picture) => picture.indexOf('●') / (picture.length - 1))).toEqual([1, 0.5]);
  });
});
