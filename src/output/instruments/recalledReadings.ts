import type { RecalledEngine, Rejudged } from '../../compare/instruments/recall.ts';
import type { Taken } from '../../compare/instruments/taken.ts';
import { shortName } from '../../layout/naming.ts';
import type { Position } from '../../layout/position.ts';
import type { Section } from '../plan/page.ts';

/** Every reading that was taken with it, a table for each engine. */
export const listSections = (recalled: readonly RecalledEngine[]): readonly Section[] =>
  recalled
    .filter(({ taken }) => taken.length > 0)
    .map(({ engine, taken }) => ({
      title: engine.document.name,
      table: {
        columns: [
          { heading: 'session', key: 'session' },
          { heading: 'read', key: 'read' },
          { heading: 'at', key: 'at' },
          { heading: 'how', key: 'how' },
        ],
        rows: taken.map((each) => takenRow(each)),
      },
    }));

const takenRow = ({ session, block, positions, gaugeSetWithIt }: Taken): readonly string[] => [
  `${session.stage} ${block.date ?? session.date}`,
  block.measure.label ?? block.measure.id,
  positionsText(positions.map(({ position }) => position)),
  gaugeSetWithIt === undefined ? 'with it' : `${gaugeSetWithIt}, set with it`,
];

/** What carries the error and keeps its verdict, and what does not even move. */
export const quietSections = (recalled: readonly RecalledEngine[]): readonly Section[] => [
  ...quietSection('Moves, and keeps its verdict', recalled, ({ moved }) => moved),
  ...quietSection('Does not move: the error cancels in it', recalled, ({ unmoved }) => unmoved),
];

function quietSection(
  title: string,
  recalled: readonly RecalledEngine[],
  of: (each: RecalledEngine) => readonly Rejudged[],
): readonly Section[] {
  const lines = recalled.flatMap((each) =>
    of(each).length === 0 ? [] : [`${each.engine.document.name}: ${byMeasure(of(each)).join('; ')}`],
  );
  return lines.length === 0 ? [] : [{ title, lines }];
}

function byMeasure(some: readonly Rejudged[]): readonly string[] {
  const positions = new Map<string, Position[]>();
  for (const { before } of some) {
    const { label } = before.characteristic;
    positions.set(label, [...(positions.get(label) ?? []), before.position]);
  }
  return [...positions].map(([label, at]) => `${label} ${positionsText(at)}`.trim());
}

const positionsText = (positions: readonly Position[]): string =>
  [...new Set(positions.map(shortName))].filter(Boolean).join(', ');

/** What was tightened with it is no reading: nobody can take the error out of a bolt. */
export function tightenedSection(recalled: readonly RecalledEngine[]): readonly Section[] {
  const lines = recalled.flatMap(({ engine, tightened }) =>
    tightened.map(
      ({ session, log }) =>
        `${engine.document.name}: ${log.document.joint.sequence.joint}, ${session.stage} ${log.date ?? session.date}`,
    ),
  );
  return lines.length === 0
    ? []
    : [{ title: 'Tightened with it, and not judged again: tighten anew with a good one', lines }];
}
