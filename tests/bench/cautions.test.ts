import { describe, expect, it } from 'vitest';
import { Cautions } from '../../src/bench/cautions.ts';
import { planSession } from '../../src/bench/plan.ts';
import { characteristics, registryWith } from '../../src/characteristics/registry.ts';
import type { Stage } from '../../src/documents/session/stage.ts';
import { blankSheet } from '../../src/output/bench/blankSheet.ts';
import { blockHeading } from '../../src/output/bench/recordText.ts';
import { sheetLines } from '../../src/output/bench/sheetText.ts';
import { writtenLines } from '../../src/output/escape/line.ts';
import { textStyle } from '../../src/shell/process/terminal.ts';
import { limitsOf, shopOf } from '../shopOf.ts';

const LIMITS = `compression_pressure: { wear: { min: 120 psi } }
leak_down: { wear: { max: 10 } }
turning_torque: { new: { max: 9 lbf ft } }
crankshaft_runout: { wear: { max: 0.002 } }
valve_spring_load_open: { wear: { min: 90 lbf } }
valve_margin: { wear: { min: 0.040 } }`;

const shop = shopOf({
  'e/engine.yaml':
    'kind: engine\nname: A\nunits: { length: in, torque: lbf ft, pressure: psi, force: lbf }\nlayout: { cylinders: 2, crankpins: 2, mains: 3, valves: [I, E] }\n',
  'e/limits.yaml': limitsOf(LIMITS),
});

function planAt(stage: Stage) {
  const { engine, registry } = shop;
  if (engine === undefined) throw new Error('the documents are not sound');
  return { engine, registry, stage, date: '2026-02-03', plan: planSession(engine, registry, { stage }) };
}

const sheetAt = (stage: Stage): string => {
  const { plan, ...head } = planAt(stage);
  return writtenLines(sheetLines(blankSheet(plan, head), head.date)).replaceAll('\n', ' ');
};

describe('what can hurt stands where the work is', () => {
  it.each([
    ['no face over an open plug hole'],
    ['Air in a cylinder kicks the crankshaft round'],
    ['Keep hands clear while the crankshaft is turned'],
    ['A spring under load flies'],
    ['may hold sodium'],
  ])('on the sheet, once: %s', (words) => {
    expect(sheetAt('teardown').split(words)).toHaveLength(2);
  });

  it('of taking an engine apart at a teardown alone', () => {
    expect(sheetAt('teardown')).toContain('asbestos');
    expect(sheetAt('rebuild')).not.toContain('asbestos');
  });

  it('and fits the page', () => {
    const { plan, ...head } = planAt('teardown');
    const lines = writtenLines(sheetLines(blankSheet(plan, head), head.date)).split('\n');
    const cautions = lines.filter((each) => !each.includes('___') && !each.includes('   '));
    expect(Math.max(...cautions.map((each) => each.length))).toBeLessThanOrEqual(80);
  });

  it('above the first place in record, and not again where the same can hurt', () => {
    const { plan, engine, registry } = planAt('teardown');
    const style = textStyle({ isTTY: true, columns: 60 }, { NO_COLOR: '1' }, false);
    const cautions = new Cautions(registry);
    const headings = plan.blocks.map((block) => {
      const setting = { instrument: 'x', zero: undefined, caution: cautions.of(block.measure) };
      return [
        block.measure,
        writtenLines(blockHeading(block, setting, { engine, registry, style })),
      ] as const;
    });
    const told = headings.filter(([, text]) => text.includes('Caution: Keep hands clear')).map(([id]) => id);
    expect(told).toEqual(['turning_torque']);
    const lines = headings.flatMap(([, text]) => text.split('\n'));
    expect(Math.max(...lines.map((each) => each.length))).toBeLessThanOrEqual(60);
  });
});

it('every caution is short enough to be read at the bench', () => {
  const { all } = registryWith([]);
  expect(all).toHaveLength(characteristics.length);
  for (const { id, caution = '' } of all) expect(caution.length, id).toBeLessThan(330);
});
