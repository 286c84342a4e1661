import type { Characteristic } from '../../../characteristics/characteristic.ts';
import type { Registry } from '../../../characteristics/registry.ts';
import { formatLimit } from '../../../checks/findings/readings.ts';
import { leastOf } from '../../../checks/grades/cutDown.ts';
import { limitsOfFitted } from '../../../checks/grades/madeSize.ts';
import { limitsAt } from '../../../checks/judge/limits.ts';
import { unitOf } from '../../../checks/judge/session.ts';
import type { Bands, SidedLimits } from '../../../checks/judge/sideLimit.ts';
import type { Engine } from '../../../documents/assemble.ts';
import type { Part } from '../../../layout/part.ts';
import { carriedPart } from '../../../plan/handover/carriedPart.ts';
import { FIGURES_OF_A_PART } from '../../../plan/work/context.ts';
import type { Job } from '../../../plan/work/job.ts';
import { placesOf } from '../../../plan/work/jobTitle.ts';
import type { Unit } from '../../../quantity/units.ts';

/** What the limits of new parts ask of it beside the size of a cut: what the finished engine is held to is not the machine shop's. */
export function heldFigures(job: Job, engine: Engine, registry: Registry): readonly string[] {
  const texts = figuresHeld(job, registry).flatMap((each) => {
    const unit = unitOf(each.quantity, engine);
    const bands = bandsFor(each, job, engine);
    const limits = sidesText(heldBand(each, bands), unit);
    return limits === undefined ? [] : [`${each.label} ${limits} ${unit.name}`.trim()];
  });
  return texts.length === 0 ? [] : [`hold ${texts.join('; ')}`];
}

/** Whether limits state how far what is surfaced may be cut. */
export const isLeastStated = (job: Job, engine: Engine, registry: Registry): boolean =>
  registry.all.some(
    (each) => each.of === job.part?.id && leastOf(each, bandsFor(each, job, engine)) !== undefined,
  );

function bandsFor(characteristic: Characteristic, job: Job, engine: Engine): Bands {
  const [position] = [...placesOf(job, engine.document.layout), ...job.rows.map((row) => row.position)];
  const stated = limitsOfFitted(engine, engine.sessions.at(-1), characteristic, position);
  return limitsAt(characteristic, stated, nothing, nothing).bands;
}

/** A head that is surfaced is thinner than any new one. */
const heldBand = (characteristic: Characteristic, bands: Bands): SidedLimits =>
  characteristic.isCutDown === true
    ? { min: leastOf(characteristic, bands), max: undefined }
    : { min: bands.new?.min, max: bands.new?.max };

/** Its form where it is cut to a size; else what is out, and all that is measured of the part. */
function figuresHeld({ part, cut, rows }: Job, registry: Registry): readonly Characteristic[] {
  const ofPart = registry.all.filter(
    ({ of, figure }) => part !== undefined && of === part.id && FIGURES_OF_A_PART.includes(figure),
  );
  if (cut !== undefined)
    return ofPart.filter(
      (each) => each.dimension === undefined && isOfWhatIsCarried(each, cut.part, registry),
    );
  const asking = rows.map(({ characteristic }) => characteristic);
  return asking.length === 0 ? [] : [...new Set([...asking, ...ofPart])];
}

/** A machine shop without the rod and the piston cannot measure how far the piston travels. */
function isOfWhatIsCarried({ dependsOn }: Characteristic, part: Part, { parts }: Registry): boolean {
  const carried = carriedPart({ part }, parts) ?? part;
  return dependsOn.every((id) => parts.within(carried).some((each) => each.id === id));
}

/** `74.000 to 74.019`: both sides with the decimals of the finer. */
function sidesText({ min, max }: SidedLimits, unit: Unit): string | undefined {
  const sides = [min, max].flatMap((side) => (side === undefined ? [] : [side.amount]));
  const finest = Math.max(0, ...sides.map((each) => decimalsOf(formatLimit(each, unit, 0))));
  const texts = sides.map((each) => formatLimit(each, unit, finest));
  if (texts.length !== 1) return texts.length === 0 ? undefined : texts.join(' to ');
  return `${min === undefined ? 'at most' : 'at least'} ${texts[0]}`;
}

const decimalsOf = (text: string): number => text.split('.')[1]?.length ?? 0;

const nothing = (): undefined => undefined;
