import { describe, expect, test } from 'vitest';
import type { Tools } from '../../../src/torque/card.ts';
import { tighteningCard } from '../../../src/torque/card.ts';
import { contradictionsIn } from '../../../src/torque/fasteners/contradictions.ts';
import { doubtsAbout } from '../../../src/torque/fasteners/doubts.ts';
import { loadsAfter, type PassLoad } from '../../../src/torque/fasteners/jointLoads.ts';
import {
  LUBRICATIONS,
  lubricationNamed,
  statedNutFactor,
  UNSTATED,
} from '../../../src/torque/fasteners/lubrication.ts';
import { proofCheck } from '../../../src/torque/fasteners/proofCheck.ts';
import { STEEL_MODULUS_PA } from '../../../src/torque/fasteners/stretch.ts';
import type { Joint } from '../../../src/torque/joint.ts';
import { engineOf } from '../../documents/engineOf.ts';
import { strength, thread } from '../known.ts';

/** Two studs of 1/2-13 and grade 8, 5 in long, oiled, unless a document says otherwise. */
function jointOf(
  passes: string,
  { fasteners = 'thread: 1/2-13, grade: 8, length: 5 in', more = OIL } = {},
): Joint {
  const text = `kind: torque\njoint: studs\nfasteners: { names: [a, b], ${fasteners} }\n${more}passes: ${passes}\nsource: Invented.\n`;
  const [document] = engineOf({ 'torque/joint.yaml': text }).sequences;
  if (document === undefined) throw new Error('no sequence');
  return document.joint;
}

const OIL = 'lubricant: engine oil\n';
const BOLT = thread('1/2-13');
const PROOF_N = strength('8', '1/2-13').proofPa * BOLT.stressAreaM2;
const N_PER_NM = 1 / (0.18 * 0.0127);
const [LENGTH_M, PITCH_M] = [5 * 0.0254, 0.0254 / 13];
const STIFFNESS = (STEEL_MODULUS_PA * BOLT.stressAreaM2) / LENGTH_M;

function loads(joint: Joint): readonly (PassLoad | undefined)[] {
  return loadsAfter(
    joint.steps.flatMap((step) => (step.kind === 'tighten' ? [step] : [])),
    joint,
  );
}

/** In whole newtons and tenths of a percent. */
const rounded = (load: PassLoad | undefined) =>
  load && {
    newtons: [load.leastN, load.loadN, load.greatestN].map(Math.round),
    percent: [load.percent, load.greatestPercent].map((each) => each && Math.round(10 * each) / 10),
    byFrictionN: load.byFrictionN && Math.round(load.byFrictionN),
    beyondYield: load.beyondYield,
    assumptions: load.assumptions,
  };

const OILED = ['T = K d F with K = 0.18 (oiled)', 'one bolt may lie 25 % off either way'];
const newtons = (...each: readonly number[]) => each.map(Math.round);
const percent = (...each: readonly number[]) => each.map((of) => Math.round((1000 * of) / PROOF_N) / 10);

