import type { Row } from '../../checks/judge/row.ts';
import type { ThicknessList } from '../../documents/stock/stock.ts';
import type { Position } from '../../layout/position.ts';
import { type Fraction, toNumber } from '../../quantity/fraction.ts';
import type { ThicknessFit } from '../fit/thickness/thicknessFits.ts';
import { workBefore } from '../fit/thickness/workBefore.ts';
import type { PlanContext } from '../work/context.ts';
import type { Job } from '../work/job.ts';

/** What sets some places right alike: a shim under each liner, or another lash bucket. */
export interface NeededThickness {
  readonly list: ThicknessList;
  readonly positions: readonly Position[];
  readonly answer: ThicknessAnswer;
}

export type ThicknessAnswer =
  /** It is on the shelf. */
  | { readonly kind: 'take'; readonly code: string; readonly thickness: Fraction }
  /** It is not, and brings the place to the middle; where limits state one side alone, at least inside. */
  | { readonly kind: 'get' | 'get at least'; readonly thickness: Fraction }
  /** The liner stands too high, and a shim would lift it. */
  | { readonly kind: 'none lowers it' }
  /** What it was read with goes. */
  | { readonly kind: 'read again'; readonly after: Job };

/** For the places that a job of adjusting asks about. */
export function thicknessesFor(
  { operation, rows }: Job,
  jobs: readonly Job[],
  fits: readonly ThicknessFit[],
  context: PlanContext,
): readonly NeededThickness[] {
  const needed: NeededThickness[] = [];
  for (const row of operation === 'adjust' ? rows : []) {
    const fit = fits.find(({ of }) => of === row.characteristic);
    const list = fit?.list ?? (row.characteristic.id === SHIMMED ? 'liner_shims' : undefined);
    const answer = list && answerFor(row, list, { fit, after: workBefore(row, jobs, context) });
    if (list === undefined || answer === undefined) continue;
    const at = needed.findIndex((each) => each.list === list && isSame(each.answer, answer));
    const positions = [...(needed[at]?.positions ?? []), row.position];
    needed.splice(at < 0 ? needed.length : at, 1, { list, positions, answer });
  }
  return needed;
}

const SHIMMED = 'liner_protrusion';

function answerFor(
  { position, judgement: { past } }: Row,
  list: ThicknessList,
  { fit, after }: { readonly fit: ThicknessFit | undefined; readonly after: Job | undefined },
): ThicknessAnswer | undefined {
  if (after !== undefined) return { kind: 'read again', after };
  const place = fit?.places.find((each) => each.position === position);
  if (place?.code !== undefined && place.thickness !== undefined)
    return { kind: 'take', code: place.code, thickness: place.thickness };
  const isLiner = list === 'liner_shims';
  if (isLiner && past?.side === 'max') return { kind: 'none lowers it' };
  if (place !== undefined) return { kind: 'get', thickness: place.ideal };
  return isLiner && past !== undefined ? { kind: 'get at least', thickness: past.by } : undefined;
}

const isSame = (a: ThicknessAnswer, b: ThicknessAnswer): boolean => keyOf(a) === keyOf(b);

function keyOf(answer: ThicknessAnswer): string {
  switch (answer.kind) {
    case 'take':
      return `take ${answer.code}`;
    case 'get':
    case 'get at least':
      return `${answer.kind} ${toNumber(answer.thickness)}`;
    case 'none lowers it':
      return answer.kind;
    case 'read again':
      return `read again after ${answer.after.name}`;
  }
}
