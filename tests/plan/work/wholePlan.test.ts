import { describe, expect, it } from 'vitest';
import type { Row } from '../../../src/checks/judge/row.ts';
import { jobsOf } from '../../../src/plan/work/jobs.ts';
import { titleOf } from '../../../src/plan/work/jobTitle.ts';
import { urgencyOf } from '../../../src/plan/work/urgency.ts';
import { worstOf } from '../../../src/plan/work/worst.ts';
import { fraction } from '../../../src/quantity/fraction.ts';
import { ENGINE, type Files, limitsOf, REGISTER, sessionOf } from '../../shopOf.ts';
import { contextOf } from '../planOf.ts';

interface Said {
  readonly limits: string;
  readonly blocks: string;
  readonly more?: string;
  readonly plan?: string;
  readonly stage?: string;
  readonly files?: Files;
}

const shop = ({ limits, blocks, more = '', plan = '', stage = 'teardown', files = {} }: Said): Files => ({
  'shop.yaml': `kind: shop\nunits: { length: in, mass: g }\n${plan}`,
  'register.yaml': REGISTER,
  'e/engine.yaml': ENGINE,
  'e/limits.yaml': limitsOf(limits),
  'e/session.yaml': sessionOf(stage, blocks, more),
  ...files,
});

/** Each line of the plan, how urgent it is, and the places whose figures ask for it. */
function planOf(said: Said): readonly string[] {
  const context = contextOf(shop(said));
  return jobsOf(context).map((job) => {
    const rows = job.rows.map(({ characteristic, position }) =>
      `${characteristic.id} ${position.name}`.trim(),
    );
    const found = job.found.map(({ on, is }) => `${on.join(', ')} ${is}`);
    const serves = job.serves?.map(({ name }) => `for ${name}`) ?? [];
    return [`${titleOf(job, context.engine.document)} (${job.urgency})`, ...rows, ...found, ...serves].join(
      '; ',
    );
  });
}

const twice = (block: string): string => `${block}\n${block}\n`;
const mains = (first: string, third: string): string =>
  twice(`- { measure: main_journal_diameter, with: mic, at: { 1: ${first}, 2: 2.9983, 3: ${third} } }`);
const MAINS = 'main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 } }';
const BORES = 'cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 }, largest_bore: 4.1560 }';
const bores = (...sizes: readonly string[]): string =>
  twice(
    `- { measure: cylinder_bore, with: bore, at: { ${sizes.map((size, index) => `${index + 1}: ${size}`).join(', ')} } }`,
  );
const CRACKED = 'found: [{ on: crankshaft, is: cracked, do: renew }]\n';

