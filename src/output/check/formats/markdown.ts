import { revisionMarkdown, shortCommit } from '../../diff/revision.ts';
import { together } from '../../escape/language.ts';
import { codeBlock, type Markdown, markdownList, md, writtenMarkdown } from '../../escape/markdown.ts';
import { codeFrame } from '../../terminal/codeFrame.ts';
import { engineBlocks, findingsBlocks } from '../checkMarkdown.ts';
import { CAUTION, faultyText, GONE, goneTexts, totalsText } from '../runText.ts';
import { findingsView } from '../view/findingsView.ts';
import { AnswersFirst, type ReadPart } from './answersFirst.ts';
import type { CheckFormat } from './format.ts';

/** For a pull request, a summary of a job or a wiki. */
export const markdown: CheckFormat<ReadPart> = {
  waits: true,
  part: ({ view }) => ({
    text: written(engineBlocks(view)),
    answer: view.answer && {
      text: written([markdownList([md`**${view.name}**: ${view.answer.text}`])]),
      weight: view.answer.weight,
    },
  }),
  writer({ style, at, since, staged }, write) {
    const blocks = new AnswersFirst(write);
    const put = (each: readonly Markdown[]): void => blocks.block(written(each));
    if (at !== undefined) put([revisionMarkdown(at)]);
    if (staged) put([md`As it is staged for the next commit; only engines for which something is.`]);
    else if (since !== undefined)
      put([md`Only engines that changed since ${since.name}, commit ${shortCommit(since)}.`]);
    return {
      diagnostics(list, texts) {
        for (const { code, message, help, place } of list) {
          const where = `${place.path}:${place.line}:${place.column}`;
          const text = texts.get(place.path);
          const frame = text === undefined ? [] : codeFrame(text, place, { width: FRAME_WIDTH });
          put([
            md`**error** ${code}: ${message}  \n${where}`,
            ...(frame.length === 0 ? [] : [codeBlock(frame)]),
            ...(help === undefined ? [] : [md`${help}`]),
          ]);
        }
      },
      engine: (part) => blocks.engine(part),
      findings: (list) => put(findingsBlocks(findingsView(list, style.detail))),
      notJudged: (folder, faulty) => put([md`**${folder}: not judged**: ${faultyText(faulty)}`]),
      end(totals) {
        blocks.end();
        const gone = goneTexts(totals);
        if (gone.length > 0) put([md`**${GONE}**`, markdownList(gone)]);
        put([md`**${totalsText(totals)}**`, md`${CAUTION}`]);
      },
    };
  },
};

const written = (blocks: readonly Markdown[]) => (blocks.length === 0 ? together() : writtenMarkdown(blocks));

const FRAME_WIDTH = 100;
