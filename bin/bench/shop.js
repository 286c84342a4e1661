import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chance } from './chance.js';

/**
 * A shop of invented engines, six documents each, below two that serve all of them. Readings spread round what
 * each engine has worn to, so some are out, most are not, and no two engines are the same.
 */
export function writeShop(folder, engines) {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'shop.yaml'), SHOP);
  writeFileSync(join(folder, 'instruments.yaml'), INSTRUMENTS);
  for (let number = 1; number <= engines; number++) writeEngine(folder, number);
}

function writeEngine(shop, number) {
  const folder = join(shop, 'engines', `pump-${String(number).padStart(4, '0')}`);
  for (const part of ['torque', 'sessions']) mkdirSync(join(folder, part), { recursive: true });
  const { below, spread } = chance(number);
  const inline = [3, 4, 6][below(3)] ?? 4;
  const layout = { cylinders: inline, mains: inline + 1 };
  const worn = 2 + below(6);
  const date = (month) => `2026-${String(month).padStart(2, '0')}-${String(1 + below(28)).padStart(2, '0')}`;
  const write = (name, text) => writeFileSync(join(folder, name), text);
  write('engine.yaml', engineText(number, layout));
  write('limits.yaml', LIMITS);
  write('torque/main-caps.yaml', torqueText(layout));
  write('sessions/1-teardown.yaml', sessionText('teardown', date(1), layout, { worn, grown: 0, spread }));
  write('sessions/2-trial.yaml', sessionText('trial', date(5), layout, { worn: 0, grown: 1, spread }));
  write('sessions/3-service.yaml', sessionText('service', date(9), layout, { worn: 1, grown: 2, spread }));
}

export const SHOP = `# Invented for the bench.
kind: shop
units: { length: in, torque: lbf ft, pressure: psi, temperature: degF }
`;

export const INSTRUMENTS = `kind: instruments
instruments:
  mic-2-3:   { type: micrometer, range: { from: 2 in, to: 3 in }, resolution: 0.0001 in, max_error: 0.0001 in, due: 2027-01-10 }
  mic-3-4:   { type: micrometer, range: { from: 3 in, to: 4 in }, resolution: 0.0001 in, max_error: 0.0001 in, due: 2027-01-10 }
  bore-2-6:  { type: bore gauge, resolution: 0.0001 in, max_error: 0.0001 in, repeatability: 0.00005 in }
  dial-1:    { type: dial indicator, resolution: 0.0005 in, max_error: 0.0005 in }
  beam-60:   { type: torque wrench, max_error: 4 % }
`;

export const engineText = (number, { cylinders, mains }) => `kind: engine
name: Lower Mill pump no. ${number}
units: { length: in, torque: lbf ft }
layout: { cylinders: ${cylinders}, mains: ${mains}, crankpins: ${cylinders} }
labels: { main: { 1: front, ${mains}: flywheel end } }
sizes: { bore: 4.1250, stroke: 5.0000, main_journal_diameter: 3.2480, crankpin_diameter: 2.8740 }
materials: { block: cast iron, crankshaft: steel, pistons: aluminium }
`;

export const LIMITS = `kind: limits
source: Invented for the bench. Use the engine maker's manual.
limits:
  main_bearing_clearance:
    target: { min: 0.0026, max: 0.0032 }
    new:    { min: 0.0020, max: 0.0038 }
    wear:   { max: 0.0050 }
    at: { 1: { target: { min: 0.0028, max: 0.0036 } } }
  rod_bearing_clearance:
    target: { min: 0.0022, max: 0.0028 }
    new:    { min: 0.0016, max: 0.0034 }
    wear:   { max: 0.0045 }
  main_journal_diameter: { new: { min: 3.2475, max: 3.2485 }, wear: { min: 3.2465 } }
  crankpin_diameter: { new: { min: 2.8735, max: 2.8745 }, wear: { min: 2.8725 } }
  main_journal_out_of_round: { wear: { max: 0.0010 } }
  crankshaft_end_play: { new: { min: 0.006, max: 0.013 }, wear: { max: 0.018 } }
  turning_torque: { new: { max: 9 lbf ft }, at: { crankshaft: { new: { max: 3 lbf ft } } } }
  cylinder_bore: { new: { min: 4.1245, max: 4.1260 }, wear: { max: 4.1330 } }
  cylinder_taper: { wear: { max: { formula: "0.0008 * bore" } } }
`;

function torqueText({ mains }) {
  const names = Array.from({ length: mains }, (_, at) => [`${at + 1}L`, `${at + 1}R`]).flat();
  return `kind: torque
joint: main caps
fasteners: { names: [${names.join(', ')}], thread: 9/16-12, grade: 8, reuse: true }
order: [${names.toReversed().join(', ')}]
lubricant: engine oil on threads and under heads
passes: [{ to: 40 }, { to: 80 }, { to: 110 }]
before: [threads clean, caps in their places and facing forward, shells seated]
source: Invented for the bench.
`;
}

/** `worn` and `grown` in tenths: how far journals and bores are from new. */
export function sessionText(stage, date, { cylinders, mains }, { worn, grown, spread }) {
  const near = (base, tenths) => (base + (tenths + spread() * 1.5) / 10_000).toFixed(4);
  const list = (count, base, tenths) => Array.from({ length: count }, () => near(base, tenths)).join(', ');
  const rows = (count, columns, base, tenths) =>
    Array.from({ length: count }, (_, row) => `[${list(columns, base, tenths * (1 - row / count))}]`).join(
      ', ',
    );
  const each = (count, textOf) =>
    Array.from({ length: count }, (_, at) => `      ${at + 1}: ${textOf()}\n`).join('');
  const steps = Array.from(
    { length: cylinders },
    (_, at) => `      - { step: piston ${at + 1}, value: ${(2.9 + at * 0.9 + spread() * 0.1).toFixed(1)} }\n`,
  ).join('');
  return `kind: session
stage: ${stage}
date: ${date}
by: RK
temperature: 64 degF
readings:
  - measure: crankshaft_end_play
    with: dial-1
    value: ${(0.0105 + spread() * 0.002).toFixed(4)}
  - measure: turning_torque
    with: beam-60
    after:
      - { step: crankshaft, value: ${(2.1 + spread() * 0.2).toFixed(1)} }
${steps}  - measure: main_journal_diameter   # at both ends, the throw's way and square to it
    with: mic-3-4
    stations: [front, rear]
    directions: [throw, square]
    at:
${each(mains, () => `[${rows(2, 2, 3.248, -worn)}]`)}  - measure: main_bearing_bore   # shells in, caps torqued
    with: bore-2-6
    set_with: mic-3-4
    stations: [front, rear]
    directions: [square]
    at:
${each(mains, () => `[${list(2, 3.2508, grown)}]`)}  - measure: crankpin_diameter
    with: mic-2-3
    stations: [front, rear]
    directions: [throw, square]
    at:
${each(cylinders, () => `[${rows(2, 2, 2.874, -worn)}]`)}  - measure: rod_bearing_bore
    with: bore-2-6
    set_with: mic-2-3
    stations: [front, rear]
    directions: [square]
    at:
${each(cylinders, () => `[${list(2, 2.8764, grown)}]`)}  - measure: cylinder_bore
    with: bore-2-6
    stations: [top, middle, bottom]
    directions: [thrust, axial]
    at:
${each(cylinders, () => `[${rows(3, 2, 4.1252, worn * 4)}]`)}`;
}
