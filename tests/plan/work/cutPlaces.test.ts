import { describe, expect, it } from 'vitest';
import { rowsOfPart, sizeOfPart } from '../../../src/plan/work/context.ts';
import { serviceSteps } from '../../../src/plan/work/serviceSteps.ts';
import { engineIn, type Files, limitsOf, REGISTER, sessionOf } from '../../shopOf.ts';
import { contextOf, jobCalled, lengthIn } from '../planOf.ts';

const shop = (unit: 'in' | 'mm', limits: string, blocks: string, { plan = '', more = '' } = {}): Files => ({
  'shop.yaml': `kind: shop\nunits: { length: ${unit} }\n${plan}`,
  'register.yaml': REGISTER,
  'e/engine.yaml': engineIn(unit),
  'e/limits.yaml': limitsOf(limits),
  'e/session.yaml': sessionOf('teardown', blocks, more),
});

/** What the reach of the deciding place is made of, in the order in which it is added up, and the reach. */
function reachOf(job: string, unit: 'in' | 'mm', files: Files): readonly string[] {
  const place = jobCalled(job, files).cut?.groups[0]?.deciding;
  if (place === undefined) throw new Error('no cut');
  const { terms, choice } = place;
  return [
    ...terms.map(({ words, amount, times, isAssumed }) =>
      [times, words, lengthIn(unit, amount), ...(isAssumed === true ? ['assumed'] : [])].join(' '),
    ),
    choice.kind === 'not provable' ? choice.kind : `reach ${lengthIn(unit, choice.reach)}`,
  ];
}

const MAINS =
  'main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 } }\ncrankshaft_runout: { wear: { max: 0.0020 } }';
const journals =
  '- { measure: main_journal_diameter, with: mic, at: { 1: 2.9985, 2: 2.9983, 3: 2.9950 } }\n'.repeat(2);
const BENT = MAINS.replace('wear: { max: 0.0020 }', 'new: { max: 0.0010 }, wear: { max: 0.0020 }');
const runout = (tir: string): string =>
  `${journals}- { measure: crankshaft_runout, with: dial, supported_on: [1], at: { 2: 0.0005, 3: ${tir} } }`;

