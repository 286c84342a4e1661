import { checkReadingList } from '../validation/decimalComma.ts';
import type { MapNode, Node, ScalarNode, Span } from '../yaml/node.ts';
import type { Report } from '../yaml/problem.ts';
import { reportAmbiguous } from '../yaml/readScalar.ts';
import { WHY_NO_LEADING_ZERO } from '../yaml/scalar.ts';

/** The keys of a block of readings under which readings stand. */
const HOLDERS = ['at', 'value'] as const;

/**
 * What only the surroundings can tell about the numbers of a session. In a block of readings that says `in:`, `05`
 * and `+7` are deviations in the gauge's divisions; everywhere else a leading zero is refused, and a list of readings
 * is looked through for decimal commas.
 */
export function checkNumbers(root: Node, zeros: readonly ScalarNode[], text: string, report: Report): void {
  const blocks = readingBlocks(root);
  const commas: Span[] = [];
  const reportComma: Report = (code, span, message, help) => {
    commas.push(span);
    report(code, span, message, help);
  };
  for (const block of blocks) if (!isShorthand(block)) checkBlock(block, text, reportComma);
  const excused = [...commas, ...blocks.filter(isShorthand).map(({ span }) => span)];
  for (const zero of outside(zeros, excused)) refuseZero(zero, report);
}

/** The scalars that lie in none of the spans. One pass over both: a file can hold thousands of each. */
function outside(scalars: readonly ScalarNode[], spans: readonly Span[]): readonly ScalarNode[] {
  const sorted = [...spans].sort((a, b) => a.start - b.start);
  let next = 0;
  return scalars.filter(({ span }) => {
    while ((sorted[next]?.end ?? span.end) < span.end) next += 1;
    return span.start < (sorted[next]?.start ?? span.end);
  });
}

const isShorthand = (block: MapNode): boolean => block.entries.has('in');

function readingBlocks(root: Node): readonly MapNode[] {
  const readings = root.kind === 'map' ? root.entries.get('readings')?.node : undefined;
  if (readings?.kind !== 'list') return [];
  return readings.items.filter((item) => item.kind === 'map');
}

function checkBlock(block: MapNode, text: string, report: Report): void {
  for (const holder of HOLDERS) {
    const node = block.entries.get(holder)?.node;
    if (node !== undefined) checkWithin(node, text, report);
  }
}

/** The loader has bounded the depth. */
function checkWithin(node: Node, text: string, report: Report): void {
  if (node.kind === 'scalar') return;
  if (node.kind === 'list') checkReadingList(node, text, report);
  const children = node.kind === 'list' ? node.items : [...node.entries.values()].map((entry) => entry.node);
  for (const child of children) checkWithin(child, text, report);
}

function refuseZero({ source, span }: ScalarNode, report: Report): void {
  reportAmbiguous(source, span, WHY_NO_LEADING_ZERO, report);
}
