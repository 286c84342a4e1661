import { describe, expect, it } from 'vitest';
import type { BuiltIn, Characteristic } from '../../src/characteristics/characteristic.ts';
import { parts } from '../../src/characteristics/parts.ts';
import { characteristics, registryWith } from '../../src/characteristics/registry.ts';
import { reportEngine } from '../../src/checks/judge/report.ts';
import { assembleEngine } from '../../src/documents/assemble.ts';
import { openDocument } from '../../src/documents/opened.ts';
import type { Sized } from '../../src/layout/part.ts';
import { type Files, limitsOf } from '../shopOf.ts';

/** `main_journal_diameter` is `q1`, whatever it says: nothing may be read out of an id. */
const opaque = new Map<string, string>(
  [...characteristics, ...parts].map(({ id }, index) => [id, `q${index + 1}`] as const),
);
const named = (id: string): string => opaque.get(id) ?? id;

const renamed = (each: Characteristic): Characteristic => ({
  ...each,
  id: named(each.id),
  of: each.of === undefined ? undefined : named(each.of),
  dependsOn: each.dependsOn.map(named),
  ...(each.expandsWith === undefined ? {} : { expandsWith: named(each.expandsWith) }),
  derivations: each.derivations.map((derivation) => ({
    ...derivation,
    inputs: derivation.inputs.map(named),
  })),
});

const renamedSizes = ({ fits, liesIn, ...made }: Sized): Sized => ({
  ...made,
  ...(fits === undefined ? {} : { fits: named(fits) }),
  ...(liesIn === undefined ? {} : { liesIn: named(liesIn) }),
});

const OPAQUE: BuiltIn = {
  characteristics: characteristics.map(renamed),
  parts: parts.map((part) => ({
    ...part,
    id: named(part.id),
    assembledFrom: part.assembledFrom.map(named),
    ...(part.sized === undefined ? {} : { sized: renamedSizes(part.sized) }),
  })),
};

const inText = (text: string): string =>
  text.replace(/[a-z]+(?:_[a-z]+)+/g, (word) =>
    characteristics.some(({ id }) => id === word) ? named(word) : word,
  );

/** Every verdict and every finding, by the ids as they are. */
function told(files: Files, built?: BuiltIn): readonly string[] {
  let registry = registryWith([], built);
  const own = Object.entries(files).map(([path, text]) =>
    openDocument(path, path, new TextEncoder().encode(built === undefined ? text : inText(text))),
  );
  const { engine, diagnostics } = assembleEngine(
    { folder: '.', own, shared: [], extended: new Map(), studies: new Map() },
    (added) => {
      registry = registryWith(added, built);
      return registry;
    },
  );
  expect(diagnostics).toEqual([]);
  if (engine === undefined) throw new Error('no engine');
  const back = new Map<string, string>([...opaque].map(([id, name]) => [name, id]));
  const plain = (id: string | undefined): string => (id === undefined ? '' : (back.get(id) ?? id));
  return reportEngine(engine, registry, {}).sessions.flatMap(({ session, rows, findings, steppedBack }) => [
    ...rows.map(
      ({ characteristic, position, judgement, routes }) =>
        `${session.name} ${plain(characteristic.id)} ${position.name} ${judgement.verdict} ${routes.length} ${routes[0]?.route.u}`,
    ),
    ...findings.map(({ code, measure, position }) => `${session.name} ${code} ${plain(measure)} ${position}`),
    ...steppedBack.map(({ measure, position }) => `${session.name} back ${plain(measure)} ${position.name}`),
  ]);
}

const VEE: Files = {
  'engine.yaml': `kind: engine
name: Vee
units: { length: in, torque: lbf ft, pressure: psi }
layout: { mains: 3, crankpins: { 1: [1L, 1R], 2: [2L, 2R] } }
materials: { crankshaft: steel, block: cast iron, pistons: aluminium }
sizes: { bore: 4.125, main_journal_diameter: 3.0000 }
`,
  'limits.yaml': limitsOf(`main_journal_diameter: { new: 2.9995 to 3.0005, wear: { min: 2.9980 } }
main_journal_taper: { new: { max: 0.0005 } }
main_journal_out_of_round: { new: { max: 0.0005 } }
main_bearing_clearance: { new: 0.0010 to 0.0030, wear: { max: 0.0050 } }
crankpin_diameter: { new: 1.9990 to 2.0000, wear: { min: 1.9980 } }
rod_bearing_clearance: { new: { min: 0.0010, max: { formula: "0.0015 * crankpin_diameter" } } }
rod_side_clearance: { new: 0.006 to 0.012 }
crankshaft_end_play: { new: 0.004 to 0.008 }
crankshaft_runout: { new: { max: 0.002 } }
turning_torque: { new: { max: 5 } }
cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 } }
piston_clearance: { new: 0.0040 to 0.0060 }
compression_pressure: { new: { min: 150 } }`),
  'teardown.yaml': `kind: session
stage: teardown
date: 2024-05-01
temperature: 86 degF
fitted: { main_shells: { condition: used, at: { 2: { condition: new } } } }
readings:
  - { measure: main_journal_diameter, stations: [front, rear], directions: [throw, square], at: { 1: [[2.9999, 2.9998], [2.9992, 2.9991]], 2: [[2.9999, 2.9998], [2.9999, 2.9998]] } }
  - { measure: main_bearing_bore, at: { 1: 3.0030, 2: 3.0052 } }
  - { measure: crankpin_diameter, at: { 1: 1.9995, 2: 1.9970 } }
  - { measure: rod_bearing_bore, at: { 1L: 2.0010, 1R: 2.0040, 2L: 2.0011, 2R: 2.0012 } }
  - { measure: cylinder_bore, at: { 1L: 4.1255, 1R: 4.1520, 2L: 4.1256, 2R: 4.1254 } }
  - { measure: piston_diameter, at: { 1L: 4.1205, 1R: 4.1204, 2L: 4.1206, 2R: 4.1150 } }
  - { measure: crankshaft_end_play, value: 0.011 }
  - { measure: compression_pressure, at: { 1L: 160, 1R: 155, 2L: 140, 2R: 161 } }
  - { measure: turning_torque, after: [{ step: crankshaft, value: 2.1 }, { step: piston 1L, value: 6.0 }] }
`,
  'rebuild.yaml': `kind: session
stage: rebuild
date: 2026-05-01
uses: [teardown]
machined: [{ part: crankpins, at: [2] }]
replaced: [{ part: liners, at: 1R }]
readings:
  - { measure: cylinder_bore, at: { 1R: 4.1400 } }
  - { measure: main_bearing_clearance, at: { 1: 0.0020, 2: 0.0040, 3: 0.0021 } }
  - { measure: rod_bearing_clearance, at: { 1L: 0.0020, 1R: 0.0020, 2L: 0.0020, 2R: 0.0020 } }
  - { work: polished, on: crankpin 1 }
  - { measure: crankpin_diameter, at: { 1: 1.9992, 2: 1.9895 } }
  - { measure: rod_side_clearance, at: { 1: 0.007, 2: 0.020 } }
  - { measure: crankshaft_runout, at: { 2: 0.001 } }
`,
};

describe('the ids of the registry', () => {
  it('mean nothing: under other names every verdict and every finding stays', () => {
    const plain = told(VEE);
    expect(plain.length).toBeGreaterThan(60);
    expect(new Set(plain.map((line) => line.split(' ')[3])).size).toBeGreaterThan(3);
    expect(told(VEE, OPAQUE)).toEqual(plain);
  });
});
