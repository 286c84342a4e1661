import type { Printing } from '../../checks/findings/readings.ts';
import type { Row } from '../../checks/judge/row.ts';
import { type VerdictRisk, verdictRisk } from '../../checks/risk/verdictRisk.ts';
import type { Risks, UsualParts } from '../../measurement/risk.ts';
import type { FinerInstruments } from '../../plan/work/instruments.ts';
import { formatUncertainty } from '../../quantity/format.ts';
import { toNumber } from '../../quantity/fraction.ts';
import type { Line } from '../escape/line.ts';
import { cell, layTable } from '../terminal/table.ts';

/** What an uncertain verdict may cost, and what a finer instrument would change; nothing where there is no doubt. */
export function riskLines(row: Row, finer: readonly FinerInstruments[], printing: Printing): readonly Line[] {
  const risk = verdictRisk(row);
  const { verdict, marginal } = row.judgement;
  const { usual } = row.limits.inForce;
  if (risk === undefined || !(verdict === 'undecided' || marginal || usual !== undefined)) return [];
  return [
    `  by this reading alone: ${wrongText(risk.inside)}`,
    ...(usual === undefined ? [] : usualLines(usual, risk, printing)),
    ...finer.map((each) => finerText(each, row, printing)),
    ...(finer.length === 0 && verdict === 'undecided' ? ['  the register has nothing finer for it'] : []),
    ...shareLines(row, risk, finer),
  ];
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

const wrongText = (inside: number): string =>
  `accepting it is wrong with ${percent(1 - inside)}, rejecting it with ${percent(inside)}`;

function usualLines(
  { mean, deviation }: UsualParts,
  risk: VerdictRisk,
  { unit, decimals }: Printing,
): readonly string[] {
  const factor = toNumber(unit.factor);
  const usual = `${(mean / factor).toFixed(decimals)} with a deviation of ${formatUncertainty(deviation, unit)}`;
  const inside = risk.insideAsUsual ?? risk.inside;
  return [`  such parts being ${usual}: ${wrongText(inside)}`];
}

/** Over all such parts, as they are measured and as a finer instrument would measure them. */
function shareLines(row: Row, risk: VerdictRisk, finer: readonly FinerInstruments[]): readonly Line[] {
  const ways = [
    ['measured as here', risk] as const,
    ...finer.map((each) => [`with ${each.instruments.join(', ')}`, verdictRisk(row, each.u)] as const),
  ];
  const rows = ways.flatMap(([name, { simple, guarded } = NOTHING]) =>
    simple === undefined || guarded === undefined
      ? []
      : [[name, ...sharesOf(simple), ...sharesOf(guarded)].map(cell)],
  );
  if (rows.length === 0) return [];
  const head = [
    'of all such parts',
    'simple: bad accepted',
    'good rejected',
    'guarded: bad accepted',
    'good rejected or undecided',
  ].map(cell);
  return layTable(
    [head, ...rows],
    head.map((_, index) => ({ align: index === 0 ? 'left' : 'right' })),
  );
}

const NOTHING: Partial<VerdictRisk> = {};

const sharesOf = ({ badAccepted, goodRejected }: Risks): readonly string[] => [
  percent(badAccepted),
  percent(goodRejected),
];

function finerText(
  { instruments, u, expanded, decides }: FinerInstruments,
  row: Row,
  { unit }: Printing,
): string {
  const risk = verdictRisk(row, u);
  const inside = risk === undefined ? '' : `, ${percent(risk.inside)} likely inside`;
  const verdict = decides ? 'decided' : 'still undecided';
  return `  with ${instruments.join(', ')}, ±${formatUncertainty(expanded, unit)}: ${verdict} if it reads the same${inside}`;
}
