import type { FindingKind } from '../../checks/finding.ts';
import { DOCUMENT_CODES } from '../../diagnostic/catalogue.ts';
import type { DocumentCode } from '../../diagnostic/diagnostic.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { wrap } from '../terminal/wrap.ts';

/** What a kind of finding means, why it matters and what people do about it. */
export const findingKindText = (kind: FindingKind, style: TextStyle): string =>
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

export function documentCodeText(code: DocumentCode, style: TextStyle): string {
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
): string {
  const lines = paragraphs.flatMap((text) => ['', ...wrap(text, Math.min(width, LINE)).map((line) => line)]);
  return [`${paint.strong(code)}  ${severity}`, ...lines, ''].join('\n');
}

/** As wide as a page is read with ease. */
export const LINE = 100;
