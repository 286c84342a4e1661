import { describe, expect, it } from 'vitest';
import { registryWith } from '../../../src/characteristics/registry.ts';
import { ShopLoader } from '../../../src/shell/discover/loadEngines.ts';
import { OpenedOnce } from '../../../src/shell/discover/openedOnce.ts';
import { type Files, storeOf } from '../../compare/shop.ts';
import { limitsOf } from '../../shopOf.ts';

const STUDY = `kind: session
stage: service
date: 2026-01-12
study:
  measure: main_journal_diameter
  with: mic
  parts:
    P1: { A: [2.4941, 2.4942], B: [2.4943, 2.4942] }
    P2: { A: [2.4761, 2.4763], B: [2.4762, 2.4762] }
`;

const SHOP: Files = {
  'shop.yaml': 'kind: shop\nunits: { length: in }\n',
  'instruments.yaml':
    'kind: instruments\ninstruments: { mic: { type: micrometer, repeatability: { study: other/gauges.yaml } } }\n',
  'other/engine.yaml': 'kind: engine\nname: Other\nlayout: { mains: 3 }\n',
  'other/gauges.yaml': STUDY,
  'sheets/long.yaml': limitsOf('crankshaft_end_play: { new: { max: 0.01 } }'),
  'e/engine.yaml': 'kind: engine\nname: Pump\nlayout: { mains: 3 }\n',
  'e/limits.yaml': `${limitsOf('main_bearing_clearance: { new: { max: 0.003 } }')}extends: ../sheets/long.yaml\n`,
  'e/teardown.yaml': 'kind: session\nstage: teardown\ndate: 2026-02-03\n',
};

/** The engine of a shop in one state and then in another, with what was opened in between. */
function engineIn(files: Files, opened: OpenedOnce) {
  const { engine, diagnostics } = new ShopLoader(storeOf(files), registryWith, opened).load('e');
  return { engine, told: diagnostics.map(({ message }) => message) };
}

const edited = (path: string): Files => ({ ...SHOP, [path]: `${SHOP[path]}# edited\n` });

describe('an engine in two states of its shop', () => {
  it('is one engine where all that it stands on is the same', () => {
    const opened = new OpenedOnce();
    const { engine, told } = engineIn(SHOP, opened);
    expect([engine?.document.name, told]).toEqual(['Pump', []]);
    expect(engineIn({ ...SHOP, 'third/engine.yaml': 'kind: engine\nname: Third\n' }, opened).engine).toBe(
      engine,
    );
    opened.forget('e');
    expect(engineIn(SHOP, opened).engine).not.toBe(engine);
  });

  it.each(Object.keys(SHOP))('is another one where %s was edited', (path) => {
    const opened = new OpenedOnce();
    const { engine } = engineIn(SHOP, opened);
    const after = engineIn(edited(path), opened);
    expect(after.told).toEqual([]);
    expect(after.engine).not.toBe(engine);
    expect(after.engine?.document.name).toBe('Pump');
  });

  it('is put together anew after eight others, so that memory does not grow with them', () => {
    const opened = new OpenedOnce();
    const many = Object.fromEntries(
      Array.from({ length: 8 }, (_, i) => [`p${i}/engine.yaml`, `kind: engine\nname: P${i}\n`]),
    );
    const loader = new ShopLoader(storeOf({ ...SHOP, ...many }), registryWith, opened);
    const { engine } = loader.load('e');
    for (const i of [0, 1, 2, 3, 4, 5, 6]) loader.load(`p${i}`);
    expect(loader.load('e').engine).toBe(engine);
    loader.load('p7');
    expect(loader.load('e').engine).not.toBe(engine);
  });

  it('is another one where a document is gone', () => {
    const opened = new OpenedOnce();
    const { engine } = engineIn(SHOP, opened);
    const { 'e/teardown.yaml': _, ...rest } = SHOP;
    expect(engine?.sessions).toHaveLength(1);
    expect(engineIn(rest, opened).engine?.sessions).toEqual([]);
  });
});
