import { describe, expect, it } from 'vitest';
import { afterYes } from '../../../src/plan/order/awaitedYes.ts';
import { orderList } from '../../../src/plan/order/orderList.ts';
import { jobsOf } from '../../../src/plan/work/jobs.ts';
import { ENGINE, type Files, limitsOf, REGISTER, sessionOf } from '../../shopOf.ts';
import { contextOf } from '../planOf.ts';

const LIMITS = `main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 }, last_size: 2.9680 }
crankpin_diameter: { new: 2.4980 to 2.4990, wear: { min: 2.4970 } }
cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 }, largest_bore: 4.1560 }
main_bearing_clearance: { new: 0.0010 to 0.0030, wear: { max: 0.0040 } }
piston_clearance: { new: 0.0030 to 0.0050 }
crankshaft_end_play: { new: 0.004 to 0.010 }`;

interface Said {
  readonly blocks: string;
  readonly more?: string;
  readonly stage?: string;
  readonly stock?: string;
  readonly files?: Files;
  readonly shop?: string;
}

function linesOf({ blocks, more = '', stage = 'teardown', stock = '', files = {}, shop = '' }: Said) {
  const context = contextOf({
    'shop.yaml': `kind: shop\nunits: { length: in }\n${shop}`,
    'register.yaml': REGISTER,
    ...(stock === '' ? {} : { 'stock.yaml': `kind: stock\n${stock}` }),
    'e/engine.yaml': ENGINE,
    'e/limits.yaml': limitsOf(LIMITS),
    'e/session.yaml': sessionOf(stage, blocks, more),
    ...files,
  });
  return orderList(context, jobsOf(context)).map(
    ({ count, onShelf, what, size, code, when, for: job, neededBy, isLate }) =>
      [
        `${count} (${onShelf})`,
        what,
        size,
        code ?? '-',
        when,
        job,
        ...(neededBy === undefined ? [] : [neededBy]),
        ...(isLate === true ? ['late'] : []),
      ].join('; '),
  );
}

/** Read twice: one that is far from the others might be a slip. */
const twice = (block: string): string => `${block}\n${block}`;
const mains = (third: string): string =>
  twice(`- { measure: main_journal_diameter, with: mic, at: { 1: 2.9985, 2: 2.9983, 3: ${third} } }`);
const bores = (first: string, second = '4.1255'): string =>
  twice(`- { measure: cylinder_bore, with: bore, at: { 1: ${first}, 2: ${second}, 3: 4.1255, 4: 4.1255 } }`);
const clearances = (third: string): string =>
  `- { measure: main_bearing_clearance, with: fine, at: { 1: 0.0020, 2: 0.0020, 3: ${third} } }`;

const SUNDRIES = ['gasket set', 'shaft seals', 'core plugs', 'gallery plugs'].map(
  (what) => `1 (0); ${what}; ; -; now; opened engine`,
);
const AGREED = 'agreed: { by: Owner, items: [grind main journals, bore cylinders] }\n';

