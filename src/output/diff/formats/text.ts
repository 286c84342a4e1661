import { withGaps, writtenLines } from '../../escape/line.ts';
import type { Writer } from '../../formats.ts';
import { notComparedText, sidesText } from '../comparison.ts';
import { diffLines } from '../diffText.ts';
import type { ShownDiff } from './shownDiff.ts';

export const text: Writer<ShownDiff> = (shown, { style }) => {
  const { sides, engines, notCompared } = shown;
  if (engines.length + notCompared.length === 0)
    return writtenLines([`${sidesText(sides)}: nothing changed`]);
  return writtenLines(
    withGaps([
      ...engines.map((each) => diffLines(each, sides, shown, style)),
      ...notCompared.map((each) => [style.paint.bad(notComparedText(each))]),
    ]),
  );
};
