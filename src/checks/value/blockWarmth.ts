import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { Amount } from '../../documents/amount.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { ReadingBlock } from '../../documents/session/reading.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { expansionOf, GAUGE_STEEL } from '../../measurement/expansion.ts';
import type { Instrument } from '../../measurement/instrument.ts';
import { expandUnlike, type Warmth } from '../../measurement/temperature.ts';

/** A block's temperature and materials, with the temperature as a person wrote it. */
export interface BlockWarmth extends Warmth {
  /** `86 degF`. */
  readonly written: string;
}

/**
 * At what temperature a block was read, and what expands. Undefined unless the block or its session states
 * the temperature, the engine the material of the part, and both materials are known ones. Of a gauge that
 * was set with another, the other's scale is what carries the length.
 */
export function blockWarmth(
  characteristic: Characteristic,
  block: ReadingBlock,
  session: SessionDocument,
  gauge: Instrument,
  { document }: Engine,
  registry: Registry,
): BlockWarmth | undefined {
  const temperature = block.temperature ?? session.temperature;
  const key = materialOf(characteristic, registry).find((each) => document.expansions.has(each));
  const part = key === undefined ? undefined : document.expansions.get(key);
  const scale = gauge.material === undefined ? GAUGE_STEEL : expansionOf(gauge.material);
  if (temperature === undefined || part === undefined || scale === undefined) return undefined;
  const where = block.temperature === undefined ? '' : `, reading ${block.index + 1}`;
  return {
    temperature: temperature.amount,
    written: writtenWithUnit(temperature),
    id: `temperature of ${session.name}${where}`,
    part: { ...part, id: `the ${key}, ${part.material}` },
    gauge: { ...scale, id: `${gauge.id}, ${scale.material}` },
  };
}

/** A difference of two parts does not expand as one does. */
function materialOf(
  { figure, of, expandsWith = of }: Characteristic,
  { parts }: Registry,
): readonly string[] {
  const part = figure === 'size' && expandsWith !== undefined ? parts.find(expandsWith) : undefined;
  return part?.material ?? [];
}

const writtenWithUnit = ({ written, unit }: Amount): string =>
  /[a-z]/i.test(written) ? written : `${written} ${unit.name}`;

/** Beside a reading that was moved: it is not the number that stands in the file. */
export const warmthNote = (warmth: BlockWarmth | undefined): readonly string[] =>
  warmth !== undefined && expandUnlike(warmth) ? [`read at ${warmth.written}, taken to 20 degC`] : [];