describe('an order list', () => {
  it.each<readonly [string, Said, readonly string[]]>([
    ['is empty of an engine that was not opened', { blocks: clearances('~'), stage: 'service' }, []],
    [
      'has what every opened engine takes, though it is only measured again',
      { blocks: clearances('~') },
      SUNDRIES,
    ],
    [
      'has that until a session says that it is in',
      { blocks: clearances('0.0020'), stage: 'rebuild' },
      SUNDRIES,
    ],
    [
      'has shells for journals that are ground, by one code of their size, and is needed when the part is back',
      {
        blocks: mains('2.9880'),
        more: `${AGREED}sent: { part: crankshaft, to: North grinding, date: 2026-02-10, due: 2026-02-20, work: [grind main journals, wash crankshaft] }\n`,
        stock:
          'shells: [{ code: M20, fits: main shells, size: 0.020 under, wall: 0.13, count: 5 }, { code: R20, fits: rod shells, size: 0.020 under, wall: 0.13, count: 5 }]\n',
      },
      [
        ...SUNDRIES,
        '3 (2); main shell pairs; 0.020 under; M20; after measuring; grind main journals; 2026-02-20',
      ],
    ],
    [
      'waits for the depth of damage',
      {
        blocks: mains('2.9960'),
        more: `${AGREED}found: [{ on: main journal 3, is: scored, do: machine }]\n`,
      },
      [...SUNDRIES, '3 (0); main shell pairs; depth unknown; -; after measuring; grind main journals'],
    ],
    [
      'has pistons and ring sets for bores, and is needed when the block is sent',
      {
        blocks: bores('4.1315'),
        more: `${AGREED}sent: { part: block, to: North grinding, date: 2026-02-10, due: 2026-02-20, work: [bore cylinders] }\n`,
        stock:
          'pistons: [{ mark: A, size: 0.010 over, diameter: 4.131 }, { mark: B, size: 0.010 over, diameter: 4.131, ran_in: "1" }, { mark: C, size: 0.020 over, diameter: 4.141 }]\nrings: [{ code: K10, size: 0.010 over, count: 9 }, { code: K20, size: 0.020 over, count: 9 }]\n',
      },
      [
        '4 (1); pistons; 0.010 over; -; now; bore cylinders; 2026-02-10',
        '4 (4); ring sets; 0.010 over; K10; now; bore cylinders; 2026-02-10',
        ...SUNDRIES,
      ],
    ],
    [
      'waits for the yes, but for what any opened engine takes',
      { blocks: bores('4.1315') },
      [
        ...SUNDRIES,
        '4 (0); pistons; 0.010 over; -; after the yes; bore cylinders, not agreed yet',
        '4 (0); ring sets; 0.010 over; -; after the yes; bore cylinders, not agreed yet',
      ],
    ],
    [
      'has each bore of its own step where the shop cuts them so',
      { blocks: bores('4.1315', '4.1415'), more: AGREED, shop: 'plan: { separate: [cylinders] }\n' },
      [
        '1 (0); piston; 0.010 over; -; now; bore cylinders',
        '1 (0); ring set; 0.010 over; -; now; bore cylinders',
        '1 (0); piston; 0.020 over; -; now; bore cylinders',
        '1 (0); ring set; 0.020 over; -; now; bore cylinders',
        ...SUNDRIES,
      ],
    ],
    [
      'has one line for bores that are cut apart to one step, and counts the shelf once',
      {
        blocks: bores('4.1315', '4.1316'),
        more: AGREED,
        shop: 'plan: { separate: [cylinders] }\n',
        stock: 'rings: [{ code: K, size: 0.010 over, count: 1 }]\n',
      },
      [
        '2 (0); pistons; 0.010 over; -; now; bore cylinders',
        '2 (1); ring sets; 0.010 over; K; now; bore cylinders',
        ...SUNDRIES,
      ],
    ],
    [
      'has what one bore takes where it alone is cut',
      { blocks: bores('4.1315'), more: AGREED, shop: 'plan: { separate: [cylinders] }\n' },
      [
        '1 (0); piston; 0.010 over; -; now; bore cylinders',
        '1 (0); ring set; 0.010 over; -; now; bore cylinders',
        ...SUNDRIES,
      ],
    ],
    [
      'has what is renewed elsewhere beside what a bore takes that is cut apart',
      {
        blocks: bores('4.1315'),
        more: `${AGREED}found: [{ on: [piston 1, piston 3], is: cracked, do: renew }]\n`,
        shop: 'plan: { separate: [cylinders] }\n',
      },
      [
        '1 (0); piston; 0.010 over; -; now; bore cylinders',
        '1 (0); ring set; 0.010 over; -; now; bore cylinders',
        '1 (0); piston; std; -; now; renew pistons',
        ...SUNDRIES,
      ],
    ],
    [
      'has the rings of a new liner beside those of a bore that is cut apart',
      { blocks: bores('4.1570', '4.1315'), more: AGREED, shop: 'plan: { separate: [cylinders] }\n' },
      [
        '1 (0); piston; 0.010 over; -; now; bore cylinders',
        '1 (0); ring set; 0.010 over; -; now; bore cylinders',
        '1 (0); liner; as fitted; -; now; renew cylinders',
        '1 (0); ring set; std; -; now; renew cylinders',
        ...SUNDRIES,
      ],
    ],
    [
      'has no piston as fitted where all bores are cut together',
      {
        blocks: bores('4.1315'),
        more: `${AGREED}found: [{ on: piston 3, is: cracked, do: renew }]\n`,
      },
      [
        '4 (0); pistons; 0.010 over; -; now; bore cylinders',
        '4 (0); ring sets; 0.010 over; -; now; bore cylinders',
        ...SUNDRIES,
      ],
    ],
    [
      'has a liner for a bore beyond its last step',
      { blocks: bores('4.1570'), more: AGREED },
      [
        '1 (0); liner; as fitted; -; now; renew cylinders',
        '1 (0); ring set; std; -; now; renew cylinders',
        ...SUNDRIES,
      ],
    ],
    [
      'has a new crankshaft with the shells that go with it',
      { blocks: mains('2.9670'), more: AGREED },
      [
        '1 (0); crankshaft; as fitted; -; now; renew crankshaft',
        ...SUNDRIES,
        '3 (0); main shell pairs; by the new crankshaft; -; after measuring; renew crankshaft',
        '4 (0); rod shell pairs; by the new crankshaft; -; after measuring; renew crankshaft',
      ],
    ],
    [
      'has a pair for every main and rod where the shells are renewed',
      { blocks: mains('2.9985'), more: `${AGREED}found: [{ on: shells, is: worn, do: renew }]\n` },
      [
        '3 (0); main shell pairs; std; -; now; renew main shells',
        '4 (0); rod shell pairs; std; -; now; renew rod shells',
        '1 (0); thrust washer; as fitted; -; now; renew thrust washer',
        ...SUNDRIES,
      ],
    ],
    [
      'has a new crankshaft with no shells for a journal that would be ground by itself',
      {
        blocks: mains('2.9670').replaceAll('1: 2.9985', '1: 2.9960'),
        more: AGREED,
        shop: 'plan: { separate: [main journals] }\n',
      },
      [
        '1 (0); crankshaft; as fitted; -; now; renew crankshaft',
        ...SUNDRIES,
        '3 (0); main shell pairs; by the new crankshaft; -; after measuring; renew crankshaft',
        '4 (0); rod shell pairs; by the new crankshaft; -; after measuring; renew crankshaft',
      ],
    ],
    [
      'has a new crankshaft with no shell as fitted besides',
      {
        blocks: `${bores('4.1255')}\n${clearances('0.0050')}`,
        more: 'found: [{ on: crankshaft, is: cracked, do: renew }, { on: main 2 shell lower, is: wiped, do: renew }]\n',
      },
      [
        '1 (0); crankshaft; as fitted; -; now; renew crankshaft',
        ...SUNDRIES,
        '3 (0); main shell pairs; by the new crankshaft; -; after measuring; renew crankshaft',
        '4 (0); rod shell pairs; by the new crankshaft; -; after measuring; renew crankshaft',
      ],
    ],
    [
      'has a new block with no liner and no pistons besides',
      {
        blocks: bores('4.1570', '4.1315'),
        more: `${AGREED}found: [{ on: block, is: cracked, do: renew }, { on: cylinder 3, is: split, do: renew }]\n`,
      },
      ['1 (0); block; as fitted; -; now; renew block', ...SUNDRIES],
    ],
    [
      'has what was seen to be renewed, one or many, of the engine’s parts or not',
      {
        blocks: bores('4.1255'),
        more: 'found: [{ on: [piston 1, piston 2], is: cracked, do: renew }, { on: main 2 shell lower, is: wiped, do: renew }, { on: [oil cooler, starter ring], is: split, do: renew }, { on: head, is: warped, do: machine }, { on: flywheel, is: stained }]\n',
      },
      [
        '2 (0); pistons; std; -; now; renew pistons',
        '1 (0); main shell pair; std; -; now; renew main shells',
        '1 (0); oil cooler, starter ring; as fitted; -; now; renew oil cooler, starter ring',
        ...SUNDRIES,
      ],
    ],
    [
      'has shells of the size of the journal where a clearance is loose and the shelf holds none',
      { blocks: clearances('0.0050') },
      [...SUNDRIES, '1 (0); main shell pair; std; -; after measuring; choose main shells'],
    ],
    [
      'has a washer where the end play is out',
      { blocks: '- { measure: crankshaft_end_play, value: 0.020 }' },
      [...SUNDRIES, '1 (0); thrust washers; by plan --fit; -; after measuring; choose thrust washer'],
    ],
    [
      'takes the washer that was chosen from the shelf for the end play',
      {
        blocks: '- { measure: crankshaft_end_play, value: 0.020 }',
        stage: 'trial',
        stock: 'thrust_washers: [{ code: TW, count: 2 }, { code: T06, size: 0.006 over, count: 2 }]\n',
      },
      ['1 (1); thrust washers; 0.006 over; T06; now; choose thrust washer', ...SUNDRIES],
    ],
  ])('%s', (_, said, lines) => expect(linesOf(said)).toEqual(lines));

  it('names a size by its unit where the limits are printed in another', () => {
    const printed = limitsOf(
      'main_journal_diameter: { new: 76.149 to 76.175, wear: { min: 76.124 }, sizes: { 0.25 under: { new: 75.899 to 75.925 } } }',
      'units: { length: mm }\n',
    );
    expect(linesOf({ blocks: mains('2.9965'), files: { 'e/limits.yaml': printed } })).toContain(
      '3 (0); main shell pairs; 0.25 mm under; -; after measuring; grind main journals, not agreed yet',
    );
  });

  it('has nothing for a fit that is off what the builder aims for alone', () => {
    const limits = LIMITS.replace('new: 0.0010 to 0.0030', 'new: 0.0010 to 0.0030, target: 0.0015 to 0.0018');
    expect(linesOf({ blocks: clearances('0.0020'), files: { 'e/limits.yaml': limitsOf(limits) } })).toEqual(
      SUNDRIES,
    );
  });
});

