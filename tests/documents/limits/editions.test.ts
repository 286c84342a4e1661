import { describe, expect, it } from 'vitest';
import { everyEdition, limitsOn, newestFirst } from '../../../src/documents/limits/editions.ts';
import { ENGINE, type Files, limitsOf, refusalsOf, reportOf, sessionOf, shopOf } from '../../shopOf.ts';

const PLAY = '- { measure: crankshaft_end_play, value: 0.010 }';

const edition = (from: string, max: string): string =>
  limitsOf(`crankshaft_end_play: { new: { max: ${max} } }`, from === '' ? '' : `from: ${from}\n`);

/** Sessions on some days, and the limits that lie beside them by file. */
const shop = (limits: Files, ...days: readonly string[]): Files => ({
  'shop/e/engine.yaml': ENGINE,
  ...limits,
  ...Object.fromEntries(
    days.map((day) => [`shop/e/${day}.yaml`, sessionOf('rebuild', PLAY).replace('2026-02-03', day)]),
  ),
});

const greatest = (files: Files): readonly (string | undefined)[] =>
  reportOf(files).sessions.map(({ rows }) => rows[0]?.limits.bands.new?.max?.written);

describe('limits that hold from a day on', () => {
  const editions = {
    'shop/e/a.yaml': edition('', '0.011'),
    'shop/e/b.yaml': edition('2026-03-01', '0.012'),
    'shop/e/c.yaml': edition('2026-05-01', '0.013'),
  };

  it('judge the sessions of that day and after it, and the latest edition wins', () => {
    expect(
      greatest(shop(editions, '2026-02-28', '2026-03-01', '2026-04-30', '2026-05-01', '2027-01-01')),
    ).toEqual(['0.011', '0.012', '0.012', '0.013', '0.013']);
  });

  it('are none before the first of them', () => {
    const { 'shop/e/b.yaml': only } = editions;
    expect(greatest(shop({ 'shop/e/b.yaml': only }, '2026-02-28', '2026-03-02'))).toEqual([
      undefined,
      '0.012',
    ]);
  });

  it('are asked after those of a nearer folder, however new they are', () => {
    const files = shop(
      {
        'shop/e/a.yaml': edition('', '0.011'),
        'shop/new.yaml': edition('2026-03-01', '0.020').replace('from:', 'units: { length: in }\nfrom:'),
      },
      '2026-04-01',
    );
    expect(greatest(files)).toEqual(['0.011']);
  });

  it('leave to an older edition what they do not say', () => {
    const newer = limitsOf('crankshaft_end_play: { wear: { max: 0.020 } }', 'from: 2026-03-01\n');
    const files = shop({ 'shop/e/a.yaml': edition('', '0.011'), 'shop/e/b.yaml': newer }, '2026-04-01');
    expect(greatest(files)).toEqual(['0.011']);
  });

  it('may stand on the edition before them', () => {
    const newer = edition('2026-03-01', '0.012').replace('from:', 'extends: a.yaml\nfrom:');
    const files = shop(
      { 'shop/e/a.yaml': edition('', '0.011'), 'shop/e/b.yaml': newer },
      '2026-02-01',
      '2026-04-01',
    );
    expect(greatest(files)).toEqual(['0.011', '0.012']);
  });

  it('of one day and folder contradict each other', () => {
    const twice = {
      'shop/e/a.yaml': edition('2026-03-01', '0.011'),
      'shop/e/b.yaml': edition('2026-03-01', '0.012'),
    };
    expect(refusalsOf(shop(twice)).map((each) => each.split(' ')[1])).toEqual(['limits-conflict']);
  });

  it('are refused where the day is none', () => {
    expect(refusalsOf(shop({ 'shop/e/a.yaml': edition('2026-02-30', '0.011') }))).toHaveLength(1);
  });

  it('are looked at edition by edition: a wear limit that is tighter in one of them is reported', () => {
    const wear = limitsOf('crankshaft_end_play: { wear: { max: 0.0115 } }', 'from: 2026-03-01\n');
    const newer = limitsOf('crankshaft_end_play: { new: { max: 0.010 } }', 'from: 2026-05-01\n');
    const files = { 'shop/e/a.yaml': edition('', '0.012'), 'shop/e/b.yaml': wear, 'shop/e/c.yaml': newer };
    expect(refusalsOf(shop(files))).toHaveLength(1);
  });
});

describe('the editions of a folder', () => {
  const dated = ['', '2026-03-01', '2026-05-01'].map((from, index) => [
    `e/${index}.yaml`,
    edition(from, '0.012'),
  ]);
  const read = shopOf({ 'e/engine.yaml': ENGINE, ...Object.fromEntries(dated) }).engine?.limits ?? [];
  const days = (documents: typeof read): readonly string[] => documents.map(({ from }) => from ?? 'first');
  const NEWEST_FIRST = ['2026-05-01', '2026-03-01', 'first'];

  it.each([[[0, 1, 2]], [[0, 2, 1]], [[1, 0, 2]], [[1, 2, 0]], [[2, 0, 1]], [[2, 1, 0]]])(
    'are put in order from the newest to that without a day, from %j',
    (order) => {
      const some = order.flatMap((index) => read[index] ?? []);
      expect(days(some.toSorted(newestFirst))).toEqual(NEWEST_FIRST);
    },
  );

  it('of one day are left as they stand', () => {
    const [newest, , first] = read;
    if (newest === undefined || first === undefined) throw new Error('not three');
    expect([newestFirst(newest, newest), newestFirst(first, first)]).toEqual([0, 0]);
    expect([newestFirst(newest, first), newestFirst(first, newest)]).toEqual([-1, 1]);
  });

  it('are all there are where nobody asks for a day, or none has one', () => {
    expect(limitsOn(read, undefined)).toBe(read);
    const dateless = read.slice(2);
    expect(limitsOn(dateless, '2026-04-01')).toBe(dateless);
  });

  it('are one list for all days of one edition, so that what is worked out of them is kept', () => {
    expect(days(limitsOn(read, '2026-03-01'))).toEqual(['2026-03-01', 'first']);
    expect(limitsOn(read, '2026-03-01')).toBe(limitsOn(read, '2026-04-30'));
    expect(limitsOn(read, '2026-03-01')).not.toBe(limitsOn(read, '2026-05-01'));
    expect(everyEdition(read).map(days)).toEqual([['first'], NEWEST_FIRST, ['2026-03-01', 'first']]);
  });
});
