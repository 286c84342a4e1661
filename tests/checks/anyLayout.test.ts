import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { oncePerTexts } from '../oncePerTexts.ts';
import { runs } from '../propertyRuns.ts';
import { type Files, reportOf } from '../shopOf.ts';
import { engineFiles, type Naming, type RandomEngine, randomEngine } from './randomEngine.ts';

/** Every verdict with what it was passed on, by positions as they were drawn; and how often each thing was found. */
function said(files: Files, drawnName: (written: string) => string = (name) => name): readonly string[] {
  const [session] = reportOf(files).sessions;
  const rows = (session?.rows ?? []).map(({ characteristic, position, half, judgement, routes }) => {
    const at = position.coordinates.map(drawnName).join(' ');
    const distance = judgement.past && `${judgement.past.side} ${judgement.past.by.n}/${judgement.past.by.d}`;
    return `${characteristic.id} ${at} ${half ?? ''}: ${judgement.verdict} ${distance ?? ''} ${routes.length}`;
  });
  // Which of several stands apart depends on which are of one size, and one block is reported before another.
  const found = (session?.findings ?? [])
    .filter(({ code }) => code !== 'reading/spread')
    .map(({ code, measure, at }) => `${code} ${measure} ${at?.coordinates.map(drawnName).join(' ') ?? ''}`);
  return [...rows, ...found].sort();
}

const saidPlainly = oncePerTexts((files) => said(files));

/** What the session says, and what it says of the same engine written in another way. */
function holds(
  name: string,
  another: (engine: RandomEngine, seed: number) => readonly [Files, ((written: string) => string)?],
  isMeant: (line: string) => boolean = () => true,
): void {
  it(name, () => {
    const seen = new Set<string>();
    const rodsOnAPin = new Set<number>();
    fc.assert(
      fc.property(randomEngine, fc.integer({ min: 1, max: 2 ** 31 }), (engine, seed) => {
        const plain = saidPlainly(engineFiles(engine));
        for (const line of plain) seen.add(/: (\w+)/.exec(line)?.[1] ?? '');
        rodsOnAPin.add(engine.drawn.cylinders.length / engine.drawn.pins.size);
        expect(said(...another(engine, seed)).filter(isMeant)).toEqual(plain.filter(isMeant));
      }),
      runs(150, 9),
    );
    for (const verdict of ['ok', 'out', 'worn']) expect(seen).toContain(verdict);
    expect([...rodsOnAPin].sort()).toEqual([1, 2, 3]);
  }, 120_000);
}

/** Whether a reading looks like a slip of the pen goes by its digits, which are others in another size. */
const isVerdict = (line: string): boolean => line.includes(': ');

const ONES = 'abcdefghijkl';

/** Another name for each, and the way back. */
const other: Naming = (axis, name) =>
  `${axis.slice(0, 3)}${[...name].map((each) => ONES[Number(each)] ?? each).join('')}`;

describe('an engine of any layout gets the same verdicts', () => {
  holds('when its positions have other names', ({ drawn, ...rest }) => {
    const engine = { drawn, ...rest };
    const names = new Map<string, string>();
    const naming: Naming = (axis, name) => {
      const written = other(axis, name);
      names.set(written, name);
      return written;
    };
    const files = engineFiles(engine, { name: naming, key: naming });
    return [files, (written) => names.get(written) ?? written];
  });

  holds('when its readings go by labels', (engine) => {
    const { pins, cylinders } = engine.drawn;
    const label: Naming = (axis, name) =>
      axis === 'main' || axis === 'cylinder' || axis === 'crankpin' ? `${axis} called ${name}th` : name;
    const labels = (axis: 'main' | 'crankpin' | 'cylinder', names: readonly string[]): string =>
      `  ${axis}: { ${names.map((name) => `${name}: ${label(axis, name)}`).join(', ')} }\n`;
    const mains = Array.from({ length: pins.size + 1 }, (_, index) => String(index + 1));
    const all = `labels:\n${labels('main', mains)}${labels('crankpin', [...pins.keys()])}${labels('cylinder', cylinders)}`;
    return [engineFiles(engine, { key: label, labels: all })];
  });

  holds('when the blocks of its session stand in another order', (engine, seed) => {
    const rank = (index: number): number => Math.imul(index + seed, 2_654_435_761) >>> 0;
    return [
      engineFiles(engine, {
        order: (blocks) =>
          blocks
            .map((block, index) => ({ block, at: rank(index) }))
            .sort((a, b) => a.at - b.at)
            .map(({ block }) => block),
      }),
    ];
  });

  holds(
    'when its journals were ground and its cylinders bored, each to a size of its own',
    (engine, seed) => {
      const steps = [0, 100, 200, 300];
      const made = (axis: string, name: string): number =>
        steps[(Math.imul(seed, 31) + axis.length + Number.parseInt(name, 10)) & 3] ?? 0;
      return [engineFiles(engine, { made })];
    },
    isVerdict,
  );
});