describe('what is renewed', () => {
  const wiped = 'found: [{ on: main 2 shell lower, is: wiped, do: renew }]\n';
  const shellsOf = (said: Said) => linesOf(said).filter((each) => /shell/.test(each));

  it('is of the size of the ground journal, and may lie on the shelf', () => {
    const stock = 'shells: [{ code: M10, fits: main shells, size: 0.010 under, wall: 0.13, count: 4 }]\n';
    const ground = { 'e/engine.yaml': `${ENGINE}fitted: { crankshaft: { main: 0.010 under } }\n` };
    expect(shellsOf({ blocks: bores('4.1255'), more: wiped, stock, files: ground })).toEqual([
      '1 (1); main shell pair; 0.010 under; M10; now; renew main shells',
    ]);
  });

  it('is of the size of the bored cylinder, and takes no piston of another size from the shelf', () => {
    const cracked = 'found: [{ on: piston 2, is: cracked, do: renew }]\n';
    const bored = { 'e/engine.yaml': `${ENGINE}fitted: { pistons: { size: 0.020 over } }\n` };
    const pistonsOf = (stock: string) =>
      linesOf({
        blocks: bores('4.1455', '4.1455').replaceAll('4.1255', '4.1455'),
        more: cracked,
        stock,
        files: bored,
      }).filter((each) => /; pistons?;/.test(each));
    expect(pistonsOf('pistons: [{ mark: S, diameter: 4.1215 }]\n')).toEqual([
      '1 (0); piston; 0.020 over; -; now; renew pistons',
    ]);
    expect(pistonsOf('pistons: [{ mark: T, size: 0.020 over, diameter: 4.1415 }]\n')).toEqual([
      '1 (1); piston; 0.020 over; -; now; renew pistons',
    ]);
  });

  it('shares what the shelf has with what is chosen anew', () => {
    const lines = (count: number) =>
      shellsOf({
        blocks: `${clearances('0.0050')}
- { measure: main_housing_bore, with: fine, at: { 1: 3.2505, 2: 3.2505, 3: 3.2505 } }
- { measure: main_journal_diameter, with: mic, at: { 1: 2.9985, 2: 2.9985, 3: 2.9985 } }`,
        more: wiped,
        stock: `shells: [{ code: M, fits: main shells, wall: 0.1250, count: ${count} }]\n`,
      });
    expect(lines(6)).toEqual([
      '1 (1); main shell pair; std; M; now; renew main shells',
      '1 (1); main shell pair; std; M; now; choose main shells',
    ]);
    expect(lines(2)).toEqual([
      '1 (1); main shell pair; std; M; now; renew main shells',
      '1 (0); main shell pair; std; -; now; choose main shells',
    ]);
  });

  it('is named by one size, however the shelf writes it', () => {
    const ground = {
      'e/engine.yaml': `${ENGINE}fitted: { crankshaft: { main: 0.010 under } }\n`,
      'stock.yaml':
        'kind: stock\nshells: [{ code: M10, fits: main shells, size: 10 thou under, wall: 0.1300, count: 6 }]\n',
    };
    expect(
      shellsOf({
        blocks: `${clearances('0.0050')}
- { measure: main_housing_bore, with: fine, at: { 1: 3.2505, 2: 3.2505, 3: 3.2505 } }
- { measure: main_journal_diameter, with: mic, at: { 1: 2.9885, 2: 2.9885, 3: 2.9885 } }`,
        more: wiped.replace('main 2', 'main 1'),
        files: ground,
      }),
    ).toEqual([
      '1 (1); main shell pair; 0.010 under; M10; now; renew main shells',
      '1 (1); main shell pair; 0.010 under; M10; now; choose main shells',
    ]);
  });

  it('is bought though another might come nearer to the target', () => {
    const limits = limitsOf(
      LIMITS.replace('new: 0.0010 to 0.0030', 'new: 0.0010 to 0.0030, target: 0.0022 to 0.0028'),
    );
    expect(
      shellsOf({ blocks: clearances('0.0025'), more: wiped, files: { 'e/limits.yaml': limits } }),
    ).toEqual(['1 (0); main shell pair; std; -; now; renew main shells']);
  });

  it('takes ring sets for nothing but a cylinder', () => {
    const lines = linesOf({
      blocks: clearances('~'),
      more: 'found: [{ on: valve guides, is: worn, do: renew }, { on: lifters, is: worn, do: renew }]\n',
      files: { 'e/engine.yaml': ENGINE.replace('layout: {', 'layout: { valves: [I, E],') },
      stock: 'rings: [{ code: K, size: std, count: 4 }]\n',
    });
    expect(lines.filter((each) => /valve guide|lifter/.test(each))).toEqual([
      '8 (0); valve guides; as fitted; -; now; renew valve guides',
      '8 (0); lifters; as fitted; -; now; renew lifters',
    ]);
  });

  it('is a set of rings for each bore whose rings are worn', () => {
    const lines = linesOf({
      blocks:
        '- { measure: ring_end_gap, at: { 1: { top: 0.05, second: 0.05 }, 2: { top: 0.05, second: 0.02 } } }',
      stock: 'rings: [{ code: K, size: std, count: 1 }]\n',
      files: { 'e/limits.yaml': limitsOf('ring_end_gap: { new: 0.01 to 0.02, wear: { max: 0.04 } }') },
    });
    expect(lines.filter((each) => /ring/.test(each))).toEqual(['2 (1); ring sets; std; K; now; renew rings']);
  });

  it('comes with the choice where the same place is chosen anew', () => {
    const more = wiped.replace('main 2', 'main 3');
    expect(shellsOf({ blocks: clearances('0.0050'), more })).toEqual([
      '1 (0); main shell pair; std; -; after measuring; choose main shells',
    ]);
  });

  it('counts bores that nobody asked about and that are scored past the last step', () => {
    const more = `${AGREED}found: [{ on: [cylinder 2, cylinder 3], is: scored, depth: 0.030 }]\n`;
    expect(linesOf({ blocks: bores('4.1315'), more }).filter((each) => /; liners?;/.test(each))).toEqual([
      '2 (0); liners; as fitted; -; now; renew cylinders',
    ]);
  });
});

