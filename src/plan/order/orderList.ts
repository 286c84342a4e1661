import type { Grade } from '../../documents/grades/grade.ts';
import { gradeText, sameGrade } from '../../documents/grades/grade.ts';
import { plainName } from '../../documents/planning/handedOver.ts';
import type { Stock } from '../../documents/stock/stock.ts';
import type { Part } from '../../layout/part.ts';
import { onShelf } from '../fit/shelf.ts';
import { sendings } from '../handover/agreement.ts';
import type { PlanContext } from '../work/context.ts';
import type { Job } from '../work/job.ts';

/** One line of what has to be bought. */
export interface OrderLine {
  readonly what: string;
  /** As the stock or its maker calls it, where that is stated. */
  readonly code: string | undefined;
  readonly size: string;
  readonly count: number;
  /** How many of the count are on the shelf. */
  readonly onShelf: number;
  readonly when: 'now' | 'after measuring';
  /** The job that needs it. */
  readonly for: string;
  /** The day on which it is needed, where one is stated. */
  readonly neededBy?: string | undefined;
}

/** From renewals, from the steps that journals and bores are cut to, from joints, and what goes with any of it. */
export function orderList(context: PlanContext, jobs: readonly Job[]): readonly OrderLine[] {
  const real = jobs.filter(({ serves }) => serves === undefined);
  const withCuts = real.flatMap((job) => cutLines(context, job));
  const bought = new Set(withCuts.map(({ what }) => what));
  const others = [...real.flatMap((job) => renewalLines(context, job)), ...chosenLines(context, real)];
  const all = [
    ...withCuts,
    // What comes with a cut is bought once, in its new size.
    ...others.filter(({ what }) => !bought.has(what)),
    ...(real.some(isOpened) ? [...fastenerLines(context), ...SUNDRIES] : []),
  ];
  return [...all].sort((a, b) => WHEN.indexOf(a.when) - WHEN.indexOf(b.when));
}

const WHEN: readonly OrderLine['when'][] = ['now', 'after measuring'];

/** An engine that is measured again, and no more, stays as it is. */
const isOpened = ({ operation }: Job): boolean => operation !== 'measure' && operation !== 'measure again';

/** What is bought for a part that is ground or bored, of the size that it is cut to. */
function cutLines({ engine, registry }: PlanContext, { cut, name }: Job): readonly OrderLine[] {
  if (cut === undefined) return [];
  const mates = registry.parts.all.filter(({ sized }) => sized?.fits === cut.part.id);
  const sent = sendings(engine).find(({ work }) =>
    work.some((each) => plainName(each.name) === plainName(name)),
  );
  return cut.groups.flatMap(({ places, deciding: { choice } }) =>
    choice.kind !== 'step'
      ? []
      : mates.map((mate): OrderLine => {
          const { grade } = choice.step;
          const isShell = mate.sized?.liesIn !== undefined;
          const all = engine.document.layout.positionsOf(mate.family).length;
          const count = cut.groups.length > 1 ? places.length : isRings(mate) ? places.length : all;
          return {
            what: isRings(mate) ? 'ring sets' : isShell ? `${mate.label} pairs` : mate.plural,
            code: codeOf(engine.stock, mate, grade),
            size: gradeText(grade, engine.units.get('length')),
            count,
            onShelf: Math.min(count, shelved(engine, mate, grade)),
            // Bores are finished to pistons in hand; shells are chosen when the journals are ground and measured.
            when: isShell ? 'after measuring' : 'now',
            for: name,
            neededBy: isShell ? sent?.due : sent?.date,
          };
        }),
  );
}

/** Bought for a bore, and made in no size of their own. */
const isRings = ({ sized }: Part): boolean => sized?.fits !== undefined && sized.made === undefined;

function codeOf({ shells, pistons, rings }: Stock, mate: Part, grade: Grade): string | undefined {
  const found =
    mate.sized?.liesIn !== undefined
      ? shells.filter(({ part }) => part === mate)
      : mate.id === 'piston'
        ? pistons
        : isRings(mate)
          ? rings
          : [];
  const codes = [...new Set(found.filter(({ size }) => sameGrade(size, grade)).map(({ code }) => code))];
  if (mate.id === 'piston' || codes.length === 0) return undefined;
  return codes.length > 1 ? 'by plan --fit' : codes[0];
}

