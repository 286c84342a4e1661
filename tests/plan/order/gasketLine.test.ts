import { describe, expect, it } from 'vitest';
import { fitPage } from '../../../src/output/plan/fit/fitPage.ts';
import { boxesOf } from '../../../src/plan/closing/boxes.ts';
import { fitsOf } from '../../../src/plan/fit/fits.ts';
import { orderList } from '../../../src/plan/order/orderList.ts';
import { jobsOf } from '../../../src/plan/work/jobs.ts';
import { limitsOf, sessionOf } from '../../shopOf.ts';
import { contextOf } from '../planOf.ts';

interface Said {
  readonly shelf?: number;
  readonly more?: string;
  readonly limits?: string;
  readonly blocks?: string;
  readonly layout?: string;
}

const contextFor = ({ shelf = 0, more = '', limits = '', blocks = '', layout = 'cylinders: 2' }: Said) =>
  contextOf({
    'shop.yaml': 'kind: shop\nunits: { length: mm }\n',
    'stock.yaml': `kind: stock\ngaskets: [{ code: G2, thickness: 1.40, count: ${shelf} }]\n`,
    'e/engine.yaml': `kind: engine\nname: Pump\nlayout: { ${layout} }\n`,
    'e/limits.yaml': limitsOf(
      `piston_protrusion: { new: 0.30 to 0.75 }\n${limits}`,
      'gasket_choice: [{ code: G2, protrusion: 0.45 to 0.60, thickness: 1.40 }]\n',
    ),
    'e/session.yaml': sessionOf(
      'trial',
      `- { measure: piston_protrusion, at: { 1: 0.44, 2: 0.46 } }\n${blocks}`,
      more,
    ),
  });

const ordered = (said: Said) => {
  const context = contextFor(said);
  return orderList(context, jobsOf(context))
    .filter(({ what }) => /head gasket/.test(what))
    .map(({ count, onShelf, what, code, size, when, for: needs, waitsFor = '-' }) =>
      [`${count} (${onShelf})`, what, code ?? '-', size, when, needs, waitsFor].join('; '),
    );
};

describe('a head gasket by the protrusion of the pistons', () => {
  it.each<readonly [string, Said, readonly string[]]>([
    [
      'is ordered where the shelf has none',
      {},
      ['1 (0); head gasket; G2; 1.400 mm; now; piston protrusion 2; -'],
    ],
    [
      'is taken from the shelf',
      { shelf: 3 },
      ['1 (1); head gasket; G2; 1.400 mm; now; piston protrusion 2; -'],
    ],
    [
      'is ordered for each head, what the shelf lacks of it',
      { shelf: 1, layout: 'cylinders: 2, banks: { L: [1], R: [2] }' },
      ['2 (1); head gaskets; G2; 1.400 mm; now; piston protrusion 2; -'],
    ],
    [
      'is not ordered once it is fitted, though the pistons were read with it',
      { more: 'fitted: { head_gasket: { code: G2 } }\n' },
      [],
    ],
    [
      'waits where the deck is still to be surfaced',
      {
        limits: 'deck_flatness: { wear: { max: 0.05 } }',
        blocks: '- { measure: deck_flatness, value: 0.10 }',
      },
      [
        '1 (0); head gasket; -; by plan --fit; after measuring; piston protrusion 2; measure it again after surface block',
      ],
    ],
  ])('%s', (_, said, lines) => expect(ordered(said)).toEqual(lines));

  it.each<readonly [number, string]>([
    [0, 'not everything has its part: what lacks one says why'],
    [1, 'each place has its part; taken together they lie as near to the middle as stock allows'],
  ])('leaves its place without a part where the shelf has too few of it: %i', (shelf, answer) => {
    const context = contextFor({ shelf });
    expect(fitPage(fitsOf(context), context, []).answer).toEqual([answer]);
  });

  it.each<readonly [string, Said, readonly string[]]>([
    ['while nobody says what is in', {}, ['head gasket G2, 1.400 mm, fitted']],
    [
      'while what is in has no code',
      { more: 'fitted: { head_gasket: { condition: new } }\n' },
      ['head gasket G2, 1.400 mm, fitted'],
    ],
    ['until a session says its code', { more: 'fitted: { head_gasket: { code: G2 } }\n' }, []],
  ])('is a box before it is closed up %s', (_, said, boxes) => {
    const all = boxesOf(contextFor(said)).map(({ what }) => what);
    expect(all.filter((what) => /^head gasket/.test(what))).toEqual(boxes);
  });

  it('is a box that is still known once its code is stated', () => {
    const more =
      'fitted: { head_gasket: { code: G2 } }\nconfirmed: { what: "head gasket G2, 1.400 mm, fitted", by: RK }\n';
    const { state } = contextFor({ more });
    expect(state.findings.filter(({ code }) => code === 'plan/unknown-work')).toEqual([]);
  });
});
