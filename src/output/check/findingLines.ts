import type { Finding } from '../../checks/finding.ts';
import { plural } from '../../quantity/words.ts';
import { type Line, line } from '../escape/line.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { wrap } from '../terminal/wrap.ts';

/** Findings with their places. Remarks are counted alone, unless all is asked for. */
export const findingsLines = (findings: readonly Finding[], style: TextStyle): readonly Line[] => [
  ...shownFindingLines(findings, style),
  ...foldedRemarksLines(findings, style),
];

export const shownFindingLines = (findings: readonly Finding[], style: TextStyle): readonly Line[] =>
  gathered(findings.filter((each) => isShown(each, style))).flatMap((each) => findingLines(each, style));

export function foldedRemarksLines(findings: readonly Finding[], style: TextStyle): readonly Line[] {
  if (findings.every((each) => isShown(each, style))) return [];
  return wrap(`${remarksText(findings)}: --detail lists them`, style.width).map(style.paint.faint);
}

const isShown = ({ severity }: Finding, { detail }: TextStyle): boolean => detail || severity !== 'remark';

/** Positions of one characteristic that are missing are told together: a row of like lines is not read. */
function gathered(findings: readonly Finding[]): readonly Finding[] {
  const isMissing = ({ code, position }: Finding): boolean =>
    code === 'reading/missing' && position !== undefined;
  const others = (of: Finding): readonly Finding[] =>
    findings.filter((each) => isMissing(each) && each.measure === of.measure && each.place === of.place);
  return findings.flatMap((each) => {
    const [first, ...rest] = isMissing(each) ? others(each) : [each];
    if (first !== each) return [];
    const also = rest.length === 0 ? '' : `; likewise ${rest.map(({ position }) => position).join(', ')}`;
    return [{ ...each, message: `${each.message}${also}` }];
  });
}

/** What it is and where it stands, with the place of the limit it speaks of. */
function findingLines(finding: Finding, { paint, width }: TextStyle): readonly Line[] {
  const colour = { error: paint.bad, warning: paint.notice, remark: paint.faint }[finding.severity];
  const [first = '', ...rest] = wrap(finding.message, width - INDENT);
  const { place, limitPlace } = finding;
  const limit =
    limitPlace === undefined ? '' : `  limit ${limitPlace.path}:${limitPlace.line}:${limitPlace.column}`;
  const where = `${place.path}:${place.line}:${place.column}  ${finding.code}${limit}`;
  return [
    line`  ${colour(finding.severity.padEnd(INDENT - 4))}  ${first}`,
    ...[...rest, ...wrap(where, width - INDENT).map(paint.faint)].map(
      (each) => line`${' '.repeat(INDENT)}${each}`,
    ),
  ];
}

/** Two spaces, the longest severity, two spaces. */
const INDENT = 11;

/** `1 error, 3 warnings`. */
export function severitiesText(findings: readonly Finding[]): string {
  const count = (severity: Finding['severity']): string => {
    const n = findings.filter((each) => each.severity === severity).length;
    return n === 0 ? '' : plural(n, severity);
  };
  return [count('error'), count('warning')].filter(Boolean).join(', ');
}

function remarksText(findings: readonly Finding[]): string {
  const remarks = findings.filter((each) => each.severity === 'remark');
  const codes = [...new Set(remarks.map((each) => each.code))];
  const counted = codes.map((code) => `${remarks.filter((each) => each.code === code).length} ${code}`);
  return `${plural(remarks.length, 'remark')} (${counted.join(', ')})`;
}