describe('the reach of a cut', () => {
  it.each([
    ['in', '0.0002'],
    ['mm', '0.005'],
  ] as const)('of a shop in %s leaves a round figure to polish', (unit, polish) => {
    const place = jobCalled('grind main journals', {
      ...shop(unit, MAINS, journals),
      'e/engine.yaml': engineIn(unit),
      'e/limits.yaml': limitsOf(MAINS, 'units: { length: in }\n'),
      'e/session.yaml': sessionOf('teardown', journals, 'units: { length: in }\n'),
    }).cut?.groups[0]?.deciding;
    const amount = place?.terms.find(({ words }) => words === 'polish')?.amount;
    expect(amount && lengthIn(unit, amount, 7).replace(/0+$/, '')).toBe(polish);
  });

  it.each([
    [
      'of a journal, with what is common practice',
      shop('in', MAINS, journals),
      [
        '1 smallest reading 2.9950',
        '-1 runout 0.0000 assumed',
        '-1 uncertainty 0.0002',
        '-1 polish 0.0002 assumed',
        'reach 2.9946',
      ],
    ],
    [
      'of a journal by what the shop polishes off',
      shop('in', MAINS, journals, { plan: 'plan: { polish: 0.0004 }\n' }),
      [
        '1 smallest reading 2.9950',
        '-1 runout 0.0000 assumed',
        '-1 uncertainty 0.0002',
        '-1 polish 0.0004',
        'reach 2.9944',
      ],
    ],
    [
      'of a journal that runs out',
      shop('in', MAINS, runout('0.0010')),
      [
        '1 smallest reading 2.9950',
        '-1 runout 0.0010',
        '-1 uncertainty 0.0002',
        '-1 polish 0.0002 assumed',
        'reach 2.9936',
      ],
    ],
    [
      'of a journal that is bent',
      shop('in', MAINS, runout('0.0030')),
      [
        '1 smallest reading 2.9950',
        '-1 runout before straightening 0.0030',
        '-1 uncertainty 0.0002',
        '-1 polish 0.0002 assumed',
        'reach 2.9916',
      ],
    ],
    [
      'of a journal that is scored',
      shop('in', MAINS, journals, {
        more: 'found: [{ on: main journal 3, is: scored, do: machine, depth: 0.0010 }, { on: main journal 3, is: pitted, depth: 0.0005 }, { on: main journal 3, is: rusty, do: hold, depth: 0.0007 }]\n',
      }),
      [
        '1 smallest reading 2.9950',
        '-1 runout 0.0000 assumed',
        '-2 depth of damage 0.0010',
        '-1 uncertainty 0.0002',
        '-1 polish 0.0002 assumed',
        'reach 2.9926',
      ],
    ],
    [
      'of a journal that is held back, nobody knows how deep',
      shop('in', MAINS, journals, {
        more: 'found: [{ on: main journal 3, is: scored, do: machine, depth: 0.0010 }, { on: main journal 3, is: pitted, do: hold }]\n',
      }),
      [
        '1 smallest reading 2.9950',
        '-1 runout 0.0000 assumed',
        '-1 uncertainty 0.0002',
        '-1 polish 0.0002 assumed',
        'not provable',
      ],
    ],
    [
      'of a journal in millimetres',
      shop(
        'mm',
        'main_journal_diameter: { new: 62.942 to 62.955, wear: { min: 62.920 } }',
        '- { measure: main_journal_diameter, at: { 1: 62.950, 2: 62.950, 3: 62.910 } }\n'.repeat(2),
      ),
      [
        '1 smallest reading 62.910',
        '-1 runout 0.000 assumed',
        '-1 uncertainty 0.006',
        '-1 polish 0.005 assumed',
        'reach 62.899',
      ],
    ],
    [
      'of a journal that is a little bent',
      shop('in', BENT, runout('0.0015')),
      [
        '1 smallest reading 2.9950',
        '-1 runout before straightening 0.0015',
        '-1 uncertainty 0.0002',
        '-1 polish 0.0002 assumed',
        'reach 2.9931',
      ],
    ],
  ])('%s', (_, files, terms) =>
    expect(
      reachOf('grind main journals', files['e/engine.yaml']?.includes('mm') ? 'mm' : 'in', files),
    ).toEqual(terms),
  );

  it('of a crankpin leaves its index and throw open', () => {
    const files = shop(
      'in',
      'crankpin_diameter: { new: 2.4980 to 2.4990, wear: { min: 2.4970 } }',
      '- { measure: crankpin_diameter, with: mic, at: { 1: 2.4960, 2: 2.4985, 3: 2.4985, 4: 2.4985 } }',
    );
    expect(reachOf('grind crankpins', 'in', files)).toEqual([
      '1 smallest reading 2.4960',
      '-1 index and throw 0.0000 assumed',
      '-1 uncertainty 0.0002',
      '-1 polish 0.0002 assumed',
      'reach 2.4956',
    ]);
  });

  const BORE = 'cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 } }';
  const worn =
    '- { measure: cylinder_bore, with: bore, directions: [thrust, axial], at: { 1: [4.1340, 4.1255] } }\n';
  it.each([
    [
      'as if it had worn to one side',
      shop('in', BORE, worn),
      [
        '2 largest reading 4.1340',
        '-1 smallest reading, as if never worn 4.1255',
        '1 uncertainty 0.0002',
        '1 to hone 0.0008 assumed',
        'reach 4.1435',
      ],
    ],
    [
      'about its old centre',
      shop('in', BORE, `${worn}- { measure: cylinder_centre_offset, with: dial, at: { 1: 0.0010 } }`, {
        plan: 'plan: { hone_stock: 0.0015 }\n',
        more: 'found: [{ on: cylinder 1, is: scored, do: machine, depth: 0.0020 }]\n',
      }),
      [
        '1 largest reading 4.1340',
        '2 off its old centre 0.0010',
        '2 depth of damage 0.0020',
        '1 uncertainty 0.0002',
        '1 to hone 0.0015',
        'reach 4.1417',
      ],
    ],
  ])('of a bore, %s', (_, files, terms) => expect(reachOf('bore cylinders', 'in', files)).toEqual(terms));
});

