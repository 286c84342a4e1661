import { describe, expect, it } from 'vitest';
import { shopTests } from '../../src/characteristics/wholeEngine/shopTests.ts';
import { limitsOf, refusalsOf, rowsOf } from '../shopOf.ts';

const textOf = (id: string): string => {
  const { description, note, caution } = shopTests.find((each) => each.id === id) ?? {};
  return [description, note, caution].join(' ');
};

describe('how a part is tested', () => {
  it.each(['crankshaft', 'camshaft'])('a %s is of iron or steel: magnetic ink or dye', (part) => {
    expect(textOf(`${part}_crack_test`)).toMatch(/by magnetic ink, or by a dye/);
  });

  it.each(['block', 'head', 'rod'])('a %s may be of aluminium, which is not magnetic', (part) => {
    expect(textOf(`${part}_crack_test`)).toMatch(
      /a dye.* of iron by magnetic ink: aluminium is not magnetic/,
    );
  });

  it('a piston is of aluminium: by dye, and nothing is magnetised', () => {
    expect(textOf('piston_crack_test')).toMatch(/magnetic ink shows nothing in aluminium/);
    expect(textOf('piston_crack_test')).not.toMatch(/wet magnetic|pacemaker/);
  });

  it.each(shopTests.map(({ id }) => id).filter((id) => !id.endsWith('_crack_test')))(
    '%s has nothing to do with magnets',
    (id) => {
      expect(textOf(id)).not.toMatch(/magnet/i);
    },
  );
});

describe('the pressure test of heads', () => {
  const files = (layout: string, reading: string) => ({
    'e/engine.yaml': `kind: engine\nname: A\nlayout: { cylinders: 4, mains: 3, ${layout} }\n`,
    'e/s.yaml': `kind: session\nstage: machined\ndate: 2026-02-03\nreadings: [{ measure: head_pressure_test, ${reading} }]\n`,
  });
  const VEE = 'crankpins: { 1: [1, 2], 2: [3, 4] }, banks: { L: [1, 3], R: [2, 4] }';

  it('is one for each bank of a vee', () => {
    const rows = rowsOf(files(VEE, 'at: { L: pass, R: fail }'));
    expect(rows.map(({ position, judgement }) => [position.name, judgement.verdict])).toEqual([
      ['L', 'ok'],
      ['R', 'out'],
    ]);
  });

  it('is one for an engine with one head, which needs no name', () => {
    expect(rowsOf(files('crankpins: 4', 'value: pass')).map(({ judgement }) => judgement.verdict)).toEqual([
      'ok',
    ]);
  });

  it('of a vee needs its bank', () => {
    expect(refusalsOf(files(VEE, 'value: pass'))).toEqual(['e/s.yaml:4:50 value']);
  });
});

describe('flatness in a span', () => {
  it.each(['deck', 'head'])('of a %s has a limit that states its length', (face) => {
    const files = (reading: string) => ({
      'e/engine.yaml': 'kind: engine\nname: A\nunits: { length: in }\nlayout: { cylinders: 4, mains: 3 }\n',
      'e/l.yaml': limitsOf(`${face}_flatness_in_span: { per: 6 in, new: { max: 0.002 } }`),
      'e/s.yaml': `kind: session\nstage: machined\ndate: 2026-02-03\nreadings: [{ measure: ${face}_flatness_in_span, value: ${reading} }]\n`,
    });
    expect(refusalsOf(files('0.001'))).toEqual([]);
    expect(rowsOf(files('0.002'))[0]?.judgement.verdict).toBe('ok');
    expect(rowsOf(files('0.0021'))[0]?.judgement.verdict).toBe('out');
  });
});
