import type { Finding } from '../../../checks/finding.ts';
import { plural } from '../../../quantity/words.ts';

/** Findings that are shown one by one, and what is said of the others: remarks are counted alone, unless all is asked for. */
export interface FindingsView {
  readonly shown: readonly FindingView[];
  /** Empty where all are shown. */
  readonly folded: string;
}

export type FindingView = Pick<Finding, 'severity' | 'code' | 'message' | 'place' | 'limitPlace' | 'known'>;

export const findingsView = (findings: readonly Finding[], detail: boolean): FindingsView => {
  const shown = findings.filter(({ severity }) => detail || severity !== 'remark');
  const folded = shown.length === findings.length ? '' : `${remarksText(findings)}: --detail lists them`;
  return { shown: gathered(shown).map(viewOf), folded };
};

const viewOf = ({ severity, code, message, place, limitPlace, known }: Finding): FindingView => ({
  ...{ severity, code, message, place, limitPlace },
  ...(known === undefined ? {} : { known }),
});

/** Positions of one characteristic that are missing are told together: a row of like lines is not read. */
function gathered(findings: readonly Finding[]): readonly Finding[] {
  const isMissing = ({ code, position }: Finding): boolean =>
    code === 'reading/missing' && position !== undefined;
  const others = (of: Finding): readonly Finding[] =>
    findings.filter((each) => isMissing(each) && each.measure === of.measure && each.place === of.place);
  return findings.flatMap((each) => {
    const [first, ...rest] = isMissing(each) ? others(each) : [each];
    if (first !== each) return [];
    const also = rest.length === 0 ? '' : `; likewise at ${rest.map(({ position }) => position).join(', ')}`;
    return [{ ...each, message: `${each.message}${also}` }];
  });
}

function remarksText(findings: readonly Finding[]): string {
  const remarks = findings.filter((each) => each.severity === 'remark');
  const codes = [...new Set(remarks.map((each) => each.code))];
  const counted = codes.map((code) => `${remarks.filter((each) => each.code === code).length} ${code}`);
  return `${plural(remarks.length, 'remark')} (${counted.join(', ')})`;
}

/** `1 error, 3 warnings`. */
export function severitiesText(findings: readonly Finding[]): string {
  const count = (severity: Finding['severity']): string => {
    const n = findings.filter((each) => each.severity === severity).length;
    return n === 0 ? '' : plural(n, severity);
  };
  return [count('error'), count('warning')].filter(Boolean).join(', ');
}
