import { type GeneratedEngine, isGap, type Readings } from './engine.ts';
import { pick, type Random } from './random.ts';

export const BLOCK_KINDS = ['setting', 'radii', 'exchanged', 'above new', 'strip scale'] as const;
export type BlockKind = (typeof BLOCK_KINDS)[number];

export interface MadeBlockSlip {
  readonly kind: BlockKind;
  readonly words: RegExp;
}

const each = (of: Readings, change: (text: string) => string): void => {
  for (const points of of.written) for (const [index, text] of points.entries()) points[index] = change(text);
};

/** Changes a whole list as one cause does; undefined where the engine has no such list. */
export function makeBlockSlip(
  next: Random,
  { system }: GeneratedEngine,
  readings: readonly Readings[],
): MadeBlockSlip | undefined {
  const kind = pick(next, BLOCK_KINDS);
  const sizes = readings.filter(({ part }) => !isGap(part));
  const one = pick(next, sizes);
  const find = (id: string) => readings.find(({ part }) => part.id === id);
  switch (kind) {
    case 'setting': {
      const step = (next() < 0.5 ? 1 : -1) * system.turn;
      each(one, (text) => (Number(text) + step).toFixed(system.places));
      return { kind, words: /the same amount everywhere|another service size/ };
    }
    case 'radii':
      each(one, (text) => (Number(text) / 2).toFixed(system.places));
      return { kind, words: /a radius for a diameter/ };
    case 'exchanged': {
      const pair = [find('rod_bearing_bore'), find('crankpin_diameter')];
      const [outer, inner] = pair;
      if (outer === undefined || inner === undefined || outer.shift !== inner.shift) return undefined;
      const kept = outer.written.map((points) => [...points]);
      outer.written.splice(0, kept.length, ...inner.written.map((points) => [...points]));
      inner.written.splice(0, kept.length, ...kept);
      return { kind, words: /exchanged\?/ };
    }
    case 'above new': {
      const journals = find('main_journal_diameter');
      if (journals === undefined || journals.shift !== 0) return undefined;
      const above = journals.part.max + 0.0006 * system.perInch;
      each(journals, () => (above + 0.0004 * system.perInch * next()).toFixed(system.places));
      return { kind, words: /larger than new/ };
    }
    case 'strip scale': {
      const strips = readings.find(({ part }) => part.gauge === 'strip');
      if (strips === undefined) return undefined;
      const perUnit = system.unit === 'in' ? 25.4 : 1 / 25.4;
      each(strips, (text) => (Number(text) * perUnit).toFixed(system.unit === 'in' ? 3 : 4));
      return { kind, words: /the strip's/ };
    }
  }
}
