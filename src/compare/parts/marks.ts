import type { Finding } from '../../checks/finding.ts';
import { partConflict } from '../../checks/history/partConflict.ts';
import { compareText, type Place } from '../../diagnostic/place.ts';
import type { Judgeable } from '../state.ts';
import { staysIn } from './stays.ts';

/** In which engine a mark was, and when: plain data, since it may come from another thread. */
export interface MarkedStay {
  readonly name: string;
  readonly mark: string;
  /** What its document calls the engine, and where that lies. */
  readonly engine: string;
  readonly folder: string;
  readonly from: string;
  readonly to: string | undefined;
  readonly place: Place;
}

/** What a part's own document says of an engine that it left. */
export interface CameOut {
  readonly name: string;
  readonly mark: string;
  /** By its name, or its folder. */
  readonly engine: string;
  readonly date: string;
}

/** Of what an engine came with the day of its first session counts. */
export const marksIn = (of: Judgeable): readonly MarkedStay[] =>
  staysIn(of).map(({ name, mark, since, until, place }) => ({
    name,
    mark,
    engine: of.engine.document.name,
    folder: of.engine.folder,
    from: since?.date ?? of.engine.sessions[0]?.date ?? '',
    to: until?.date,
    place,
  }));

export const isCalled = (name: string, { engine, folder }: Pick<MarkedStay, 'engine' | 'folder'>): boolean =>
  engine === name || folder === name || folder.endsWith(`/${name}`);

/** The day on which it came out, by a session or by the part's own document. */
export function endOf(stay: MarkedStay, cameOut: readonly CameOut[]): string | undefined {
  const said = cameOut.filter(
    ({ name, mark, engine, date }) =>
      name === stay.name && mark === stay.mark && date >= stay.from && isCalled(engine, stay),
  );
  return [...said.map(({ date }) => date), ...(stay.to === undefined ? [] : [stay.to])].sort()[0];
}

/** Marks in two engines at once, with both places: what nothing ended goes on. */
export function markConflicts(stays: readonly MarkedStay[], cameOut: readonly CameOut[]): readonly Finding[] {
  const byMark = new Map<string, MarkedStay[]>();
  for (const stay of stays) {
    const key = `${stay.name} ${stay.mark}`;
    byMark.set(key, [...(byMark.get(key) ?? []), { ...stay, to: endOf(stay, cameOut) }]);
  }
  return [...byMark.values()].flatMap((same) => {
    const all = same.sort((a, b) => compareText(a.from, b.from));
    return all.flatMap((later, index) =>
      all
        .slice(0, index)
        .filter((earlier) => isStillThere(earlier, later))
        .map((earlier) => partConflict(later.place, conflictText(earlier, later))),
    );
  });
}

const isStillThere = (earlier: MarkedStay, later: MarkedStay): boolean =>
  earlier.folder !== later.folder && (earlier.to === undefined || earlier.to > later.from);

function conflictText(earlier: MarkedStay, later: MarkedStay): string {
  const { path, line, column } = earlier.place;
  const until = earlier.to === undefined ? '' : ` before ${earlier.to}`;
  return `${later.name} ${later.mark} is fitted in ${later.engine} from ${later.from}, and ${earlier.engine} has it since ${earlier.from} (${path}:${line}:${column}): no document says that it was taken out${until}`;
}