describe('the steps of a part', () => {
  const stepsOf = (id: string, files: Files) => {
    const context = contextOf(files);
    const part = context.registry.parts.find(id);
    const size = part && sizeOfPart(context, part);
    const row = part && rowsOfPart(context, part).find(({ characteristic }) => characteristic === size);
    if (part === undefined || size === undefined || row === undefined) throw new Error('no part');
    const { steps, from, isCutOff } = serviceSteps(context, part, size, row);
    return [
      from,
      isCutOff,
      ...steps.map(
        ({ name, least, aim, greatest }) =>
          `${name} ${[least, aim, greatest].map((each) => lengthIn('in', each)).join(' ')}`,
      ),
    ];
  };
  const mainsOf = (limits: string, more: Parameters<typeof shop>[3] = {}) =>
    stepsOf('main_journal', shop('in', limits, journals, more));

  it('are the usual ones in the unit of the engine', () => {
    expect(mainsOf(MAINS)).toEqual([
      'assumed',
      false,
      ...[1, 2, 3, 4, 5, 6].map(
        (step) =>
          `0.0${step}0 under ${(2.998 - step / 100).toFixed(4)} ${(2.9985 - step / 100).toFixed(4)} ${(2.999 - step / 100).toFixed(4)}`,
      ),
    ]);
  });

  it('end where limits say which is the last', () => {
    const last = MAINS.replace('wear: { min: 2.9970 }', 'wear: { min: 2.9970 }, last_size: 2.9780');
    expect(mainsOf(last)).toEqual([
      'assumed',
      true,
      '0.010 under 2.9880 2.9885 2.9890',
      '0.020 under 2.9780 2.9785 2.9790',
    ]);
  });

  it('are those of the shop, the nearest first, whatever order they stand in', () => {
    const plan = 'plan: { steps: { main journals: [0.025 under, 0.005 under], cylinders: [0.015 over] } }\n';
    expect(mainsOf(MAINS, { plan })).toEqual([
      'shop',
      false,
      '0.005 under 2.9930 2.9935 2.9940',
      '0.025 under 2.9730 2.9735 2.9740',
    ]);
  });

  it('are those that limits print of the part or of its shells, each once, whatever the shop has', () => {
    const printed = `main_journal_diameter: { new: 2.9980 to 2.9990, sizes: { 0.015 under: { new: 2.9831 to 2.9839 } } }
main_shell_thickness: { new: 0.1245 to 0.1250, sizes: { 0.015 under: { new: 0.1320 to 0.1325 }, 0.030 under: { new: 0.1395 to 0.1400 } } }
rod_shell_thickness: { new: 0.1245 to 0.1250, sizes: { 0.040 under: { new: 0.1445 to 0.1450 } } }`;
    expect(mainsOf(printed, { plan: 'plan: { steps: { main journals: [0.005 under] } }\n' })).toEqual([
      'limits',
      false,
      '0.015 under 2.9831 2.9835 2.9839',
      '0.030 under 2.9680 2.9685 2.9690',
    ]);
  });

  it('go on from what the part was cut to', () => {
    const more = 'machined: [{ part: main journals, size: 0.040 under }]\n';
    expect(stepsOf('main_journal', shop('in', MAINS, journals.replaceAll('2.99', '2.95'), { more }))).toEqual(
      ['assumed', false, '0.050 under 2.9480 2.9485 2.9490', '0.060 under 2.9380 2.9385 2.9390'],
    );
  });

  it('are none without limits of new parts on both sides to aim between', () => {
    expect(mainsOf('main_journal_diameter: { new: { min: 2.9980 }, wear: { min: 2.9970 } }')).toEqual([
      'assumed',
      false,
    ]);
  });

  it('of a bore end at the largest that is allowed', () => {
    const limits = 'cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 }, largest_bore: 4.1460 }';
    expect(
      stepsOf('cylinder', shop('in', limits, '- { measure: cylinder_bore, with: bore, at: { 1: 4.1255 } }')),
    ).toEqual(['assumed', true, '0.010 over 4.1350 4.1355 4.1360', '0.020 over 4.1450 4.1455 4.1460']);
  });
});
