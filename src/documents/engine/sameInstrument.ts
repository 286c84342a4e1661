import { type Diagnostic, diagnostic } from '../../diagnostic/diagnostic.ts';
import type { RegisteredInstrument } from './instruments.ts';

/** Two registers of one folder that hold an instrument of one name: neither can be said to win. */
export function sameInstruments(
  registers: readonly ReadonlyMap<string, RegisteredInstrument>[],
  folderOf: (path: string) => string,
): readonly Diagnostic[] {
  const first = new Map<string, RegisteredInstrument>();
  return registers.flatMap((register) =>
    [...register].flatMap(([name, instrument]) => {
      const { place } = instrument;
      const key = `${folderOf(place.path)}: ${name}`;
      const other = first.get(key);
      first.set(key, other ?? instrument);
      if (other === undefined) return [];
      const message = `${other.place.path} registers ${name} as well, in the same folder`;
      const help = 'keep one of the two, or give each a name of its own';
      return [diagnostic('limits-conflict', place, message, help)];
    }),
  );
}