function shelved(engine: PlanContext['engine'], mate: Part, grade: Grade): number {
  const { stock } = engine;
  const isOf = ({ size }: { readonly size: Grade }): boolean => sameGrade(size, grade);
  const free = (items: readonly { readonly free: number }[]): number =>
    items.reduce((sum, each) => sum + each.free, 0);
  if (mate.sized?.liesIn !== undefined)
    return Math.floor(
      free(
        onShelf(
          stock.shells.filter((each) => each.part === mate && isOf(each)),
          engine,
        ),
      ) / 2,
    );
  if (mate.id === 'piston') return free(onShelf(stock.pistons.filter(isOf), engine));
  return isRings(mate) ? free(onShelf(stock.rings.filter(isOf), engine)) : 0;
}

/** What was seen to be renewed, and what is out and cannot be cut. */
function renewalLines({ engine }: PlanContext, job: Job): readonly OrderLine[] {
  const { operation, part, rows, found, name, cut } = job;
  const beyond = cut?.groups.filter(({ deciding }) => deciding.choice.kind === 'beyond the last step') ?? [];
  const isRenewed = operation === 'renew' || beyond.length > 0;
  if (!isRenewed && operation !== 'machine or renew') return [];
  const layout = engine.document.layout;
  const places = new Set([
    ...rows.map(({ position }) => position),
    ...found.flatMap(({ parts }) => parts.flatMap(({ positions }) => positions)),
    ...beyond.flatMap(({ places: each }) => each.map(({ position }) => position)),
  ]);
  const all = part === undefined ? 1 : layout.positionsOf(part.family).length;
  const isShell = part?.sized?.liesIn !== undefined;
  const what =
    part === undefined
      ? found.flatMap(({ on }) => on).join(', ')
      : isShell
        ? `${part.label} pairs`
        : places.size > 1
          ? part.plural
          : part.label;
  const count = Math.min(all, Math.max(1, places.size));
  const line: OrderLine = {
    what,
    code: undefined,
    size: 'as fitted',
    count,
    onShelf: 0,
    when: isRenewed ? 'now' : 'after measuring',
    for: name,
  };
  return [line];
}

/** Shells and pistons that are to be chosen anew are bought when the sizes are known. */
const chosenLines = ({ engine }: PlanContext, jobs: readonly Job[]): readonly OrderLine[] =>
  jobs.flatMap((job): readonly OrderLine[] => {
    const { operation, part, name, rows, urgency } = job;
    if (operation !== 'choose' || part === undefined || urgency === 'may') return [];
    const all = engine.document.layout.positionsOf(part.family).length;
    const count = Math.min(all, new Set(rows.map(({ position }) => position)).size);
    const what = part.sized?.liesIn === undefined ? part.plural : `${part.label} pairs`;
    return [
      { what, code: undefined, size: 'by plan --fit', count, onShelf: 0, when: 'after measuring', for: name },
    ];
  });

/** Fasteners that are used once, and those that are turned by an angle unless their maker lets them be used again. */
const fastenerLines = ({ engine }: PlanContext): readonly OrderLine[] =>
  engine.sequences.flatMap(({ joint, name }) => {
    const { sequence } = joint;
    const isTurned = sequence.passes.some(({ action }) => action.kind === 'turn');
    if (joint.reuse !== 'once' && !(isTurned && joint.reuse !== 'allowed')) return [];
    return [
      {
        what: `${sequence.joint}: bolts`,
        code: undefined,
        size: joint.thread?.designation ?? '',
        count: sequence.order.length,
        onShelf: 0,
        when: 'now',
        for: joint.reuse === 'once' ? `${name}: used once` : `${name}: turned by an angle`,
      } as const,
    ];
  });

/** What an opened engine takes whatever was found. Common practice, no source. */
const SUNDRIES: readonly OrderLine[] = ['gasket set', 'shaft seals', 'core plugs', 'gallery plugs'].map(
  (what) => ({
    what,
    code: undefined,
    size: '',
    count: 1,
    onShelf: 0,
    when: 'now',
    for: 'opened engine',
  }),
);
