import { describe, expect, it } from 'vitest';
import { type Files, findingsOf, sessionOf, shopFiles } from '../../shopOf.ts';

/** Three main journals, and what is said of the crankshaft. */
const journals = (readings: string, said: string, more = ''): Files => {
  const files = shopFiles(
    `main_journal_diameter: { new: 2.9990 to 3.0000, wear: { min: 2.9980 }${more} }`,
    `- { measure: main_journal_diameter, at: { ${readings} } }`,
    'teardown',
  );
  return {
    ...files,
    'e/session.yaml': (files['e/session.yaml'] ?? '').replace('readings:', `${said}\nreadings:`),
  };
};

const told = (files: Files): readonly string[] =>
  findingsOf(files).flatMap(({ code, message }) =>
    code === 'reading/grade' || code === 'reading/implausible' ? [message] : [],
  );

const UNDER_10 = 'fitted: { crankshaft: { main: 0.010 under } }';

describe('a size that fits another grade', () => {
  it('than the stated one is reported by name', () => {
    expect(told(journals('1: 2.9895, 2: 2.9894, 3: 2.9795', UNDER_10))).toEqual([
      'main journal diameter 3: 2.9795 in fits 0.020 under, not the stated 0.010 under',
    ]);
  });

  it('may be standard', () => {
    expect(told(journals('1: 2.9995, 2: 2.9894, 3: 2.9895', UNDER_10))).toEqual([
      'main journal diameter 1: 2.9995 in fits std, not the stated 0.010 under',
    ]);
  });

  it('is told once where nothing is stated and all are alike, with the block to write', () => {
    expect(told(journals('1: 2.9895, 2: 2.9894, 3: 2.9895', ''))).toEqual([
      'main journal diameter 1, 2, 3: of another size, and no document states it; write `machined: [{ part: main journals, size: 0.010 under }]` where it was made here, or `fitted:` where the part came in that size; as read, main journal diameter 1: 2.9895 in, small by 8.5 thou (wear min 2.9980), and 2 more',
    ]);
  });

  it('is told by itself where it is one alone', () => {
    expect(told(journals('1: 2.9895, 2: 2.9995, 3: 2.9994', ''))).toHaveLength(1);
  });

  it('is told of the part whose grade was assumed', () => {
    expect(
      told(journals('1: 2.9995, 2: 2.9894, 3: 2.9895', 'fitted: { main_shells: { size: 0.010 under } }')),
    ).toEqual(['main journal diameter 1: 2.9995 in fits std, not the 0.010 under of its main shell']);
  });

  it('may be one that its maker prints and nobody else grinds', () => {
    const rows = ', sizes: { 0.007 under: { new: 2.9920 to 2.9930 } }';
    expect(told(journals('1: 2.9925, 2: 2.9894, 3: 2.9895', UNDER_10, rows))).toEqual([
      'main journal diameter 1: 2.9925 in fits 0.007 under, not the stated 0.010 under',
    ]);
  });

  it('is not told of one that is worn out in its own', () => {
    expect(told(journals('1: 2.9870, 2: 2.9894, 3: 2.9895', UNDER_10))).toEqual([]);
  });

  it('is not told of one that is inside its own', () => {
    expect(told(journals('1: 2.9882, 2: 2.9894, 3: 2.9895', UNDER_10))).toEqual([]);
  });
});

describe('journals that were ground while an old size is still stated are told once, with the block to write', () => {
  const machined = 'machined: [{ part: main journals, size: 0.010 under }]';
  const GROUND = '1: 2.9895, 2: 2.9894, 3: 2.9895';
  const asked = (of: string, stated: string, block = machined): string =>
    `main journals${of}: of size ${/\d\.\d+ under/.exec(block)?.[0]} by their readings, and ${stated}; if they were ground, write \`${block}\` in this session; else correct what is stated, or check how the gauge was set`;
  const first = (files: Files): readonly string[] =>
    told(files).map((each) => each.split('; as read')[0] ?? '');

  it.each([
    ['of the crankshaft', 'fitted: { crankshaft: { main: std } }', 'the stated size is std'],
    ['of the shells', 'fitted: { main_shells: { size: std } }', 'its main shell is stated as std'],
  ])('%s', (_, fitted, stated) => {
    expect(first(journals(GROUND, fitted))).toEqual([asked('', stated)]);
  });

  it('of the next undersize', () => {
    expect(first(journals('1: 2.9795, 2: 2.9794, 3: 2.9795', UNDER_10))).toEqual([
      asked('', 'the stated size is 0.010 under', machined.replace('0.010', '0.020')),
    ]);
  });

  it('of some of them, by their places', () => {
    const block = 'machined: [{ part: main journals, at: [1, 2], size: 0.010 under }]';
    expect(
      first(journals('1: 2.9895, 2: 2.9894, 3: 2.9995', 'fitted: { crankshaft: { main: std } }')),
    ).toEqual([asked(' 1, 2', 'the stated size is std', block)]);
  });

  it('and of nothing once that block is written', () => {
    const fitted = sessionOf('trial', '', 'fitted: { crankshaft: { main: std } }\n').replace(
      'readings:\n  \n',
      'readings: []\n',
    );
    const earlier = { 'e/0.yaml': fitted.replace('2026-02-03', '2026-02-01') };
    expect(first({ ...journals(GROUND, ''), ...earlier })).toEqual([asked('', 'the stated size is std')]);
    expect(first({ ...journals(GROUND, machined), ...earlier })).toEqual([]);
  });

  it('and of none that measure larger than their size: nobody grinds them so', () => {
    expect(told(journals('1: 2.9995, 2: 2.9994, 3: 2.9995', UNDER_10))).toEqual([
      expect.stringContaining('fits std, not the stated 0.010 under'),
      expect.stringContaining('fits std, not the stated 0.010 under'),
      expect.stringContaining('fits std, not the stated 0.010 under'),
    ]);
  });
});
