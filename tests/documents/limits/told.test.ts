import { describe, expect, it } from 'vitest';
import { characteristics } from '../../../src/characteristics/registry.ts';
import { ENGINE, type Files, limitsOf, shopOf } from '../../shopOf.ts';

const LIMITS = 'e/l.yaml';
const RINGS = ENGINE.replace('crankpins: 4', 'crankpins: 4, rings: [top, second]');
const BOTH_FIT = 'keep one of the two, or let one extend the other';
const TAKES = 'it takes target, new, wear, temperature, source and note';
const LENGTHS = 'write it in one of: in, thou, mm, um';
const EXCHANGED = 'look at the sheet: the two may be exchanged';

type Told = readonly [at: string, code: string, message: string, help: string | undefined];

/** Everything that is said of an engine's documents; a place in its first limits by line and column alone. */
const told = (files: Files): readonly Told[] =>
  shopOf(files).diagnostics.map(({ code, message, help, place: { path, line, column } }) => [
    `${path === LIMITS ? '' : `${path}:`}${line}:${column}`,
    code.replace('document/', ''),
    message,
    help,
  ]);

const files = (lines: string, engine = ENGINE, more: Files = {}): Files => ({
  'e/engine.yaml': engine,
  [LIMITS]: limitsOf(lines),
  ...more,
});

const TAPERS = characteristics.filter(({ figure }) => figure === 'taper').map(({ id }) => id);
const ALONG_A_LENGTH = characteristics
  .filter(({ figure, id }) => figure === 'taper' || id.endsWith('_flatness_in_span'))
  .map(({ id }) => id);
const PLAY = 'main_bearing_clearance: { new: { max: 1 } }';