describe('a plan', () => {
  it.each<readonly [string, Said, readonly string[]]>([
    [
      'of journals that are out and worn, the worst first',
      { limits: MAINS, blocks: mains('2.9975', '2.9965') },
      [
        'clean crankshaft (must); for grind main journals',
        'crack test crankshaft (must); for grind main journals',
        'grind main journals 1 to 3 (must); main_journal_diameter 3; main_journal_diameter 1',
        'wash crankshaft (must); for grind main journals',
      ],
    ],
    [
      'of journals that are worn and none out',
      { limits: MAINS, blocks: mains('2.9975', '2.9976') },
      [
        'clean crankshaft (should); for grind main journals',
        'crack test crankshaft (should); for grind main journals',
        'grind main journals 1 to 3 (should); main_journal_diameter 1; main_journal_diameter 3',
        'wash crankshaft (should); for grind main journals',
      ],
    ],
    [
      'of journals that run out',
      {
        limits: `${MAINS}\ncrankshaft_runout: { wear: { max: 0.0010 } }`,
        blocks: `${mains('2.9965', '2.9985')}- { measure: crankshaft_runout, with: dial, supported_on: [1, 3], at: { 2: 0.0020 } }`,
      },
      [
        'clean crankshaft (must); for grind main journals; for straighten crankshaft',
        'crack test crankshaft (must); for grind main journals; for straighten crankshaft',
        'straighten crankshaft (must); crankshaft_runout 2',
        'grind main journals 1 to 3 (must); main_journal_diameter 1',
        'wash crankshaft (must); for grind main journals; for straighten crankshaft',
      ],
    ],
    [
      'of a crankshaft to be renewed says what else was wrong with it',
      {
        limits: `${MAINS}\ncrankshaft_runout: { wear: { max: 0.0010 } }`,
        blocks: `${mains('2.9965', '2.9985')}- { measure: crankshaft_runout, with: dial, supported_on: [1, 3], at: { 2: 0.0020 } }`,
        more: CRACKED,
      },
      ['renew crankshaft (must); main_journal_diameter 1; crankshaft_runout 2; crankshaft cracked'],
    ],
    [
      'of a crankpin to be renewed renews the crankshaft',
      {
        limits: MAINS,
        blocks: mains('2.9985', '2.9985'),
        more: 'found: [{ on: crankpin 2, is: cracked, do: renew }]\n',
      },
      ['renew crankshaft (must); crankpin 2 cracked'],
    ],
    [
      'of a cam journal to be renewed renews the camshaft',
      {
        limits: MAINS,
        blocks: mains('2.9985', '2.9985'),
        more: 'found: [{ on: cam journal 2, is: cracked, do: renew }]\n',
        files: { 'e/engine.yaml': ENGINE.replace('crankpins: 4', 'crankpins: 4, cam_bearings: 3') },
      },
      ['renew camshaft (must); cam journal 2 cracked'],
    ],
    [
      'of bores past their last step renews those',
      { limits: BORES, blocks: bores('4.1315', '4.1570', '4.1255', '4.1255') },
      [
        'clean block (must); for bore cylinders',
        'bore cylinders 1, 3, 4 (must); cylinder_bore 1',
        'renew cylinder 2 (must); cylinder_bore 2',
        'weigh and balance pistons (must); for bore cylinders',
        'wash block (must); for bore cylinders',
      ],
    ],
    [
      'of one bore past its last step, and the others sound',
      { limits: BORES, blocks: bores('4.1255', '4.1570', '4.1255', '4.1255') },
      ['renew cylinder 2 (must); cylinder_bore 2'],
    ],
    [
      'of a scored bore',
      {
        limits: BORES,
        blocks: bores('4.1255', '4.1255', '4.1255', '4.1255'),
        more: 'found: [{ on: cylinder 2, is: scored, do: machine, depth: 0.002 }]\n',
      },
      [
        'clean block (must); for bore cylinders',
        'bore cylinders 1 to 4 (must); cylinder 2 scored',
        'weigh and balance pistons (must); for bore cylinders',
        'wash block (must); for bore cylinders',
      ],
    ],
    [
      'of bores each by itself',
      {
        limits: BORES,
        blocks: bores('4.1315', '4.1255', '4.1255', '4.1255'),
        plan: 'plan: { separate: [cylinders] }\n',
        more: 'found: [{ on: cylinder 4, is: scored, do: machine, depth: 0.002 }]\n',
      },
      [
        'clean block (must); for bore cylinders',
        'bore cylinders 1, 4 (must); cylinder_bore 1; cylinder 4 scored',
        'weigh and balance pistons (must); for bore cylinders',
        'wash block (must); for bore cylinders',
      ],
    ],
    [
      'of a warped deck and a housing',
      {
        limits: 'deck_flatness: { wear: { max: 0.004 } }\nmain_housing_bore: { new: 3.2500 to 3.2510 }',
        blocks: `- { measure: deck_flatness, stations: [first, second], directions: [along], at: { all: [[0.006], [0.006]] } }\n${twice('- { measure: main_housing_bore, with: fine, at: { 1: 3.2530, 2: 3.2505, 3: 3.2505 } }')}`,
      },
      [
        'clean block (must); for line bore main housings; for surface block',
        'line bore main housing 1 (must); main_housing_bore 1',
        'surface block (must); deck_flatness all',
        'wash block (must); for line bore main housings; for surface block',
      ],
    ],
    [
      'of pistons to be renewed',
      {
        limits: 'piston_diameter: { wear: { min: 3.8700 } }',
        blocks: twice(
          '- { measure: piston_diameter, with: mic, at: { 1: 3.8690, 2: 3.8710, 3: 3.8710, 4: 3.8710 } }',
        ),
      },
      ['renew piston 1 (must); piston_diameter 1', 'weigh and balance pistons (must); for renew pistons'],
    ],
    [
      'of pins to be renewed',
      {
        limits: 'piston_pin_diameter: { wear: { min: 0.9990 } }',
        blocks: twice(
          '- { measure: piston_pin_diameter, with: mic, at: { 1: 0.9980, 2: 0.9995, 3: 0.9995, 4: 0.9995 } }',
        ),
      },
      ['renew piston pin 1 (must); piston_pin_diameter 1'],
    ],
    [
      'of shells and clearances over journals that must be ground has them come with that',
      {
        limits: `${MAINS}\nmain_bearing_clearance: { new: 0.0010 to 0.0020, wear: { max: 0.0030 } }\nmain_shell_thickness: { new: 0.1245 to 0.1250 }\nrod_bearing_clearance: { new: 0.0010 to 0.0020 }`,
        blocks: `${mains('2.9965', '2.9985')}- { measure: main_bearing_clearance, with: fine, at: { 1: 0.0041, 2: 0.0015, 3: 0.0015 } }\n- { measure: main_shell_thickness, with: mic, at: { 1: 0.1235, 2: 0.1246, 3: 0.1246 } }\n- { measure: rod_bearing_clearance, with: fine, at: { 1: 0.0025, 2: 0.0015, 3: 0.0015, 4: 0.0015 } }`,
      },
      [
        'clean crankshaft (must); for grind main journals',
        'crack test crankshaft (must); for grind main journals',
        'grind main journals 1 to 3 (must); main_journal_diameter 1',
        'choose rod shell 1 (must); rod_bearing_clearance 1',
        'wash crankshaft (must); for grind main journals',
      ],
    ],
    [
      'of clearances over journals that only are worn chooses shells as well',
      {
        limits: `${MAINS}\nmain_bearing_clearance: { new: 0.0010 to 0.0020, wear: { max: 0.0030 } }`,
        blocks: `${mains('2.9975', '2.9985')}- { measure: main_bearing_clearance, with: fine, at: { 1: 0.0041, 2: 0.0025, 3: 0.0015 } }`,
      },
      [
        'clean crankshaft (should); for grind main journals',
        'crack test crankshaft (should); for grind main journals',
        'grind main journals 1 to 3 (should); main_journal_diameter 1',
        'choose main shells 1, 2 (must); main_bearing_clearance 1; main_bearing_clearance 2',
        'wash crankshaft (should); for grind main journals',
      ],
    ],
    [
      'of fits off their target',
      {
        limits:
          'main_bearing_clearance: { new: 0.0010 to 0.0030, target: 0.0015 to 0.0020 }\npiston_pin_diameter: { new: 0.9990 to 0.9999, target: 0.9995 to 0.9996 }',
        blocks:
          '- { measure: main_bearing_clearance, with: fine, at: { 1: 0.0025, 2: 0.0018, 3: 0.0018 } }\n- { measure: piston_pin_diameter, with: mic, at: { 1: 0.9992, 2: 0.9995, 3: 0.9995, 4: 0.9995 } }',
      },
      ['choose main shell 1 (may); main_bearing_clearance 1'],
    ],
    [
      'of one fit off its target and one out',
      {
        limits: 'main_bearing_clearance: { new: 0.0010 to 0.0030, target: 0.0015 to 0.0020 }',
        blocks: '- { measure: main_bearing_clearance, with: fine, at: { 1: 0.0025, 2: 0.0018, 3: 0.0035 } }',
      },
      ['choose main shells 1, 3 (must); main_bearing_clearance 1; main_bearing_clearance 3'],
    ],
    [
      'of one fit off its target and one worn',
      {
        limits:
          'main_bearing_clearance: { new: 0.0010 to 0.0030, wear: { max: 0.0050 }, target: 0.0015 to 0.0020 }',
        blocks: '- { measure: main_bearing_clearance, with: fine, at: { 1: 0.0025, 2: 0.0018, 3: 0.0035 } }',
      },
      ['choose main shells 1, 3 (should); main_bearing_clearance 1; main_bearing_clearance 3'],
    ],
    [
      'of a block to be renewed does not surface it',
      {
        limits: 'deck_flatness: { wear: { max: 0.004 } }',
        blocks:
          '- { measure: deck_flatness, stations: [first, second], directions: [along], at: { all: [[0.006], [0.006]] } }',
        more: 'found: [{ on: block, is: cracked, do: renew }]\n',
      },
      ['renew block (must); deck_flatness all; block cracked'],
    ],
    [
      'of cam bearings and guides whose fits are out as well renews them once',
      {
        limits:
          'cam_bearing_bore: { new: 2.0000 to 2.0010, wear: { max: 2.0030 } }\ncam_bearing_clearance: { new: 0.0020 to 0.0040, wear: { max: 0.0060 } }\nvalve_guide_bore: { new: 0.3430 to 0.3440, wear: { max: 0.3460 } }\nvalve_stem_clearance: { new: 0.0010 to 0.0030, wear: { max: 0.0040 } }',
        blocks: `${twice('- { measure: cam_bearing_bore, at: { 1: 2.0045, 2: 2.0005 } }')}- { measure: cam_bearing_clearance, at: { 1: 0.0085, 2: 0.0070 } }\n${twice('- { measure: valve_guide_bore, at: { 1: { I: 0.3470, E: 0.3435 } } }')}- { measure: valve_stem_clearance, at: { 1: { I: 0.0055, E: 0.0020 } } }`,
        files: {
          'e/engine.yaml': ENGINE.replace(
            'cylinders: 4, mains: 3, crankpins: 4',
            'cylinders: 1, mains: 2, crankpins: 1, cam_bearings: 2, valves: [I, E]',
          ),
        },
      },
      [
        'renew valve guide 1 I (must); valve_guide_bore 1 I; valve_stem_clearance 1 I',
        'renew cam bearing 1 (must); cam_bearing_bore 1; cam_bearing_clearance 1',
        'choose cam bearing 2 (must); cam_bearing_clearance 2',
      ],
    ],
    [
      'of a scored main bearing grinds its journal, and machines it no other way',
      {
        limits: MAINS,
        blocks: mains('2.9985', '2.9985'),
        more: 'found: [{ on: main 3, is: scored, do: machine, depth: 0.002 }]\n',
      },
      [
        'clean crankshaft (must); for grind main journals',
        'crack test crankshaft (must); for grind main journals',
        'grind main journals 1 to 3 (must); main 3 scored',
        'wash crankshaft (must); for grind main journals',
      ],
    ],
    [
      'of a block to be renewed neither bores nor renews a cylinder of it',
      {
        limits: BORES,
        blocks: bores('4.1570', '4.1315', '4.1255', '4.1255'),
        more: 'found: [{ on: block, is: cracked, do: renew }, { on: cylinder 3, is: split, do: renew }, { on: cylinder 4, is: scored, do: machine }]\n',
      },
      ['renew block (must); cylinder_bore 1; cylinder_bore 2; block cracked; cylinder 3 split'],
    ],
    [
      'of a bore that is renewed, whose piston comes anew with it, beside one that only is worn',
      {
        limits: `${BORES}\npiston_clearance: { new: 0.0030 to 0.0050 }`,
        blocks: `${bores('4.1275', '4.1255', '4.1255', '4.1255')}- { measure: piston_clearance, with: fine, at: { 2: 0.0090 } }`,
        more: 'found: [{ on: cylinder 2, is: scored, depth: 0.030 }]\n',
      },
      [
        'measure (must); piston_clearance 1; piston_clearance 3; piston_clearance 4',
        'decide about cylinder 2 (must); cylinder 2 scored',
        'clean block (should); for bore cylinders',
        'bore cylinders 1, 3, 4 (should); cylinder_bore 1',
        'renew cylinder 2 (must)',
        'weigh and balance pistons (should); for bore cylinders',
        'wash block (should); for bore cylinders',
      ],
    ],
    [
      'of what is adjusted, of what has a cause, of what is measured',
      {
        limits:
          'valve_lash_cold: { new: 0.008 to 0.012 }\ncompression_pressure: { wear: { min: 300 psi } }\ncrankpin_diameter: { new: 2.4980 to 2.4990 }',
        blocks:
          '- { measure: valve_lash_cold, at: { 1: { I: 0.020, E: 0.010 }, 2: { I: 0.010, E: 0.010 }, 3: { I: 0.010, E: 0.010 }, 4: { I: 0.010, E: 0.010 } } }\n- { measure: compression_pressure, at: { 1: 200 psi, 2: 310 psi, 3: 310 psi, 4: 310 psi } }\n- { measure: crankpin_diameter, with: mic, at: { 1: ~, 2: 2.4985, 3: 2.4985, 4: 2.4985 } }',
        files: { 'e/engine.yaml': ENGINE.replace('crankpins: 4', 'crankpins: 4, valves: [I, E]') },
      },
      [
        'measure (must); crankpin_diameter 1',
        'adjust valve lash, cold (must); valve_lash_cold 1 I',
        'find the cause of compression pressure (must); compression_pressure 1',
      ],
    ],
    [
      'of what was seen',
      {
        limits: MAINS,
        blocks: mains('2.9985', '2.9985'),
        more: 'found: [{ on: [piston 1, piston 3], is: cracked, do: renew }, { on: flywheel, is: scored }, { on: [flywheel, oil cooler], is: dirty, do: hold }, { on: oil pump, is: worn, do: machine }, { on: head, is: fine, do: reuse }]\n',
      },
      [
        'decide about flywheel (must); flywheel scored',
        'decide about flywheel, oil cooler (must); flywheel, oil cooler dirty',
        'machine oil pump (must); oil pump worn',
        'renew pistons 1, 3 (must); piston 1, piston 3 cracked',
        'weigh and balance pistons (must); for renew pistons',
      ],
    ],
  ])('%s', (_, said, lines) => expect(planOf(said)).toEqual(lines));
});

