import { revisionText, sinceText, stagedText } from '../../diff/revision.ts';
import { type Line, writtenLines } from '../../escape/line.ts';
import { wrap } from '../../terminal/wrap.ts';
import { answerLines, engineLines } from '../checkText.ts';
import { findingsLines } from '../findingLines.ts';
import { diagnosticsLines, GONE, goneTexts, notJudgedLines, summaryLines } from '../runText.ts';
import { findingsView } from '../view/findingsView.ts';
import { AnswersFirst, type ReadPart } from './answersFirst.ts';
import type { CheckFormat } from './format.ts';

export const text: CheckFormat<ReadPart> = {
  waits: true,
  isQuietIfWell: true,
  part: ({ view }, { style }) => ({
    text: writtenLines(engineLines(view, style)),
    answer: view.answer && {
      text: writtenLines(answerLines(view.name, view.answer.text, style)),
      weight: view.answer.weight,
    },
  }),
  writer({ style, at, since, staged }, write) {
    const blocks = new AnswersFirst(write);
    const lines = (each: readonly Line[]): void => blocks.block(writtenLines(each));
    if (at !== undefined) lines([revisionText(at, style)]);
    if (staged) lines([stagedText(style)]);
    else if (since !== undefined) lines([sinceText(since, style)]);
    return {
      diagnostics: (list, texts) => lines(diagnosticsLines(list, texts, style)),
      engine: (part) => blocks.engine(part),
      findings: (list) => lines(findingsLines(findingsView(list, style.detail), style)),
      notJudged: (folder, faulty) => lines(notJudgedLines(folder, faulty, style)),
      end(totals) {
        blocks.end();
        const gone = goneTexts(totals).flatMap((each) => wrap(`  ${each}`, style.width));
        if (gone.length > 0) lines([GONE, ...gone]);
        lines(summaryLines(totals, style));
      },
    };
  },
};