describe('the day on which parts are needed', () => {
  const STOCK = 'shells: [{ code: M20, fits: main shells, size: 0.020 under, wall: 0.13, count: 6 }]\n';
  const sent = (rest: string): string =>
    `${AGREED}sent: { part: crankshaft, to: North grinding, ${rest}, work: [grind main journals] }\n`;
  const shells = (rest: string) =>
    linesOf({ blocks: mains('2.9880'), more: sent(rest), stock: STOCK }).filter((each) => /shell/.test(each));
  const line = '3 (3); main shell pairs; 0.020 under; M20; after measuring; grind main journals';

  it.each([
    ['is when the part is due', 'due: 2026-02-20', `${line}; 2026-02-20`],
    ['is late where it has gone by', 'due: 2026-02-01', `${line}; 2026-02-01; late`],
    ['is none where the part is back', 'due: 2026-02-01, returned: 2026-02-02', line],
  ])('%s', (_, rest, said) => expect(shells(rest)).toEqual([said]));
});

describe('one pile of the shelf', () => {
  it('is taken from once, though some wait for the yes', () => {
    const lines = linesOf({
      blocks: '- { measure: piston_diameter, with: mic, at: { 1: 4.1195, 2: 4.1205, 3: 4.1215, 4: 4.1215 } }',
      more: 'agreed: { by: Owner, items: [renew piston 1] }\n',
      stock: 'pistons: [{ mark: A, size: std, diameter: 4.1215 }]\n',
      files: {
        'e/engine.yaml': `${ENGINE}job: { customer: Canal works }\n`,
        'e/limits.yaml': limitsOf('piston_diameter: { new: 4.1210 to 4.1220, wear: { min: 4.1200 } }'),
      },
    });
    expect(lines.filter((each) => /piston/.test(each))).toEqual([
      '1 (1); piston; std; -; now; renew pistons',
      '1 (0); piston; std; -; after the yes; renew pistons, not agreed yet',
    ]);
  });
});

