import type { Finding } from '../../checks/finding.ts';
import type { DatedStay, MarkedPart } from '../../compare/parts/markedParts.ts';
import { plural } from '../../quantity/words.ts';
import type { Page, Section } from '../plan/page.ts';
import { conflictLines } from './conflictLines.ts';
import { hoursText } from './hoursText.ts';

/** Every part of a shop that has a mark. */
export function partsPage(parts: readonly MarkedPart[], conflicts: readonly Finding[]): Page {
  return {
    title: 'Parts by their marks',
    about: [],
    answer: [
      parts.length === 0
        ? 'No document states a mark: write `fitted: { crankshaft: { mark: K4471 } }` in a session.'
        : `${plural(parts.length, 'part')}; tenths part MARK shows all of one`,
    ],
    sections: [...(parts.length === 0 ? [] : [table(parts)]), ...conflictLines(conflicts)],
    cautions: [],
  };
}

const table = (parts: readonly MarkedPart[]): Section => ({
  title: 'Where they are',
  table: {
    columns: [
      { heading: 'part', key: 'part' },
      { heading: 'mark', key: 'mark' },
      { heading: 'engines', key: 'engines', align: 'right' },
      { heading: 'hours', key: 'hours', align: 'right' },
      { heading: 'now', key: 'now' },
    ],
    rows: parts.map((each) => [
      each.name,
      each.mark,
      String(new Set(each.stays.map(({ of }) => of.engine.folder)).size),
      hoursText(each.sittings.findLast(({ hours }) => hours !== undefined)?.hours),
      whereNow(each),
    ]),
  },
});

/** The engine that has it still, else where its document says that it lies. */
export function whereNow({ stays, shelf }: MarkedPart): string {
  const here = stays.filter(({ to }) => to === undefined).map(engineSince);
  if (here.length > 0) return here.join('; ');
  const last = stays.at(-1);
  const left = last === undefined ? '' : `out of ${last.of.engine.document.name} since ${last.to}`;
  return [shelf?.lies ?? '', left].filter(Boolean).join(', ') || 'not said';
}

const engineSince = ({ of, from }: DatedStay): string => `${of.engine.document.name} since ${from}`;
