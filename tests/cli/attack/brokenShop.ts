import { righted } from './soundShop.ts';

/** A limit that is worked out, at either end of every band. */
function formulas(name: string): object {
  const band = (which: string) => ({
    min: { formula: `q${name}${which}Min` },
    max: { formula: `q${name}${which}Max` },
  });
  return { target: band('Target'), new: band('New'), wear: band('Wear') };
}

const graded = (name: string): object => ({
  '0.010 under': { ...formulas(`${name}Grade`), source: `q${name}GradeSource`, note: `q${name}GradeNote` },
});

const halves = (name: string): object =>
  Object.fromEntries(
    ['upper', 'lower', 'front', 'rear'].map((each) => [each, righted(0.02, `${name}${each}`)]),
  );

const own = {
  stud_height: { label: 'qStudLabel', quantity: 'length', positions: 'main', after: 'qAfter' },
  stud_spread: { label: 'qSpreadLabel', quantity: 'length', formula: 'qFormula' },
};

const limits = {
  kind: 'limits',
  source: 'Invented.',
  extends: 'qFamily.yaml',
  characteristics: own,
  limits: {
    main_journal_diameter: {
      ...formulas('Journal'),
      at: { 1: { ...formulas('JournalAt'), sizes: graded('JournalAt') } },
      sizes: graded('Journal'),
    },
    ring_end_gap: {
      at: { 1: { top: { ...formulas('Gap'), sizes: graded('Gap'), qDeep: { qDeeper: 'qDeepest' } } } },
    },
    valve_lift: { at: { qNoValve: { qNoSide: 'qNoLimit' } } },
  },
};

const session = {
  kind: 'session',
  stage: 'trial',
  date: '2026-02-03',
  uses: ['qUsed'],
  readings: [
    { work: 'honed', on: 'qWorkedOn' },
    { work: 'honed', on: ['qWorkedOnList'] },
    { measure: 'crankshaft_end_play', value: [righted(0.009, 'PlayList'), [righted(0.009, 'PlayGrid')]] },
    { measure: 'crankshaft_end_play', value: { ...halves('Play'), qPlayAt: 0.009 } },
    { measure: 'ring_end_gap', at: { 1: { top: { ...halves('Gap'), qGapAt: 0.02 } } } },
    { measure: 'main_journal_diameter', with: 'qUnknown', at: { qNowhere: 3.25 } },
  ],
  tightened: [{ sequence: 'qNoSequence' }],
};

const register = {
  kind: 'instruments',
  instruments: {
    mic: { type: 'micrometer', resolution: '0.0001 in', repeatability: { study: 'qStudy.yaml' } },
  },
};

const engineWith = (layout: object): object => ({
  kind: 'engine',
  name: 'qBroken',
  units: { length: 'in' },
  layout: { cylinders: 2, mains: 2, ...layout },
});

/** Documents that have a fault wherever a free text has to be of some form. */
export const BROKEN_SHOP: Readonly<Record<string, object>> = {
  'shop.yaml': {
    kind: 'shop',
    characteristics: own,
    plan: { steps: { qSteps: ['0.010 under'] }, separate: ['qSeparate'] },
  },
  'instruments.yaml': register,
  'engines/limits/engine.yaml': engineWith({}),
  'engines/limits/limits.yaml': limits,
  'engines/pump/engine.yaml': engineWith({ crankpins: 2 }),
  'engines/pump/trial.yaml': session,
  'engines/pump/caps.yaml': {
    kind: 'torque',
    joint: 'caps',
    source: 'Invented.',
    fasteners: { names: ['a'], thread: 'qThread' },
    passes: [{ to: '40 lbf ft' }],
  },
  'engines/pins/engine.yaml': engineWith({ pins: { qPin: ['qCylinder'] } }),
  'engines/lists/engine.yaml': engineWith({ crankpins: ['qPinA', 'qPinB', 'qPinC'], valves: ['qValve'] }),
};