describe('the load that one bolt is expected to clamp with', () => {
  test('of a torque window is that of its middle, with the scatter at both ends', () => {
    expect(loads(jointOf('[{ to: 20 to 30 N m }]')).map(rounded)).toEqual([
      {
        newtons: newtons(20 * N_PER_NM * 0.75, 25 * N_PER_NM, 30 * N_PER_NM * 1.25),
        percent: percent(25 * N_PER_NM, 30 * N_PER_NM * 1.25),
        byFrictionN: undefined,
        beyondYield: false,
        assumptions: OILED,
      },
    ]);
  });

  test('of stated friction stands beside it, with what it takes for granted', () => {
    const more = `${OIL}friction: { thread: 0.12, head: 0.1, head_diameter: 20 mm }\n`;
    const [load] = loads(jointOf('[{ to: 20 to 30 N m }]', { more }));
    // Shigley, from memory: T = F ((d2/2) (tan lead + mu sec 30) / (1 - mu sec 30 tan lead) + mu D/2).
    const lead = BOLT.pitchM / (Math.PI * BOLT.pitchDiameterM);
    const flank = 0.12 / Math.cos(Math.PI / 6);
    const perNewton = (BOLT.pitchDiameterM / 2) * ((lead + flank) / (1 - flank * lead)) + (0.1 * 0.02) / 2;
    expect(load?.byFrictionN).toBeCloseTo(25 / perNewton, 6);
    expect(load?.assumptions).toEqual([
      ...OILED,
      'friction 0.12 in the thread, acting at its pitch diameter',
      'friction 0.1 under the head, acting at 20.0 mm diameter',
      'friction is the same in every bolt: its scatter is not in this figure',
    ]);
  });

  test('of a stretch window goes by the length and the area', () => {
    const perInch = 0.0254 * STIFFNESS;
    expect(loads(jointOf('[{ stretch: 0.0040 to 0.0060 in }]')).map(rounded)).toEqual([
      {
        newtons: newtons(0.004 * perInch, 0.005 * perInch, 0.006 * perInch),
        percent: percent(0.005 * perInch, 0.006 * perInch),
        byFrictionN: undefined,
        beyondYield: false,
        assumptions: ['load of a stretch: F = stretch × A E / L, below yield, modulus 207 GPa'],
      },
    ]);
  });

  test('of a turn is that of the snug torque and the turn, as far as the yield load', () => {
    const perDegree = (PITCH_M / 360) * STIFFNESS;
    const [, turned, beyond] = loads(jointOf('[{ to: 20 N m }, { turn: 20 deg }, { turn: 360 deg }]'));
    const snugN = 20 * N_PER_NM;
    const words = [
      'modulus 207 GPa',
      'the clamped parts do not give: the true load is lower',
      'the snug torque has closed the joint',
    ];
    const all = [0.75, 1, 1.25].map((share) => share * snugN + 20 * perDegree);
    const [, middle = 0, most = 0] = all;
    expect(rounded(turned)).toEqual({
      newtons: newtons(...all),
      percent: percent(middle, most),
      byFrictionN: undefined,
      beyondYield: false,
      assumptions: words,
    });
    const yieldN = strength('8', '1/2-13').yieldPa * BOLT.stressAreaM2;
    expect(rounded(beyond)).toEqual({
      newtons: newtons(yieldN, yieldN, yieldN),
      percent: percent(yieldN, yieldN),
      byFrictionN: undefined,
      beyondYield: true,
      assumptions: [...words, 'past yield of SAE J429 grade 8: the load is taken as the yield load'],
    });
  });

  test('a check says nothing of a load, and leaves what a turn goes on from', () => {
    const [, checked, turned] = loads(jointOf('[{ to: 20 N m }, { check: 20 N m }, { turn: 20 deg }]'));
    const [, plain] = loads(jointOf('[{ to: 20 N m }, { turn: 20 deg }]'));
    expect(checked).toBeUndefined();
    expect(turned).toEqual(plain);
  });

  test.each<[string, string, readonly boolean[]]>([
    ['no thread', 'reuse: true', [false, false, false]],
    ['no length', 'thread: 1/2-13, grade: 8', [true, false, false]],
    ['no grade', 'thread: 1/2-13, length: 5 in', [true, false, true]],
  ])('with %s stated (%s) it is known after a torque, a turn and a stretch: %j', (_, fasteners, known) => {
    const joint = jointOf('[{ to: 20 N m }, { turn: 20 deg }, { stretch: 0.0040 to 0.0041 in }]', {
      fasteners,
    });
    const found = loads(joint);
    expect(found.map((load) => load !== undefined)).toEqual(known);
    for (const load of found.flatMap((each) => each ?? [])) {
      const isUnknown = [load.percent, load.greatestPercent].map((each) => each === undefined);
      const withoutGrade = joint.strength === undefined;
      expect(isUnknown).toEqual([withoutGrade, withoutGrade]);
    }
  });
});

