import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Layout } from '../../layout/layout.ts';
import { positionMeant } from '../../layout/meant.ts';
import { UsageError } from '../usage.ts';

/** A position of a call at which there is no reading: with what may be meant, and where there are any. */
export function notMeasuredAt(
  position: string,
  { id, family }: Pick<Characteristic, 'id' | 'family'>,
  layout: Layout,
  measured: readonly string[],
): UsageError {
  const meant = positionMeant(position, layout, family, measured);
  const where = `it was measured at ${measured.join(', ')}`;
  return new UsageError(
    `${id} was not measured at ${position}`,
    meant === undefined ? where : `${meant} ${where}`,
  );
}

/** Of a figure that no session has: how one comes by it, or where to look for what there is. */
export const howToGet = ({
  id,
  derivations: [shortest],
  onlyWithLimits,
}: Pick<Characteristic, 'id' | 'derivations' | 'onlyWithLimits'>): string =>
  onlyWithLimits === true && shortest !== undefined
    ? `it is worked out where limits name it: write a limit on ${id}, and read ${shortest.inputs.join(', ')}`
    : 'tenths check shows what was measured';
