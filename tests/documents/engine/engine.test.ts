import { describe, expect, it } from 'vitest';
import { familyOf } from '../../../src/layout/family.ts';
import { findPosition } from '../../../src/layout/readKey.ts';
import { relateOne } from '../../../src/layout/relate.ts';
import { refusalsOf, shopOf } from '../../shopOf.ts';

const text = (rest: string) => ({
  'e/engine.yaml': `kind: engine\nname: A\nunits: { length: in }\n${rest}\n`,
});

function layoutOf(rest: string) {
  const layout = shopOf(text(rest)).engine?.document.layout;
  if (layout === undefined) throw new Error(`not read: ${refusalsOf(text(rest)).join(', ')}`);
  return layout;
}

describe('positions are names', () => {
  it.each([
    ['a count stands for 1 to n', 'layout: { mains: 3 }', 'main', ['1', '2', '3']],
    ['a list gives its names', 'layout: { mains: [front, 2, rear] }', 'main', ['front', '2', 'rear']],
    [
      'crankpins with their rods give their names',
      'layout: { crankpins: { 1: [1L, 1R], 2: [2L, 2R] } }',
      'crankpin',
      ['1', '2'],
    ],
    [
      'and those of the cylinders',
      'layout: { crankpins: { 1: [1L, 1R], 2: [2L, 2R] } }',
      'cylinder',
      ['1L', '1R', '2L', '2R'],
    ],
    ['what the layout leaves out is none', 'layout: { mains: 3 }', 'cylinder', []],
  ] as const)('%s', (_, layout, axis, expected) =>
    expect(
      layoutOf(layout)
        .positionsOf(familyOf(axis))
        .map(({ name }) => name),
    ).toEqual(expected),
  );
});

describe('the crankpin that a rod runs on', () => {
  const pinOf = (text: string, cylinder: string) => {
    const layout = layoutOf(text);
    const position = findPosition(layout, familyOf('cylinder'), cylinder);
    return position && relateOne(layout, position, familyOf('crankpin'))?.name;
  };

  it.each([
    ['in line it has the cylinder’s number', 'layout: { cylinders: 4, crankpins: 4 }', '3', '3'],
    [
      'in a vee it is as the layout says',
      'layout: { cylinders: 8, crankpins: 4, pins: { 1: [1, 5], 2: [2, 6], 3: [3, 7], 4: [4, 8] } }',
      '7',
      '3',
    ],
    [
      'named pins and cylinders pair by their order',
      'layout: { cylinders: [a, b], crankpins: [x, y] }',
      'b',
      'y',
    ],
  ])('%s', (_, layout, cylinder, expected) => expect(pinOf(layout, cylinder)).toBe(expected));
});

describe('labels', () => {
  const labelled = 'layout: { mains: 5 }\nlabels: { main: { 1: front, 3: centre, 5: flywheel end } }';

  it('stand beside the number and may be used as keys where they are one’s own', () => {
    const layout = layoutOf(labelled);
    const at = (key: string) => findPosition(layout, familyOf('main'), key);
    expect(at('5')?.label).toBe('flywheel end');
    expect(at('flywheel end')?.name).toBe('5');
    expect(at('centre')?.name).toBe('3');
    expect(at('rear')).toBeUndefined();
  });

  it('that two positions carry are no keys', () => {
    const layout = layoutOf('layout: { mains: 5 }\nlabels: { main: { 1: thrust, 3: thrust } }');
    expect(findPosition(layout, familyOf('main'), 'thrust')).toBeUndefined();
  });

  it('of a position that there is not are refused', () => {
    expect(refusalsOf(text('layout: { mains: 3 }\nlabels: { main: { 5: flywheel end } }'))).toEqual([
      'e/engine.yaml:5:19 unknown-position',
    ]);
  });
});

it('a position that is nearly a label is taken for one in the help', () => {
  const { diagnostics } = shopOf({
    ...text('layout: { mains: 3 }\nlabels: { main: { 3: flywheel end } }'),
    'e/limits.yaml':
      'kind: limits\nsource: Invented.\nlimits: { main_bearing_clearance: { at: { flywheel and: { new: { max: 1 in } } } } }\n',
  });
  expect(diagnostics.map(({ help }) => help)).toEqual(['did you mean flywheel end?']);
});

describe('nominal sizes', () => {
  it('are bore, stroke and every length that is measured', () => {
    const { engine } = shopOf(
      text('layout: { mains: 3 }\nsizes: { bore: 4.125, stroke: 5.0, main_journal_diameter: 3.248 }'),
    );
    expect([...(engine?.sizes ?? [])].map(([name, { n }]) => [name, n])).toEqual([
      ['bore', 1_047_750_000n],
      ['stroke', 1_270_000_000n],
      ['main_journal_diameter', 824_992_000n],
    ]);
  });

  it.each([
    ['{ boer: 4.1 }', '5:10 unknown-measure'],
    ['{ turning_torque: 4.1 }', '5:10 unknown-measure'],
    ['{ bore: 4 psi }', '5:16 wrong-quantity'],
  ])('%s is refused', (sizes, place) =>
    expect(refusalsOf(text(`layout: { mains: 3 }\nsizes: ${sizes}`))).toEqual([`e/engine.yaml:${place}`]),
  );
});

describe('an engine document', () => {
  it('needs a name and a layout', () => {
    expect(refusalsOf({ 'e/engine.yaml': 'kind: engine\n' }).map((each) => each.replace(/.* /, ''))).toEqual([
      'missing-key',
    ]);
  });

  it('a count from a stranger does not fill the memory', () => {
    expect(refusalsOf(text('layout: { mains: 1000000000 }'))).toHaveLength(1);
  });
});

describe('an expansion that is stated', () => {
  const refused = (written: string) =>
    refusalsOf(text(`layout: { mains: 1 }\nexpansion: { pistons: ${written} }`));

  it.each(['19.4e-6 per degC', '0.0000194 per degC', '10.8e-6 per degF', '1.2e-6 per degC'])(
    '%s is read',
    (written) => {
      expect(refused(written)).toEqual([]);
    },
  );

  it.each([
    '19.4 per degC',
    '0.0001001 per degC',
    '4e-7 per degC',
    '19.4e-6',
    '19.4e-6 per K',
    '-1e-6 per degC',
  ])('%s is refused', (written) => {
    expect(refused(written)).toHaveLength(1);
  });

  it('of a part that no engine has is refused', () => {
    expect(refusalsOf(text('layout: { mains: 1 }\nexpansion: { magneto: 19.4e-6 per degC }'))).toHaveLength(
      1,
    );
  });
});