describe('beyond proof', () => {
  const atProofNm = PROOF_N / N_PER_NM;

  test('of all passes the worst is told, by the most of its torque', () => {
    const nm = (share: number) => (share * atProofNm).toFixed(3);
    const joint = jointOf(`[{ to: ${nm(1.1)} N m }, { to: 1 to ${nm(1.3)} N m }, { to: ${nm(1.2)} N m }]`);
    const found = proofCheck(joint, lubricationNamed('oiled'));
    expect(found?.percent).toBeCloseTo(130, 2);
    expect(found).toMatchObject({
      pass: 2,
      message: '130 % of the proof load of 1/2-13 UNC, SAE J429 grade 8, at K 0.18 (oiled)',
    });
    expect(proofCheck(joint, UNSTATED)).toBeUndefined();
  });

  test('is never said of a torque within it, nor of what is no torque', () => {
    for (const passes of [
      `[{ to: ${(0.999 * atProofNm).toFixed(3)} N m }]`,
      `[{ to: 20 N m }, { turn: 360 deg }, { check: ${Math.ceil(2 * atProofNm)} N m }]`,
    ])
      expect(proofCheck(jointOf(passes), lubricationNamed('oiled'))).toBeUndefined();
  });

  test('nor where thread or grade are not stated', () => {
    for (const fasteners of ['thread: 1/2-13', 'reuse: true'])
      expect(
        proofCheck(jointOf('[{ to: 2000 N m }]', { fasteners }), lubricationNamed('oiled')),
      ).toBeUndefined();
  });
});

describe('passes at odds with themselves or with others', () => {
  test('are told in the order of the passes, with the nut factor that both windows would need', () => {
    const joint = jointOf(
      '[{ turn: 10 deg }, { to: 58 to 69 lbf ft, stretch: .0190 to .0240 in }, { loosen: fully }, { check: 20 N m }]',
      { more: `${OIL}before: [threads clean]\nafter: [studs stand square]\n` },
    );
    const psi = 30e6 * 0.1419;
    const factor = (lbfFt: number, inches: number) => (lbfFt * 12) / ((0.5 * psi * inches) / 5);
    const needed = `${factor(58, 0.024).toFixed(2)} to ${factor(69, 0.019).toFixed(2)}`;
    expect(needed).toBe('0.07 to 0.10');
    expect(contradictionsIn(joint).map(({ pass, message }) => `${pass}: ${message}`)).toEqual([
      '1: a is turned by an angle before any torque has closed the joint',
      '4: a is checked before it was tightened',
    ]);
    const short = { fasteners: 'thread: 1/2-13, grade: 8, length: 2 in' };
    const apart = jointOf(
      '[{ to: 58 to 69 lbf ft, stretch: .0190 to .0240 in }, { loosen: fully }, { check: 20 N m }]',
      short,
    );
    expect(contradictionsIn(apart)).toMatchObject([
      {
        pass: 1,
        message:
          'torque and stretch contradict each other: together they need a nut factor of 0.03 to 0.04, which no lubricant gives',
      },
      { pass: 3 },
    ]);
  });

  test.each(['reuse: true', 'thread: 1/2-13', 'length: 2 in'])(
    'windows cannot be held against each other with only %s',
    (fasteners) => {
      const joint = jointOf('[{ to: 58 to 69 lbf ft, stretch: .0190 to .0240 in }]', { fasteners });
      expect(contradictionsIn(joint)).toEqual([]);
    },
  );

  test.each([
    ['[{ to: 40 to 50 N m }, { to: 30 to 39 N m }]', [2]],
    ['[{ to: 40 to 50 N m }, { to: 30 to 40 N m }]', []],
    ['[{ to: 40 N m, stretch: 0.0190 to 0.0191 in }, { to: 39 N m }]', [2]],
    ['[{ to: 40 N m }, { stretch: 0.0190 to 0.0191 in }, { to: 39 N m }]', [3]],
    ['[{ to: 40 N m }, { turn: 9 deg }, { check: 9 N m }, { to: 39 N m }]', [4]],
    ['[{ to: 40 N m }, { loosen: 90 deg }, { to: 39 N m }]', []],
    ['[{ stretch: 0.0190 to 0.0191 in }, { to: 39 N m }, { check: 9 N m }]', []],
    ['[{ to: 40 N m }, { loosen: fully }, { turn: 9 deg }]', [3]],
  ])('in %s there is a doubt about passes %j', (passes, expected) => {
    expect(doubtsAbout(jointOf(passes).steps).map(({ pass, fastener }) => [pass, fastener])).toEqual(
      expected.map((pass) => [pass, 'a']),
    );
  });
});