it('of journals that need the same the first decides', () => {
  const files = shop({ limits: MAINS, blocks: mains('2.9965', '2.9965') });
  const decided = jobsOf(contextOf(files)).flatMap(({ cut }) => cut?.groups ?? []);
  expect(decided.map(({ deciding }) => deciding.position.name)).toEqual(['1']);
});

it('a crankpin about which somebody has to decide is no crankshaft', () => {
  const files = shop({
    limits: MAINS,
    blocks: mains('2.9985', '2.9985'),
    more: 'found: [{ on: crankpin 2, is: blue }]\n',
  });
  expect(jobsOf(contextOf(files)).map(({ name, part }) => [name, part?.id])).toEqual([
    ['decide about crankpin 2', 'crankpin'],
  ]);
});

describe('how urgent a job is', () => {
  const rows = (...verdicts: readonly Row['judgement']['verdict'][]): readonly Row[] =>
    verdicts.map((verdict) => ({ judgement: { verdict } }) as Row);
  it.each([
    ['must', ['ok', 'out']],
    ['must', ['out', 'worn']],
    ['should', ['worn', 'off target']],
    ['should', ['undecided']],
    ['should', ['missing', 'ok']],
    ['may', ['off target', 'ok']],
    ['may', []],
  ] as const)('%s be done where rows are %j', (urgency, verdicts) => {
    expect(urgencyOf(rows(...verdicts))).toBe(urgency);
  });
});

describe('the worst of rows', () => {
  const row = (id: string, verdict: 'out' | 'worn', by: number | undefined): Row =>
    ({
      characteristic: CHARACTERISTICS[id],
      judgement: { verdict, past: by === undefined ? undefined : { by: fraction(by) } },
    }) as unknown as Row;
  const CHARACTERISTICS: Readonly<Record<string, object>> = { size: {}, taper: {} };

  it('is that which lies farthest past, of the figure and the verdict that come first', () => {
    const rows = [
      row('size', 'out', undefined),
      row('size', 'out', 1),
      row('taper', 'out', 9),
      row('size', 'worn', 8),
      row('size', 'out', 3),
      row('size', 'out', 2),
      row('size', 'out', 3),
    ];
    expect(rows.indexOf(worstOf(rows) as Row)).toBe(4);
    expect(worstOf(rows.slice(1, 4))).toBe(rows[1]);
  });

  it('is none where none lies past anything', () => {
    expect(worstOf([row('size', 'out', undefined)])).toBeUndefined();
    expect(worstOf([])).toBeUndefined();
  });
});