describe('what is wrong with limits is said with their figures, and what to do', () => {
  it.each<[title: string, lines: string, ...told: Told[]]>([
    [
      'a band upside down',
      'main_bearing_clearance: { new: { min: 0.0038, max: 0.0020 } }',
      ['4:34', 'value', 'the least, 0.0038, is more than the greatest, 0.0020', 'exchange them'],
    ],
    [
      'a formula over what nobody knows',
      'main_bearing_clearance: { new: { max: { formula: "0.001 * main_journal_diamter" } } }',
      [
        '4:52',
        'formula',
        'in the formula 0.001 * main_journal_diamter: no size or characteristic is called main_journal_diamter',
        'did you mean main_journal_diameter?',
      ],
    ],
    [
      'a formula over a test',
      'main_bearing_clearance: { new: { max: { formula: "0.001 * crankshaft_crack_test" } } }',
      [
        '4:52',
        'formula',
        'in the formula 0.001 * crankshaft_crack_test: crankshaft_crack_test is a test, and a formula needs numbers',
        undefined,
      ],
    ],
    [
      'a limit over what it limits',
      'main_journal_diameter: { new: { max: { formula: "main_journal_diameter + 0.001" } } }',
      [
        '4:51',
        'formula',
        'in the formula main_journal_diameter + 0.001: the limit is worked out from main_journal_diameter, which it limits: it moves with the reading, so that no reading is out',
        'write the nominal size as a number',
      ],
    ],
    [
      'a formula over what nothing relates to the position',
      'main_bearing_clearance: { new: { max: { formula: "0.001 * cylinder_bore" } } }',
      [
        '4:52',
        'formula',
        'in the formula 0.001 * cylinder_bore: cylinder_bore is measured at a cylinder, this at a main, and the layout does not state which of them belong together',
        'name one, such as cylinder_bore[1]; a characteristic of the engine may take max(cylinder_bore[*])',
      ],
    ],
    [
      'a formula over one position of it',
      'main_bearing_clearance: { new: { max: { formula: "0.001 * cylinder_bore[1]" } } }',
    ],
    [
      'a formula of numbers that comes to nothing',
      'main_bearing_clearance: { at: { 1: { new: { min: { formula: "1 / 0" } } } } }',
      [
        '4:63',
        'formula',
        'the formula 1 / 0 cannot be worked out: this divides by zero',
        'divide by something that cannot come to zero',
      ],
    ],
    [
      'a test with limits',
      'crankshaft_crack_test: { source: page 3 }',
      [
        '4:3',
        'value',
        'crankshaft_crack_test is a test: it is passed or failed',
        'take it out: a test has no limits',
      ],
    ],
    [
      'a name that nobody knows',
      'main_bearing_clearence: { new: { max: 1 } }',
      [
        '4:3',
        'unknown-measure',
        'unknown characteristic main_bearing_clearence',
        'did you mean main_bearing_clearance?',
      ],
    ],
    [
      'a taper of what is not one',
      'main_bearing_clearance: { per: 1 in, by: ends, new: { max: 1 } }',
      ...(['per', 'by'] as const).map(
        (key, index): Told => [
          `4:${29 + 11 * index}`,
          'value',
          `\`${key}\` says how a taper is taken, and main_bearing_clearance is not a taper`,
          `those that take it: ${(key === 'by' ? TAPERS : ALONG_A_LENGTH).join(', ')}`,
        ],
      ),
    ],
    [
      'a temperature of what is no length',
      'compression_pressure: { temperature: 70 degF, new: { min: 40 psi } }',
      [
        '4:27',
        'value',
        '`temperature` says how warm a part is that grows, and compression_pressure is not a length',
        'take it out; a note may say it',
      ],
    ],
    [
      'a wear limit tighter than that of new parts above',
      'main_bearing_clearance: { new: 0.0020 to 0.0040, wear: { max: 0.0030 } }',
      ['4:58', 'value', 'the wear limit 0.0030 is tighter than the 0.0040 of new parts', EXCHANGED],
    ],
    [
      'a wear limit tighter than that of new parts below',
      'main_bearing_clearance: { new: 0.0020 to 0.0040, wear: { min: 0.0025 } }',
      ['4:58', 'value', 'the wear limit 0.0025 is tighter than the 0.0020 of new parts', EXCHANGED],
    ],
    ...(['0', '-0.001'] as const).map((deviation): [string, string, Told] => [
      `parts that deviate by ${deviation}`,
      `main_journal_diameter: { usual: { mean: 3, deviation: ${deviation} } }`,
      [
        '4:57',
        'value',
        `${deviation} is not a standard deviation`,
        'write one standard deviation of such parts, above 0',
      ],
    ]),
    [
      'usual parts of another quantity',
      'main_journal_diameter: { usual: { mean: 3, deviation: 5 psi } }\ncrankpin_diameter: { usual: { mean: 5 psi, deviation: 0.0001 } }',
      ['4:57', 'wrong-quantity', '5 psi is a pressure, and a length is wanted here', LENGTHS],
      ['5:39', 'wrong-quantity', '5 psi is a pressure, and a length is wanted here', LENGTHS],
    ],
    [
      'not parts that hardly deviate',
      'main_journal_diameter: { usual: { mean: 3, deviation: 0.0000001 mm } }',
    ],
    [
      'not a wear limit as wide as that of new parts',
      'main_bearing_clearance: { new: 0.0020 to 0.0040, wear: 0.0020 to 0.0040 }',
    ],
    [
      'one size twice',
      'main_journal_diameter: { sizes: { 0.010 under: { new: { max: 3 } }, 10 thou under: { new: { max: 3 } } } }',
      ['4:71', 'duplicate-key', '10 thou under and 0.010 under are one size', 'keep one of the two'],
    ],
    [
      'a wear limit of a size tighter than its new one',
      'main_journal_diameter: { sizes: { 0.010 under: { new: { min: 3 }, wear: { min: 3.1 } } } }',
      ['4:75', 'value', 'the wear limit 3.1 is tighter than the 3 of new parts', EXCHANGED],
    ],
  ])('%s', (_, lines, ...expected) => expect(told(files(lines))).toEqual(expected));

  it('a formula over sizes that comes to nothing shows it with the sizes in it', () => {
    const engine = `${ENGINE}sizes: { bore: 4.0 }\n`;
    const clearance = (formula: string) =>
      files(`main_bearing_clearance: { new: { max: { formula: "${formula}" } } }`, engine);
    expect(told(clearance('1 / (bore - 4)'))).toEqual([
      [
        '4:52',
        'formula',
        'the formula 1 / (bore - 4), here 1 / (4.0 − 4) cannot be worked out: this divides by zero',
        'divide by something that cannot come to zero',
      ],
    ]);
    expect(told(clearance('1 / (bore - 3)'))).toEqual([]);
  });

  it('of a formula without a unit only that: it is not worked out', () => {
    const engine = 'kind: engine\nname: A\nlayout: { cylinders: 4 }\n';
    expect(told(files('turning_torque: { new: { max: { formula: "1 / 0" } } }', engine))).toEqual([
      [
        '4:44',
        'no-unit',
        'a plain number, and no document states the unit of a torque',
        "write the unit beside it, or `units: { torque: lbf ft }` in this document, the engine's or shop.yaml",
      ],
    ]);
  });

  it('shells that there are not are named, and what can be chosen so', () => {
    const choosing = `${limitsOf(PLAY)}select_fit: [{ fits: oil shells, table: { A: { 1: red } } }, { fits: main_shells, table: { A: { 1: red } } }]
mixing: [{ fits: sheels, differ_by: 0.0005, thicker: lower }, { fits: rod shells, differ_by: 0.0005, thicker: upper }]
`;
    const help = 'it is one of main shells, rod shells';
    const found = files(PLAY, ENGINE, { [LIMITS]: choosing });
    expect(told(found)).toEqual([
      ['5:22', 'value', 'no shells are called oil shells', help],
      ['6:18', 'value', 'no shells are called sheels', help],
    ]);
  });
});