describe('lubrications', () => {
  test('have their nut factors and scatters (Shigley, table 8-15; NSTS 08307; from memory)', () => {
    expect(LUBRICATIONS.map(({ name, nutFactor, scatter }) => [name, nutFactor, scatter])).toEqual([
      ['dry, black finish', 0.3, 0.35],
      ['dry, zinc plated', 0.2, 0.35],
      ['dry, finish not stated', 0.2, 0.35],
      ['cadmium plated', 0.16, 0.3],
      ['oiled', 0.18, 0.25],
      ['anti-seize paste', 0.12, 0.25],
      ['molybdenum paste', 0.12, 0.25],
    ]);
  });

  test('a nut factor that a document states scatters as its lubrication does', () => {
    expect(statedNutFactor(0.14, lubricationNamed('cadmium plated'))).toEqual({
      name: 'nut factor as stated',
      nutFactor: 0.14,
      scatter: 0.3,
    });
  });

  test.each([
    ['black', 'dry, black finish'],
    ['galvanised', 'dry, zinc plated'],
    ['Galvanized', 'dry, zinc plated'],
    ['dry', 'dry, finish not stated'],
    ['cad, dry', 'cadmium plated'],
    ['lubricated', 'oiled'],
    ['grease', 'oiled'],
    ['antiseize', 'anti-seize paste'],
    ['molykote', 'molybdenum paste'],
    ['without oil', 'lubrication not known'],
    ['free of oil', 'lubrication not known'],
    ['unplated, dry', 'lubrication not known'],
    ['spoiled', 'lubrication not known'],
  ])('%s is %s', (note, name) => {
    const found = lubricationNamed(note);
    expect(found.name).toBe(name);
    expect(Object.keys(found)).toEqual(['name', 'nutFactor', 'scatter']);
  });
});

