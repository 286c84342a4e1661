import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import { withUnit } from '../../documents/amount.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { ReadingBlock } from '../../documents/session/reading.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { expansionOf, GAUGE_STEEL } from '../../measurement/expansion.ts';
import type { Instrument } from '../../measurement/instrument.ts';
import { isMoved, type StatedTemperature, type Warmth } from '../../measurement/temperature.ts';

/** What is known of where and with what a block was read. */
export interface BlockSource {
  readonly block: ReadingBlock;
  readonly session: SessionDocument;
  readonly engine: Engine;
  readonly registry: Registry;
}

/**
 * At what temperature a block was read, what expands, and to what temperature it is taken. Undefined unless the block
 * or its session states the temperature, the engine the material of the part, and both materials are known ones. Of a
 * gauge that was set with another, the other's scale is what carries the length.
 */
export function blockWarmth(
  characteristic: Characteristic,
  gauge: Instrument,
  to: StatedTemperature,
  { block, session, engine, registry }: BlockSource,
): Warmth | undefined {
  const temperature = block.temperature ?? session.temperature;
  const part = expandingPart(characteristic, engine, registry);
  const scale = gauge.material === undefined ? GAUGE_STEEL : expansionOf(gauge.material);
  if (temperature === undefined || part === undefined || scale === undefined) return undefined;
  const where = block.temperature === undefined ? '' : `, reading ${block.index + 1}`;
  return {
    from: { amount: temperature.amount, text: withUnit(temperature) },
    to,
    id: `temperature of ${session.name}${where}`,
    part,
    gauge: { ...scale, id: `${gauge.id}, ${scale.material}` },
  };
}

/** Of a size the part that expands with it, by its word in the engine's materials, where it is known by how much. */
export function expandingPart(
  characteristic: Characteristic,
  { document: { expansions } }: Engine,
  registry: Registry,
): (Warmth['part'] & { readonly key: string }) | undefined {
  const key = materialOf(characteristic, registry).find((each) => expansions.has(each));
  const expansion = key === undefined ? undefined : expansions.get(key);
  return key === undefined || expansion === undefined
    ? undefined
    : { ...expansion, key, id: `the ${key}, ${expansion.material}` };
}

/** A difference of two parts does not expand as one does, and no weight or load does. */
function materialOf(
  { figure, quantity, of, expandsWith = of }: Characteristic,
  { parts }: Registry,
): readonly string[] {
  const isExpanding = figure === 'size' && quantity === 'length';
  const part = isExpanding && expandsWith !== undefined ? parts.find(expandsWith) : undefined;
  return part?.material ?? [];
}

/** Beside a reading that was moved: it is not the number that stands in the file. */
export const warmthNote = (warmth: Warmth | undefined): readonly string[] =>
  warmth !== undefined && isMoved(warmth)
    ? [`reading made at ${warmth.from.text}, converted to ${warmth.to.text}`]
    : [];