it('of how parts are chosen an amount of another quantity is told, and that choice left out', () => {
  const choosing = `${limitsOf(PLAY)}select_fit: [{ fits: main shells, table: { A: { 1: red } }, housings: { A: 3.5 to 3.6 psi } }]
mixing: [{ fits: main shells, differ_by: 5 psi, thicker: lower }]
gasket_choice: [{ code: A, protrusion: 0.7 psi to 0.8 mm }, { code: B, protrusion: 0.7 mm to 0.8 psi }]
`;
  const found = told(files(PLAY, ENGINE, { [LIMITS]: choosing }));
  expect(found.map(([at, code, message]) => [at, code, message.split(' is ')[0]])).toEqual([
    ['5:76', 'wrong-quantity', '3.6 psi'],
    ['6:42', 'wrong-quantity', '5 psi'],
    ['7:40', 'wrong-quantity', '0.7 psi'],
    ['7:84', 'wrong-quantity', '0.8 psi'],
  ]);
});

describe('a position that limits cannot hold at is said', () => {
  it.each<[title: string, lines: string, ...told: Told[]]>([
    [
      'that the engine has not, and of two axes the one that it has not',
      'ring_end_gap: { at: { 9: { top: { new: { max: 1 } } }, 3: { third: { new: { max: 2 } } } } }',
      [
        '4:25',
        'unknown-position',
        'the engine has no ring of a cylinder 9',
        'it has 1 top, 1 second, 2 top, 2 second, 3 top, 3 second, 4 top, 4 second',
      ],
      ['4:63', 'unknown-position', 'cylinder 3 has no ring third', 'it has top, second'],
    ],
    [
      'that no engine without valves has',
      'valve_lash_cold: { new: { max: 1 } }',
      [
        '4:3',
        'unknown-position',
        'valve_lash_cold is measured at a valve of a cylinder, and the engine has none',
        'name each valve in the layout of the engine document, or leave these limits out',
      ],
    ],
    ['not that of a session, which names its own', 'turning_torque: { new: { max: 1 } }'],
    [
      'and a key that may be a band misspelt',
      'main_bearing_clearance: { at: { 1: { new: { max: 1 }, wera: { max: 1 } } } }',
      ['4:57', 'unknown-key', 'unknown key `wera`', 'did you mean wear?'],
    ],
    [
      'also where positions may follow',
      'ring_end_gap: { at: { 3: { nwe: { max: 2 }, top: { new: { max: 1 } } } } }',
      ['4:30', 'unknown-key', 'unknown key `nwe`', 'did you mean new?'],
    ],
    [
      'and a key that is neither band nor position',
      'main_bearing_clearance: { at: { 2: { new: { max: 1 }, hither: { max: 1 } } } }',
      ['4:57', 'unknown-key', 'unknown key `hither`', TAKES],
    ],
    ...(['at: { top: { new: { max: 1 } } }', 'from: { max: 1 }'] as const).map(
      (key): [string, string, Told] => [
        `and what stands at no position: ${key}`,
        `ring_end_gap: { at: { 3: { ${key}, new: { max: 2 } } } }`,
        ['4:30', 'unknown-key', `unknown key \`${key.split(':')[0]}\``, TAKES],
      ],
    ),
    [
      'and a band in place of a position',
      'main_bearing_clearance: { at: { new: { max: 1 } } }',
      ['4:42', 'unknown-key', 'unknown key `max`', TAKES],
      ['4:35', 'unknown-position', 'the engine has no main new', 'it has 1, 2, 3'],
    ],
    [
      'where two hold at the same, and neither says more of where',
      'ring_end_gap: { at: { top: { new: { max: 1 } }, 3: { new: { max: 2 } } } }',
      [
        '4:68',
        'limits-conflict',
        'the new bands of ring_end_gap at top ring and at cylinder 3 hold at the same positions',
        'write what holds there at both: at top ring cylinder 3',
      ],
    ],
    [
      'also by their least alone, and of the wear band where the new ones are alike',
      'ring_end_gap: { at: { top: { new: { max: 2 }, wear: { min: 1 } }, 3: { new: { max: 2 }, wear: { min: 2 } } } }',
      [
        '4:104',
        'limits-conflict',
        'the wear bands of ring_end_gap at top ring and at cylinder 3 hold at the same positions',
        'write what holds there at both: at top ring cylinder 3',
      ],
    ],
    [
      'also where what stands at both says nothing of that band',
      'ring_end_gap: { at: { top: { new: { max: 1 } }, 3: { new: { max: 2 }, top: { wear: { max: 3 } } } } }',
      [
        '4:68',
        'limits-conflict',
        'the new bands of ring_end_gap at top ring and at cylinder 3 hold at the same positions',
        'write what holds there at both: at top ring cylinder 3',
      ],
    ],
    [
      'also where a nearer band stands at another',
      'ring_end_gap: { at: { top: { new: { max: 1 } }, 3: { new: { max: 2 }, second: { new: { max: 1 } } } } }',
      [
        '4:68',
        'limits-conflict',
        'the new bands of ring_end_gap at top ring and at cylinder 3 hold at the same positions',
        'write what holds there at both: at top ring cylinder 3',
      ],
    ],
    [
      'of several once for each two',
      'ring_end_gap: { at: { top: { new: { max: 1 } }, 3: { new: { max: 2 } }, 4: { new: { max: 3 } } } }',
      ...(
        [
          ['4:68', 'top ring', 'cylinder 3'],
          ['4:92', 'top ring', 'cylinder 4'],
        ] as const
      ).map(
        ([at, a, b]): Told => [
          at,
          'limits-conflict',
          `the new bands of ring_end_gap at ${a} and at ${b} hold at the same positions`,
          `write what holds there at both: at ${a} ${b}`,
        ],
      ),
    ],
    ['not where the two are alike', 'ring_end_gap: { at: { top: { new: 1 to 2 }, 3: { new: 1 to 2 } } }'],
    [
      'not where they set other bands',
      'ring_end_gap: { at: { top: { new: { max: 1 } }, 3: { wear: { max: 2 } } } }',
    ],
    [
      'not where they meet nowhere',
      'ring_end_gap: { at: { 3: { new: { max: 1 } }, 4: { new: { max: 2 } } } }',
    ],
    [
      'not where what holds at both is stated',
      'ring_end_gap: { at: { top: { new: { max: 1 } }, 3: { new: { max: 2 }, top: { new: { max: 3 } } } } }',
    ],
  ])('%s', (_, lines, ...expected) => expect(told(files(lines, RINGS))).toEqual(expected));

  const LABELLED = `${RINGS}labels: { main: { 1: front }, cylinder: { 3: third } }\n`;
  const twice = (lines: string): readonly Told[] =>
    told(files(lines, LABELLED)).filter(([, code]) => code === 'duplicate-key');

  it.each<[title: string, lines: string, ...told: Told[]]>([
    [
      'by its number and its label',
      'main_bearing_clearance: { at: { 1: { new: { max: 1 } }, front: { wear: { max: 2 } } } }',
      ['4:59', 'duplicate-key', 'front and 1 are the same main, 1', 'keep the one that is meant'],
    ],
    [
      'deeper in',
      'ring_end_gap: { at: { 3: { top: { new: { max: 1 } } }, third: { top: { wear: { max: 2 } } } } }',
      [
        '4:67',
        'duplicate-key',
        'third top and 3 top are the same ring of a cylinder, 3 top',
        'keep the one that is meant',
      ],
    ],
    [
      'not two positions',
      'main_bearing_clearance: { at: { 2: { new: { max: 1 } }, front: { new: { max: 2 } } } }',
    ],
  ])('where it is named twice, %s', (_, lines, ...expected) => expect(twice(lines)).toEqual(expected));

  it('and not of limits that serve other engines, which may have it', () => {
    const above = 'units: { length: in }\n';
    const shared = limitsOf(
      'ring_end_gap: { at: { 9: { top: { new: { max: 1 } } }, top: { new: { max: 1 } } } }\nvalve_lash_cold: { new: { max: 1 } }',
    );
    expect(told(files(PLAY, RINGS, { 'l.yaml': `${above}${shared}` }))).toEqual([]);
    const named = limitsOf(
      'main_bearing_clearance: { at: { 1: { wear: { max: 1 } }, front: { target: { max: 1 } } } }',
    );
    expect(
      told(files('cylinder_taper: { wear: { max: 1 } }', LABELLED, { 'l.yaml': `${above}${named}` })),
    ).toEqual([
      ['l.yaml:5:60', 'duplicate-key', 'front and 1 are the same main, 1', 'keep the one that is meant'],
    ]);
  });
});

