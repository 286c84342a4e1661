import { pointsOf } from '../../../documents/session/reading.ts';
import { namedAt } from '../../../layout/naming.ts';
import type { Position } from '../../../layout/position.ts';
import { median } from '../../../measurement/sample.ts';
import { toNumber } from '../../../quantity/fraction.ts';
import { unitNamed } from '../../../quantity/units.ts';
import { type Finding, finding } from '../../finding.ts';
import { placeOfPoint, type ReadingPoint, readingPointsOf } from '../../value/readingPoints.ts';
import { IMPLAUSIBLE } from '../implausible.ts';
import type { SlipContext } from '../slipContext.ts';

/** 16.387: no two chambers of an engine differ by a tenth of that. */
const CUBIC = toNumber(unitNamed('in3').factor) / toNumber(unitNamed('cc').factor);

/** How far volumes of one kind lie apart in one engine, at most, as a share. */
const ALIKE = 0.2;

const FEWEST_LIKE = 2;

/** A volume that is in cubic inches among its like in cubic centimetres, or the other way round. */
export function otherVolumeFindings({ view: { session, registry } }: SlipContext): readonly Finding[] {
  const volumes = readingPointsOf(session).filter(
    ({ block, point }) =>
      registry.find(block.measure.id)?.quantity === 'volume' && point.settled === undefined,
  );
  return volumes.flatMap((each) => {
    const like = volumes
      .filter(({ block, reading }) => block.measure === each.block.measure && reading !== each.reading)
      .map(({ reading }) => median(pointsOf(reading).map(({ amount }) => toNumber(amount))));
    const words = like.length < FEWEST_LIKE ? undefined : otherUnit(each, median(like));
    if (words === undefined) return [];
    const { position } = each.reading;
    return [reported(each, position, words, registry.find(each.block.measure.id)?.label ?? '', session)];
  });
}

function reported(
  point: ReadingPoint,
  position: Position,
  words: string,
  label: string,
  session: SlipContext['view']['session'],
): Finding {
  const measure = point.block.measure.id;
  const message = `${namedAt(label, position)}: written ${point.point.written}: ${words}?`;
  const covers = [{ measure, at: position }];
  return finding(IMPLAUSIBLE, placeOfPoint(session, point), message, { measure, position, covers });
}

function otherUnit({ point }: ReadingPoint, like: number): string | undefined {
  const amount = toNumber(point.amount);
  const isLike = (each: number): boolean => Math.abs(each / like - 1) < ALIKE;
  if (isLike(amount * CUBIC)) return 'cubic inches written as cubic centimetres';
  return isLike(amount / CUBIC) ? 'cubic centimetres written as cubic inches' : undefined;
}
