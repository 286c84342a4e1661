import { describe, expect, it } from 'vitest';
import { type Files, limitsOf, refusalsOf, shopOf, verdictsOf } from '../../shopOf.ts';

const LABELLED = 'kind: engine\nname: A\nunits: { length: in }\nlayout: { mains: 3 }\n';
const SHOP = 'kind: shop\nunits: { length: in }\n';
const session = (value: string) =>
  `kind: session\nstage: rebuild\ndate: 2026-02-03\nreadings:\n  - { measure: main_bearing_clearance, at: { 1: ${value}, 3: ${value} } }\n`;

/** The greatest reading that is inside at main 1 and at main 3, in thousandths: where the limit in force lies. */
function limitsInForce(files: Files): readonly number[] {
  return ['1', '3'].map((position) => {
    const isInside = (thou: number) =>
      verdictsOf({
        'shop.yaml': SHOP,
        'row/e/engine.yaml': LABELLED,
        'row/e/s.yaml': session(`${thou} thou`),
        ...files,
      })[`main_bearing_clearance ${position}`] !== 'out';
    return [1, 2, 3, 4, 5, 6, 7, 8].filter(isInside).length;
  });
}

const max = (thou: number, more = '') =>
  limitsOf(`main_bearing_clearance: { new: { max: ${thou} thou }${more} }`);
const at3 = (thou: number) => `, at: { 3: { new: { max: ${thou} thou } } }`;
const only3 = (thou: number) =>
  limitsOf(`main_bearing_clearance: { at: { 3: { new: { max: ${thou} thou } } } }`);
const extending = (path: string, text: string) => text.replace('limits:', `extends: ${path}\nlimits:`);

describe('which limit wins', () => {
  it.each<[string, Files, readonly number[]]>([
    ['the only one there is', { 'row/e/l.yaml': max(3) }, [3, 3]],
    ['one for a position over the general one of its document', { 'row/e/l.yaml': max(3, at3(5)) }, [3, 5]],
    [
      'the nearer folder over the higher',
      { 'row/e/l.yaml': max(3), 'row/l.yaml': max(5), 'l.yaml': max(7) },
      [3, 3],
    ],
    ['a higher folder where the nearer says nothing', { 'row/l.yaml': max(5), 'l.yaml': max(7) }, [5, 5]],
    ['a nearer position over a higher general limit', { 'row/e/l.yaml': only3(4), 'l.yaml': max(6) }, [6, 4]],
    [
      'a nearer general limit over a position higher up',
      { 'row/e/l.yaml': max(3), 'l.yaml': max(6, at3(8)) },
      [3, 3],
    ],
    [
      'a document over what it extends',
      { 'row/e/l.yaml': extending('base.yaml', max(3)), 'row/e/base.yaml': max(6) },
      [3, 3],
    ],
    [
      'a position of what is extended, where the document says nothing of it',
      {
        'row/e/l.yaml': extending('../base.yaml', limitsOf('crankshaft_end_play: { new: { max: 1 } }')),
        'row/base.yaml': max(6, at3(8)),
      },
      [6, 8],
    ],
    [
      'what is extended over what lies in a higher folder',
      {
        'row/e/l.yaml': extending(
          '../../family/base.yaml',
          limitsOf('crankshaft_end_play: { new: { max: 1 } }'),
        ),
        'family/base.yaml': max(2),
        'row/l.yaml': max(7),
      },
      [2, 2],
    ],
    [
      'the nearer of a chain',
      {
        'row/e/a.yaml': extending('b.yaml', limitsOf('crankshaft_end_play: { new: { max: 1 } }')),
        'row/e/b.yaml': extending('c.yaml', max(4)),
        'row/e/c.yaml': max(8),
      },
      [4, 4],
    ],
  ])('%s', (_, files, expected) => expect(limitsInForce(files)).toEqual(expected));
});

describe('a band that is given replaces that band whole', () => {
  const verdictAt = (text: string, value: string) =>
    verdictsOf({ 'e/engine.yaml': LABELLED, 'e/l.yaml': text, 'e/s.yaml': session(value) });
  const text = limitsOf(
    'main_bearing_clearance: { target: 0.002 to 0.003, new: 0.001 to 0.004, at: { 3: { new: { max: 0.006 } } } }',
  );

  it('its other side is not filled from the general one', () => {
    expect(verdictAt(text, '0.0005')).toEqual({
      'main_bearing_clearance 1': 'out',
      'main_bearing_clearance 2': 'missing',
      'main_bearing_clearance 3': 'off target',
    });
  });

  it('the other bands stay as they are', () => {
    expect(verdictAt(text, '0.0050')).toMatchObject({
      'main_bearing_clearance 1': 'out',
      'main_bearing_clearance 3': 'off target',
    });
    expect(verdictAt(text, '0.0025')).toMatchObject({ 'main_bearing_clearance 3': 'ok' });
  });
});

describe('limits that contradict each other are refused', () => {
  const refused = (files: Files) => refusalsOf({ 'e/engine.yaml': LABELLED, ...files });

  it('two documents of one folder that set the same band', () => {
    expect(refused({ 'e/a.yaml': max(3), 'e/b.yaml': max(4) })).toEqual(['e/b.yaml:4:41 limits-conflict']);
  });

  it('that set the same band at one position', () => {
    expect(refused({ 'e/a.yaml': only3(3), 'e/b.yaml': only3(4) })).toHaveLength(1);
  });

  it('not: different bands, positions or folders, nor one that extends the other', () => {
    const wear = limitsOf('main_bearing_clearance: { wear: { max: 9 thou } }');
    expect(refused({ 'e/a.yaml': max(3), 'e/b.yaml': wear })).toEqual([]);
    expect(refused({ 'e/a.yaml': max(3), 'e/b.yaml': only3(4) })).toEqual([]);
    expect(refused({ 'e/a.yaml': max(3), 'e/b.yaml': extending('a.yaml', max(4)) })).toEqual([]);
    expect(refused({ 'shop.yaml': SHOP, 'e/a.yaml': max(3), 'b.yaml': max(4) })).toEqual([]);
  });

  it('limits that extend each other in a circle, however long', () => {
    const circle = {
      'e/a.yaml': extending('b.yaml', max(3)),
      'e/b.yaml': extending('c.yaml', max(4)),
      'e/c.yaml': extending('a.yaml', max(5)),
    };
    expect(refused(circle).filter((each) => each.endsWith(' extends'))).toHaveLength(3);
    expect(refused({ 'e/a.yaml': extending('a.yaml', max(3)) })).toEqual(['e/a.yaml:3:10 extends']);
    expect(shopOf({ 'e/engine.yaml': LABELLED, ...circle }).engine).toBeUndefined();
  });
});