describe('two documents of a folder that set one band are told', () => {
  it.each<[title: string, lines: string, ...told: Told[]]>([
    [
      'in general',
      'main_bearing_clearance: { new: { max: 1 } }',
      [
        'e/m.yaml:4:41',
        'limits-conflict',
        'e/l.yaml sets the new band of main_bearing_clearance as well, in the same folder',
        BOTH_FIT,
      ],
    ],
    [
      'at a position',
      'main_bearing_clearance: { at: { 1: { wear: { min: 1 } } } }',
      [
        'e/m.yaml:4:53',
        'limits-conflict',
        'e/l.yaml sets the wear band of main_bearing_clearance at 1 as well, in the same folder',
        BOTH_FIT,
      ],
    ],
    [
      'of a size',
      'main_journal_diameter: { sizes: { 0.010 under: { target: { max: 3 } } } }',
      [
        'e/m.yaml:4:67',
        'limits-conflict',
        'e/l.yaml sets the target band of main_journal_diameter, 0.010 under as well, in the same folder',
        BOTH_FIT,
      ],
    ],
    [
      'that no part may go beyond',
      'main_journal_diameter: { last_size: 2.9 }',
      [
        'e/m.yaml:4:39',
        'limits-conflict',
        'e/l.yaml sets the last band of main_journal_diameter as well, in the same folder',
        BOTH_FIT,
      ],
    ],
  ])('%s', (_, lines, ...expected) => {
    expect(told(files(lines, ENGINE, { 'e/m.yaml': limitsOf(lines) }))).toEqual(expected);
  });

  const sizes = (...rows: readonly string[]) => `main_journal_diameter: { sizes: { ${rows.join(', ')} } }`;

  it('of a size however it is written, and of no other size', () => {
    const [one, other, third] = [
      '0.010 under: { target: { max: 3 } }',
      '10 thou under: { target: { max: 3 } }',
      '0.020 under: { target: { max: 3 } }',
    ];
    expect(told(files(sizes(one, third), ENGINE, { 'e/m.yaml': limitsOf(sizes(other)) }))).toEqual([
      [
        'e/m.yaml:4:69',
        'limits-conflict',
        'e/l.yaml sets the target band of main_journal_diameter, 10 thou under as well, in the same folder',
        BOTH_FIT,
      ],
    ]);
    expect(told(files(sizes(one), ENGINE, { 'e/m.yaml': limitsOf(sizes(third)) }))).toEqual([]);
  });

  it('not of a place that one document names twice, which is told as such', () => {
    const twice = 'main_bearing_clearance: { at: { 3: { new: { max: 1 } }, rear: { new: { max: 2 } } } }';
    const engine = `${ENGINE}labels: { main: { 3: rear } }\n`;
    expect(told(files(twice, engine))).toEqual([
      ['4:59', 'duplicate-key', 'rear and 3 are the same main, 3', 'keep the one that is meant'],
    ]);
  });
});
