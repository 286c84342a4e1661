import type { Registry } from '../characteristics/registry.ts';
import type { Stage } from '../documents/session/stage.ts';

/** What can hurt whoever takes an engine apart, whatever is measured then. Common practice, no source. */
const OPENING: readonly string[] = [
  'Old gaskets may hold asbestos: wet them, never sand or blow them dry. Seals that were burned may leave acid: gloves on.',
];

export const stageCautions = (stage: Stage): readonly string[] => (stage === 'teardown' ? OPENING : []);

/** Tells each caution once, where its work begins: what is said again and again is read by nobody. */
export class Cautions {
  readonly #registry: Registry;
  readonly #reported = new Set<string>();

  constructor(registry: Registry) {
    this.#registry = registry;
  }

  /** Undefined where there is none, or it was told before. */
  of(measure: string): string | undefined {
    const caution = this.#registry.find(measure)?.caution;
    if (caution === undefined || this.#reported.has(caution)) return undefined;
    this.#reported.add(caution);
    return caution;
  }
}
