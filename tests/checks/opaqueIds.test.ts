import { describe, expect, it } from 'vitest';
import type { BuiltIn, Characteristic } from '../../src/characteristics/characteristic.ts';
import { parts } from '../../src/characteristics/parts.ts';
import { characteristics, registryWith } from '../../src/characteristics/registry.ts';
import { reportEngine } from '../../src/checks/judge/report.ts';
import { assembleEngine } from '../../src/documents/assemble.ts';
import { openDocument } from '../../src/documents/opened.ts';
import type { Sized } from '../../src/layout/part.ts';
import { toNumber } from '../../src/quantity/fraction.ts';
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
  ...(each.after === undefined ? {} : { after: named(each.after) }),
  ...(each.grid === undefined ? {} : { grid: `grid of ${named(each.grid)}` }),
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
    carries: part.carries.map(named),
    ...(part.runsOn === undefined ? {} : { runsOn: named(part.runsOn) }),
    ...(part.sized === undefined ? {} : { sized: renamedSizes(part.sized) }),
  })),
};

const inText = (text: string): string =>
  text.replace(/[a-z]+(?:_[a-z]+)+/g, (word) =>
    characteristics.some(({ id }) => id === word) ? named(word) : word,
  );

/** Every verdict and every finding, by the ids as they are. */
function told(files: Files, built?: BuiltIn): readonly string[] {
  let registry = registryWith([], undefined, built);
  const own = Object.entries(files).map(([path, text]) =>
    openDocument(path, path, new TextEncoder().encode(built === undefined ? text : inText(text))),
  );
  const { engine, diagnostics } = assembleEngine(
    { folder: '.', own, shared: [], extended: new Map(), studies: new Map() },
    (added, layout) => {
      registry = registryWith(added, layout, built);
      return registry;
    },
  );
  expect(diagnostics).toEqual([]);
  if (engine === undefined) throw new Error('no engine');
  const back = new Map<string, string>([...opaque].map(([id, name]) => [name, id]));
  const plain = (id: string | undefined): string => (id === undefined ? '' : (back.get(id) ?? id));
  return reportEngine(engine, registry, {}).sessions.flatMap(({ session, rows, findings, steppedBack }) => [
    ...rows.map(
      ({ characteristic, position, half, judgement, routes, size, limits, shared }) =>
        `${session.name} ${plain(characteristic.id)} ${position.name} ${judgement.verdict} ${routes.length} ${routes[0]?.route.u} ${half} ${toNumber(size.by)} ${size.assumedFrom?.label} ${JSON.stringify(limits.inForce.rules)} ${shared?.pin.name} ${shared?.rods.map((rod) => rod.name).join()}`,
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

/** Ground under, one main with unlike halves, a bore of its own size; then a size that nobody stated. */
const GROUND: Files = {
  'engine.yaml': VEE['engine.yaml'] ?? '',
  'limits.yaml':
    limitsOf(`main_journal_diameter: { new: 2.9995 to 3.0005, wear: { min: 2.9985 }, last_size: 2.9790, sizes: { 0.010 under: { new: 2.9896 to 2.9904 } } }
main_shell_thickness: { new: 0.1240 to 0.1250, at: { 2: { sizes: { 0.011 under: { new: 0.1296 to 0.1304 } } } } }
main_bearing_clearance: { new: 0.0010 to 0.0030 }
crankpin_diameter: { new: 1.9990 to 2.0000 }
rod_shell_thickness: { new: 0.0740 to 0.0750 }
rod_bearing_clearance: { new: 0.0010 to 0.0030 }
cylinder_bore: { new: 4.1250 to 4.1260 }
piston_clearance: { new: 0.0040 to 0.0060 }
ring_end_gap: { new: 0.010 to 0.020 }`),
  'machined.yaml': `kind: session
stage: machined
date: 2026-03-01
machined: [{ part: main journals, size: 0.010 under }, { part: crankpins, at: 1, size: 0.020 under }, { part: cylinders, at: 1R, size: 0.020 over }]
fitted: { main_shells: { at: { 2: { lower: 0.011 under } } }, rings: { size: std } }
readings:
  - { measure: main_journal_diameter, at: { 1: 2.9900, 2: 2.9899, 3: 2.9800 } }
  - { measure: main_shell_thickness, at: { 1: [0.1295, 0.1296], 2: [0.1294, 0.1299], 3: [0.1295, 0.1245] } }
  - { measure: main_housing_bore, at: { 1: 3.2510, 2: 3.2512, 3: 3.2512 } }
  - { measure: crankpin_diameter, at: { 1: 1.9795, 2: 1.9694 } }
  - { measure: rod_shell_thickness, at: { 1L: 0.0845, 1R: 0.0746, 2L: 0.0745, 2R: 0.0895 } }
  - { measure: cylinder_bore, at: { 1L: 4.1255, 1R: 4.1455, 2L: 4.1256, 2R: 4.1456 } }
  - { measure: piston_diameter, at: { 1L: 4.1205, 1R: 4.1405, 2L: 4.1206, 2R: 4.1204 } }
  - { measure: ring_end_gap, at: { 1L: { top: 0.015 }, 1R: { top: 0.030 } } }
`,
};

describe('the ids of the registry', () => {
  it('mean nothing for the sizes of parts either', () => {
    const plain = told(GROUND);
    expect(plain.join('\n')).toMatch(/main_shell_thickness 2 .* lower .*"(?:moved|stated)"/);
    expect(plain.filter((line) => / part\/grade | reading\/grade /.test(line)).length).toBeGreaterThan(2);
    expect(told(GROUND, OPAQUE)).toEqual(plain);
  });

  it('mean nothing: under other names every verdict and every finding stays', () => {
    const plain = told(VEE);
    expect(plain.length).toBeGreaterThan(60);
    expect(new Set(plain.map((line) => line.split(' ')[3])).size).toBeGreaterThan(3);
    expect(told(VEE, OPAQUE)).toEqual(plain);
  });
});
