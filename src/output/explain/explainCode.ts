import type { FindingKind } from '../../checks/finding.ts';
import { DOCUMENT_CODES } from '../../diagnostic/catalogue.ts';
import type { DocumentCode } from '../../diagnostic/diagnostic.ts';
import { type Line, line } from '../escape/line.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { wrap } from '../terminal/wrap.ts';

/** What a kind of finding means, why it matters and what people do about it. */
export const findingKindLines = (kind: FindingKind, style: TextStyle): readonly Line[] =>
  sheet(
    kind.code,
    kind.severity,
    [
      kind.means,
      `Why it matters: ${kind.matters}`,
      `Usually: ${kind.usually}`,
      `For example: ${kind.example}`,
    ],
    style,
  );

export function documentCodeLines(code: DocumentCode, style: TextStyle): readonly Line[] {
  const { means, usually } = DOCUMENT_CODES[code];
  return sheet(
    `document/${code}`,
    'error: the document is not judged',
    [means, `Usually: ${usually}`],
    style,
  );
}

function sheet(
  code: string,
  severity: string,
  paragraphs: readonly string[],
  { paint, width }: TextStyle,
): readonly Line[] {
  const lines = paragraphs.flatMap((text) => ['', ...wrap(text, Math.min(width, LINE))]);
  return [line`${paint.strong(code)}  ${severity}`, ...lines];
}

/** As wide as a page is read with ease. */
export const LINE = 100;
