import { stageCautions } from '../../bench/cautions.ts';
import type { RecordStart } from '../../bench/record/journalText.ts';
import type { Engine } from '../../documents/assemble.ts';
import { cautionLines } from '../../output/bench/recordText.ts';
import type { Written } from '../../output/escape/language.ts';
import { writtenLines } from '../../output/escape/line.ts';
import type { TextStyle } from '../../output/terminal/textStyle.ts';
import { wrap } from '../../output/terminal/wrap.ts';

/** What an entry begins with: which session of which engine, how to leave it, and what may hurt at that stage. */
export const opening = ({ head, points }: RecordStart, { document }: Engine, style: TextStyle): Written =>
  writtenLines([
    ...wrap(`${document.name}  ${head.stage} ${head.date}: ${points.length} readings`, style.width),
    '? for help, finish to end, Ctrl-C to leave and go on later',
    ...stageCautions(head.stage).flatMap((each) => cautionLines(each, style)),
  ]);
