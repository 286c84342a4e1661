import { describe, expect, test } from 'vitest';
import { type Tools, tighteningCard } from '../../../src/torque/card.ts';
import { engineOf } from '../../documents/engineOf.ts';
import { amount } from '../amounts.ts';

function comparisons(
  fasteners: string,
  passes: string,
  more = '',
  tools: Tools = {},
  joint = 'joint: studs of the head',
): readonly string[] {
  const yaml = `kind: torque\n${joint}\nfasteners: { count: 2, ${fasteners} }\npasses: ${passes}\nsource: Invented.\n${more}`;
  const [document] = engineOf({ 'torque/joint.yaml': yaml }).sequences;
  if (document === undefined) throw new Error('no sequence');
  const carded = tighteningCard(document.joint, tools);
  if ('problem' in carded) throw new Error(carded.problem);
  return carded.card.comparisons;
}

const numberIn = (texts: readonly string[], around: RegExp): number => {
  const found = texts.map((text) => around.exec(text)?.[1]).find((each) => each !== undefined);
  if (found === undefined) throw new Error(texts.join('\n'));
  return Number(found);
};

describe('what a card holds its figures against', () => {
  test('shares of proof: 3619.73 lbf in at 85 % for a 3/4-10 of grade 5, K .2 (Wentzell 6.1, area rounded there)', () => {
    const told = comparisons('thread: 3/4-10, grade: 5', '[{ to: 2000 lbf in }]');
    expect(Math.abs(numberIn(told, /about (\d+) lbf in/) / (3619.73 * (75 / 85)) - 1)).toBeLessThan(0.002);
    expect(Math.abs(numberIn(told, /90 % (\d+) lbf in/) / (3619.73 * (90 / 85)) - 1)).toBeLessThan(0.002);
  });

  test.each(['{ turn: 90 deg }', '{ stretch: 0.0060 to 0.0070 in }'])(
    'no share of proof beside a pass of %s, which no torque makes',
    (pass) => {
      expect(comparisons('thread: 3/4-10, grade: 5', `[{ to: 200 lbf in }, ${pass}]`)).toEqual([]);
    },
  );

  test('stated friction: K .183 for an M18 x 2.5, .15 in the thread and .13 at 1.25 d (Jindal, our pitch diameter)', () => {
    const friction = 'friction: { thread: 0.15, head: 0.13, head_diameter: 22.5 mm }\n';
    expect(comparisons('thread: M18', '[{ to: 200 N m }]', friction)).toEqual([
      'the stated friction comes to a nut factor of 0.183',
    ]);
  });

  test.each([
    ['M8x1', '8.8', '20.2'],
    ['M10x1.25', '10.9', '46.4'],
    ['M12x1.25', '12.9', '82.5'],
  ])(
    '90 %% of yield with the twist, friction .12: %s of %s at %s kN (VDI 2230, second hand)',
    (size, grade, printed) => {
      const friction = 'friction: { thread: 0.12, head: 0.12, head_diameter: 15 mm }\n';
      const told = comparisons(`thread: ${size}, grade: ${grade}`, '[{ to: 20 N m }]', friction);
      expect(Math.abs(numberIn(told, /reached at ([\d.]+) kN/) / Number(printed) - 1)).toBeLessThan(0.005);
    },
  );

  test('a warm stud: 370.46 degF for .01204 in of 5 in at 6.5e-6 (Wentzell 6.3); our steel expands 11.5e-6 per degC', () => {
    const told = comparisons(
      'thread: 3/4-10, grade: 5, length: 5 in',
      '[{ stretch: 0.01203 to 0.01205 in }]',
    );
    const degF = numberIn(told, /\((\d+) degF\) warmer/);
    expect(Math.abs(degF * (11.5 / 1.8 / 6.5) - 370.46)).toBeLessThan(0.6);
  });

  test.each([
    ['M3', '1.31 N m, 90 % 1.58 N m'],
    ['M8', '25.5 N m, 90 % 30.6 N m'],
    ['M16', '218 N m, 90 % 262 N m'],
  ])('shares of proof of an %s of class 8.8, K .2, worked by hand: %s', (size, torques) => {
    expect(comparisons(`thread: ${size}, grade: 8.8`, '[{ to: 1 N m }, { check: 1 N m }]')).toEqual([
      `75 % of proof, the usual aim for fasteners that are used again, would take about ${torques}`,
    ]);
  });

  test('stated friction without a grade, or a grade without a thread, says no more than it can', () => {
    const friction = 'friction: { thread: 0.15, head: 0.13, head_diameter: 22.5 mm }\n';
    expect(comparisons('reuse: true', '[{ to: 200 N m }]', friction)).toEqual([]);
    expect(comparisons('thread: M18, grade: 8.8', '[{ turn: 90 deg }]', friction)).toEqual([
      'the stated friction comes to a nut factor of 0.183',
      'with the twist of tightening, 90 % of yield is reached at 97.9 kN (VDI 2230)',
    ]);
  });

  describe('a stud put in warm', () => {
    const STUD = 'thread: 3/4-10, grade: 5, length: 5 in';
    const WARM = ['to: 100 N m', 'stretch: 0.0110 to 0.0130 in'];
    // .012 in of 5 in at 11.5e-6 for a kelvin: 208.7 K.
    const told =
      'a stud put in warm has that stretch when it is 209 degC (376 degF) warmer than the joint, and nothing has given';

    test('is told of the last stretch, at the middle of its window', () => {
      const passes = `[{ ${WARM[0]} }, { stretch: 0.0010 to 0.0020 in }, { ${WARM[1]} }]`;
      expect(comparisons(STUD, passes)).toEqual([told]);
    });

    test('is not told without a stretch or a length', () => {
      expect(comparisons(STUD, '[{ turn: 90 deg }]')).toEqual([]);
      expect(comparisons('thread: 3/4-10, grade: 5', `[{ ${WARM[1]} }]`)).toEqual([]);
    });

    test.each([
      ['joint: head', '', []],
      ['joint: studio lamp', '', []],
      ['joint: head', 'note: long studs\n', [told]],
      ['joint: Stud', '', [told]],
    ])('of %s with %j: %j', (joint, note, expected) => {
      expect(comparisons(STUD, `[{ ${WARM[1]} }]`, note, {}, joint)).toEqual(expected);
    });
  });

  describe('FAA AC 43.13-1B, table 7-1', () => {
    const told = (torque: string, lubricant = 'cadmium plated', tools: Tools = {}) =>
      comparisons('thread: 1/4-28', `[{ to: ${torque} }]`, `lubricant: ${lubricant}\n`, tools);

    test('says where the last torque lies for both kinds of nut', () => {
      expect(told('60 lbf in')).toEqual([
        'by FAA AC 43.13-1B, table 7-1, the last torque is recommended for a tension nut (50 to 70, at most 100 lbf in), above recommended for a shear nut (30 to 40, at most 60 lbf in)',
      ]);
    });

    test('takes off what turns the nut freely', () => {
      expect(told('40 lbf in', 'cadmium plated', { runOn: amount('8.9 lbf in') })[0]).toContain(
        'below recommended for a tension nut (50 to 70, at most 100 lbf in), recommended for a shear nut',
      );
    });

    test('goes by the last pass that tightens to a torque, whatever is checked later', () => {
      const passes = '[{ to: 60 lbf in }, { to: 110 lbf in }, { check: 50 lbf in }]';
      expect(comparisons('thread: 1/4-28', passes, 'lubricant: cadmium plated\n')).toEqual([
        'by FAA AC 43.13-1B, table 7-1, the last torque is above maximum for a tension nut (50 to 70, at most 100 lbf in), above maximum for a shear nut (30 to 40, at most 60 lbf in)',
      ]);
    });

    test.each([
      ['a thread that it leaves out', 'thread: 1-12', '[{ to: 60 lbf in }]'],
      ['no thread', 'reuse: true', '[{ to: 60 lbf in }]'],
      ['no torque', 'thread: 1/4-28', '[{ turn: 90 deg }]'],
    ])('is silent with %s', (_, fasteners, passes) => {
      expect(comparisons(fasteners, passes, 'lubricant: cadmium plated\n')).toEqual([]);
    });

    test('is silent where the threads are oiled: it is for dry cadmium plated ones', () => {
      expect(told('60 lbf in', 'engine oil')).toEqual([]);
    });
  });
});