describe('shells that the shelf was asked for', () => {
  const HOUSINGS = '- { measure: main_housing_bore, with: fine, at: { 1: 3.2505, 2: 3.2505, 3: 3.2505 } }';
  const JOURNALS = '- { measure: main_journal_diameter, with: mic, at: { 1: 2.9985, 2: 2.9985, 3: 2.9985 } }';
  const asked = (shells: string, files: Files = {}) =>
    linesOf({
      files,
      blocks: `${clearances('0.0050')}\n${HOUSINGS}\n${JOURNALS}`,
      stock: `shells: [${shells}]\n`,
    }).filter((each) => /shell/.test(each));

  it('are bought by their codes', () => {
    expect(asked('{ code: M, fits: main shells, wall: 0.1250, count: 6 }')).toEqual([
      '1 (1); main shell pair; std; M; now; choose main shells',
    ]);
  });

  it('are bought at once where none of them does', () => {
    expect(asked('{ code: M, fits: main shells, wall: 0.1300, count: 6 }')).toEqual([
      '1 (0); main shell pair; std; -; now; choose main shells',
    ]);
  });

  it('are bought in the classes that the maker’s table asks for', () => {
    const files = {
      'e/engine.yaml': `${ENGINE}stamps: { main_housings: { 3: 1 }, main_journals: { 3: A } }\n`,
      'e/limits.yaml': limitsOf(
        LIMITS,
        'select_fit: [{ fits: main shells, table: { 1: { A: { upper: blue, lower: red } } } }]\n',
      ),
    };
    expect(asked('{ code: M, class: red, fits: main shells, wall: 0.1300, count: 6 }', files)).toEqual([
      '1 (0); main shell pair; std, blue above and red below; -; now; choose main shells',
    ]);
  });
});

