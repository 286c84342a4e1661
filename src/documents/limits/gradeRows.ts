import type { DocumentContext } from '../amount.ts';
import { report } from '../amount.ts';
import { type Grade, parseGrade, sameGrade } from '../grades/grade.ts';
import type { Measure, Measures } from '../measure.ts';
import { entriesOf, textAt } from '../yaml/access.ts';
import type { Entry, Node } from '../yaml/node.ts';
import type { Bands } from './bands.ts';
import { readBands } from './entryBands.ts';

/** The limits of a part that was made under or over standard, as its maker prints them. */
export interface GradeRow {
  readonly grade: Grade;
  readonly bands: Bands;
  readonly source: string | undefined;
}

/** `sizes: { 0.010 under: { new: 3.2375 to 3.2385 } }`. */
export function readGradeRows(
  node: Node | undefined,
  measure: Measure,
  measures: Measures,
  context: DocumentContext,
): readonly GradeRow[] {
  const rows: { readonly row: GradeRow; readonly entry: Entry }[] = [];
  for (const entry of entriesOf(node)) {
    const grade = parseGrade(entry.key, entry.keySpan, context);
    if (grade === undefined) continue;
    const same = rows.find(({ row }) => sameGrade(row.grade, grade));
    if (same !== undefined) {
      const message = `${entry.key} and ${same.entry.key} are one size`;
      report(context, 'duplicate-key', entry.keySpan, message, 'keep one of the two');
    }
    const bands = readBands(entry.node, measure, measures, context);
    rows.push({ row: { grade, bands, source: textAt(entry.node, 'source') }, entry });
  }
  return rows.map(({ row }) => row);
}
