import type { Characteristic } from '../characteristics/characteristic.ts';
import type { Position } from '../layout/position.ts';

/** What is known by characteristic and position: of an engine each is one object, so that no key has to be spelled. */
export class ByReading<T> {
  readonly #known = new Map<Characteristic, Map<Position, T>>();

  get(characteristic: Characteristic, position: Position): T | undefined {
    return this.#known.get(characteristic)?.get(position);
  }

  set(characteristic: Characteristic, position: Position, value: T): T {
    const ofIt = this.#known.get(characteristic) ?? new Map<Position, T>();
    this.#known.set(characteristic, ofIt);
    ofIt.set(position, value);
    return value;
  }
}