describe('shells of several places', () => {
  const loose = clearances('0.0050').replace('2: 0.0020', '2: 0.0050');
  const JOURNALS = '- { measure: main_journal_diameter, with: mic, at: { 1: 2.9985, 2: 2.9985, 3: 2.9985 } }';
  const asked = (shells: string, housings: string, files: Files = {}) =>
    linesOf({
      files,
      blocks: `${loose}\n- { measure: main_housing_bore, with: fine, at: { ${housings} } }\n${JOURNALS}`,
      stock: `shells: [${shells}]\n`,
    }).filter((each) => /shell/.test(each));

  it('wait for measuring where that was not done, and are bought where none on the shelf does', () => {
    const one = '{ code: M, fits: main shells, wall: 0.1300, count: 6 }';
    expect(asked(one, '1: 3.2505, 2: 3.2505')).toEqual([
      '1 (0); main shell pair; std; -; now; choose main shells',
      '1 (1); main shell pair; std; M; after measuring; choose main shells',
    ]);
  });

  it('are named by both codes where two halves of one pair differ', () => {
    const mixed = {
      'e/limits.yaml': limitsOf(
        LIMITS,
        'mixing: [{ fits: main shells, differ_by: 0.0005, thicker: lower }]\n',
      ),
    };
    const two =
      '{ code: A, fits: main shells, wall: 0.1250, count: 5 }, { code: B, fits: main shells, wall: 0.1255, count: 1 }';
    const lines = asked(two, '1: 3.2505, 2: 3.2505, 3: 3.2510', mixed).map((each) => each.split('; ')[3]);
    expect(lines).toContain('A and B');
  });
});