describe('a card', () => {
  const carded = (joint: Joint, tools: Tools = {}) => tighteningCard(joint, tools);
  const cardOf = (joint: Joint, tools: Tools = {}) => {
    const found = carded(joint, tools);
    if ('problem' in found) throw new Error(found.problem);
    return found.card;
  };
  const length = (n: bigint) => ({ n, d: 1n });
  const straight = { kind: 'straight', length: length(1n) } as const;

  test.each([
    [{ wrenchLength: length(0n) }, 'the wrench must have a length'],
    [{ wrenchLength: length(-1n) }, 'the wrench must have a length'],
    [{ adapter: straight }, 'an adapter changes the setting by the length of the wrench, which is not known'],
    [
      { adapter: { kind: 'shortening', length: length(9n) } as const, wrenchLength: length(9n) },
      'the adapter reaches back to the hand or past it',
    ],
  ])('cannot be made with %o: %s', (tools, problem) => {
    expect(carded(jointOf('[{ to: 20 N m }]'), tools)).toEqual({ problem });
  });

  test('is made with a wrench of any length, which alone changes no setting', () => {
    const [pass] = cardOf(jointOf('[{ to: 20 N m }]'), { wrenchLength: length(1n) }).passes;
    expect(pass?.setting).toBeUndefined();
  });

  test('takes the tools that are chosen over those of the document', () => {
    const joint = {
      ...jointOf('[{ to: 20 N m }]'),
      wrenchLength: length(3n),
      adapter: straight,
      runOn: length(2n),
    };
    expect(cardOf(joint).tools).toEqual({ wrenchLength: length(3n), adapter: straight, runOn: length(2n) });
    const chosen = {
      wrenchLength: length(4n),
      adapter: { ...straight, length: length(2n) },
      runOn: length(1n),
    };
    expect(cardOf(joint, chosen).tools).toEqual(chosen);
  });

  test('of each pass says what the fastener gets, what the wrench shows, and for which fasteners', () => {
    const joint = jointOf(
      '[{ to: 20 to 22 N m, fasteners: [b], reversed: true, note: slowly }, { turn: 9 deg }, { check: 30 N m }]',
    );
    const tools = { wrenchLength: length(3n), adapter: straight, runOn: length(2n) };
    const { passes } = cardOf(joint, tools);
    const share = ({ n, d }: { n: bigint; d: bigint }) => Number(n) / Number(d);
    const span = (of: { least: { n: bigint; d: bigint }; greatest: { n: bigint; d: bigint } } | undefined) =>
      of && [share(of.least), share(of.greatest)];
    expect(
      passes.map(({ load: _, action, atFastener, setting, ...rest }) => ({
        ...rest,
        action: action.kind,
        atFastener: span(atFastener),
        setting: span(setting),
      })),
    ).toEqual([
      {
        pass: 1,
        action: 'to',
        atFastener: [22, 24],
        setting: [16.5, 18],
        reversed: true,
        fasteners: ['b'],
        named: ['b'],
        note: 'slowly',
      },
      {
        pass: 2,
        action: 'turn',
        atFastener: undefined,
        setting: undefined,
        reversed: false,
        fasteners: undefined,
        named: undefined,
        note: undefined,
      },
      {
        pass: 3,
        action: 'check',
        atFastener: [32, 32],
        setting: [24, 24],
        reversed: false,
        fasteners: undefined,
        named: undefined,
        note: undefined,
      },
    ]);
  });

  test('warns of what is used, and of an order that nothing states', () => {
    const idsOf = (joint: Joint, tools: Tools = {}) => cardOf(joint, tools).cautions.map(({ id }) => id);
    const joint = jointOf('[{ to: 20 N m }]');
    const usual = ['manual-first', 'no-order', 'lubricant-stated', 'estimate'];
    expect(idsOf(joint)).toEqual(usual);
    expect(idsOf({ ...joint, orderFrom: 'maker' })).toEqual(usual.filter((id) => id !== 'no-order'));
    expect(idsOf({ ...joint, sequence: { ...joint.sequence, fasteners: ['a'] } })).not.toContain('no-order');
    expect(idsOf(joint, { runOn: length(1n) })).toContain('run-on');
    expect(idsOf(joint, { wrenchLength: length(3n), adapter: straight })).toContain('adapter');
    expect(idsOf(jointOf('[{ to: 20 N m }]', { fasteners: 'reuse: true', more: '' }))).toEqual([
      'manual-first',
      'no-order',
      'lubricant-unstated',
    ]);
  });

  test('says each assumption once, and what is doubtful by its pass', () => {
    const card = cardOf(jointOf('[{ turn: 5 deg }, { to: 20 N m }, { to: 900 N m }]'));
    expect(card.assumptions).toEqual(OILED);
    expect(card.doubts).toEqual([
      'pass 1: a is turned by an angle before any torque has closed the joint',
      `pass 3: ${((90000 * N_PER_NM) / PROOF_N).toFixed(0)} % of the proof load of 1/2-13 UNC, SAE J429 grade 8, at K 0.18 (oiled)`,
    ]);
    expect(card.beyondProof).toBe(true);
    const sound = cardOf(jointOf('[{ to: 20 N m }]'));
    expect([sound.doubts, sound.beyondProof]).toEqual([[], false]);
  });
});