describe('what any opened engine takes', () => {
  const sundries = (more: string) =>
    linesOf({ blocks: bores('4.1315'), more }).filter((each) => /opened engine/.test(each));

  it.each([
    ['is in once it was replaced', 'replaced: [{ part: Gasket set }]\n', SUNDRIES.slice(1)],
    [
      'is in whatever else was replaced with it',
      'replaced: [{ part: shaft seals }, { part: gasket set }]\n',
      SUNDRIES.slice(2),
    ],
    ['is in once it was fitted', 'fitted: { gasket_set: { condition: new } }\n', SUNDRIES.slice(1)],
    ['is bought though its place was machined', 'machined: [{ part: gasket set }]\n', SUNDRIES],
  ])('%s', (_, more, lines) => expect(sundries(more)).toEqual(lines));

  it('is in once a later session of the run says so', () => {
    const later =
      'kind: session\nstage: machined\ndate: 2026-02-04\nreadings: []\nreplaced: [{ part: core plugs }]\n';
    const lines = linesOf({ blocks: bores('4.1315'), files: { 'e/z.yaml': later } });
    expect(lines.filter((each) => /opened engine/.test(each))).toEqual(
      SUNDRIES.filter((each) => !/core/.test(each)),
    );
  });
});

describe('fasteners', () => {
  const joint = (name: string, reuse: string, passes: string): Files => ({
    [`e/torque/${name}.yaml`]: `kind: torque\njoint: ${name} caps\nsource: Invented.\nfasteners: { names: [1, 2, 3], thread: M10x1.5, grade: 10.9${reuse} }\norder: [1, 2, 3]\npasses: [${passes}]\n`,
  });
  const TURNED = '{ to: 40 lbf ft }, { turn: 90 deg }';
  const bolts = (files: Files, blocks = bores('4.1315')) =>
    linesOf({ blocks, files, more: AGREED }).filter((each) => /bolts/.test(each));

  it.each([
    [
      'that are used once',
      joint('rod', ', reuse: false', '{ to: 40 lbf ft }'),
      ['3 (0); rod caps: bolts; M10 x 1.5; -; now; rod: used once'],
    ],
    [
      'that are turned by an angle',
      joint('rod', '', TURNED),
      ['3 (0); rod caps: bolts; M10 x 1.5; -; now; rod: turned by an angle'],
    ],
    [
      'that are both',
      joint('rod', ', reuse: false', TURNED),
      ['3 (0); rod caps: bolts; M10 x 1.5; -; now; rod: used once'],
    ],
    ['that may be used again though they are turned', joint('rod', ', reuse: true', TURNED), []],
    ['that are only tightened to a torque', joint('rod', '', '{ to: 40 lbf ft }'), []],
  ])('%s', (_, files, lines) => expect(bolts(files)).toEqual(lines));

  it.each([
    ['are in once they are tightened new', 'rebuild', ['rod new'], []],
    ['are in, whatever else is tightened', 'rebuild', ['main reused', 'rod new'], []],
    ['are bought where the old ones were tightened', 'rebuild', ['rod reused'], ['rod: used once']],
    ['are bought where it is only tried together', 'trial', ['rod new'], ['rod: used once']],
    ['are bought where those of another joint are new', 'rebuild', ['main new'], ['rod: used once']],
  ])('%s', (_, stage, joints, lines) => {
    const tightened = joints.map((each) => each.replace(/(.*) (.*)/, '{ sequence: $1, fasteners: $2 }'));
    const files = {
      ...joint('rod', ', reuse: false', '{ to: 40 lbf ft }'),
      ...joint('main', '', '{ to: 40 lbf ft }'),
      'e/z.yaml': `kind: session\nstage: ${stage}\ndate: 2026-02-04\nreadings: []\ntightened: [${tightened.join(', ')}]\n`,
    };
    expect(bolts(files).map((each) => each.split('; ').at(-1))).toEqual(lines);
  });

  const seen = (on: string, files: Files) =>
    linesOf({
      blocks: bores('4.1255'),
      files,
      more: `found: [{ on: ${on}, is: stretched, do: renew }]\n`,
    }).filter((each) => /bolt|stud/.test(each));
  const eightOf = (name: string): Files => ({
    [`e/torque/${name}.yaml`]: `kind: torque\njoint: ${name} caps\nsource: Invented.\nfasteners: { count: 8, reuse: true }\npasses: [${TURNED}]\n`,
  });
  const heads: Files = {
    ...joint('left head', ', reuse: true', TURNED),
    ...joint('right head', ', reuse: true', TURNED),
  };

  it.each([
    [
      'that are bought in any case',
      seen('rod bolts', joint('rod', ', reuse: false', TURNED)),
      ['3 (0); rod caps: bolts; M10 x 1.5; -; now; rod: used once'],
    ],
    [
      'by the count of their joint',
      seen('main bolts', eightOf('main')),
      ['8 (0); main bolts; as fitted; -; now; renew main bolts'],
    ],
    [
      'of one place by its share of the joint',
      seen('rod bolt 2', eightOf('rod')),
      ['2 (0); rod bolts; as fitted; -; now; renew rod bolts'],
    ],
    [
      'of both heads together',
      seen('head studs', heads),
      ['6 (0); head studs; as fitted; -; now; renew head studs'],
    ],
    [
      'one a place where no document counts them',
      seen('rod bolts', {}),
      ['4 (0); rod bolts; as fitted; -; now; renew rod bolts'],
    ],
  ])('seen to be renewed are bought once, %s', (_, is, lines) => expect(is).toEqual(lines));

  it('of an engine that was not opened stay', () => {
    const files = joint('rod', ', reuse: false', TURNED);
    expect(linesOf({ blocks: clearances('~'), files, stage: 'service' })).toEqual([]);
  });
});

it.each([
  ['now', 'after the yes'],
  ['after measuring', 'after measuring'],
] as const)('what would be bought %s waits for a yes: %s', (when, then) => {
  const line = { what: 'pistons', code: 'P', size: 'std', count: 4, onShelf: 1, when, for: 'bore cylinders' };
  expect(afterYes(line)).toEqual({ ...line, when: then, for: 'bore cylinders, not agreed yet' });
});
