import type { Registry } from '../../characteristics/registry.ts';
import { valueText } from '../../documents/writing/keyText.ts';
import type { PlannedBlock } from '../plan.ts';
import { keyOf, rowsAt } from '../points.ts';
import type { WrittenBlock } from '../sessionText.ts';
import type { Taken } from './state.ts';

/** Readings as the blocks of a session: of each characteristic one block for each instrument and each setting of it. */
export function writtenBlocks(
  blocks: readonly PlannedBlock[],
  taken: ReadonlyMap<string, Taken>,
  registry: Registry,
): readonly WrittenBlock[] {
  return blocks.flatMap((block) => {
    const all = [...taken.values()].filter((each) => each.point.measure === block.measure);
    return groupsOf(all).flatMap((group) => blockOf(block, group, registry) ?? []);
  });
}

function groupsOf(all: readonly Taken[]): readonly (readonly Taken[])[] {
  const groups = new Map<string, Taken[]>();
  for (const each of all) {
    const key = settingKey(each);
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...groups.values()];
}

/** Readings with one key were taken with one instrument, set once. */
export const settingKey = ({ instrument, zero }: Pick<Taken, 'instrument' | 'zero'>): string =>
  JSON.stringify([instrument ?? '', zero?.setTo ?? '', zero?.base ?? '', zero?.counts ?? '']);

function blockOf(block: PlannedBlock, group: readonly Taken[], registry: Registry): WrittenBlock | undefined {
  const byKey = new Map(group.map((each) => [keyOf(each.point), each]));
  const at = block.positions.flatMap((position) => {
    const rows = rowsAt(block, position).map((row) => row.map((point) => byKey.get(keyOf(point))));
    if (!rows.flat().some((each) => each !== undefined)) return [];
    return [{ position, rows: rows.map((row) => row.map(cellText)) }];
  });
  const [first] = group;
  if (first === undefined || at.length === 0) return undefined;
  return {
    ...block,
    halves: registry.find(block.measure)?.halves === true,
    instrument: first.instrument,
    zero: first.zero,
    at,
    comments: [],
  };
}

/** One reading as it stands at its place. */
export function cellText(taken: Taken | undefined): string {
  if (taken === undefined) return '~';
  const [first = '~', ...more] = taken.texts;
  const inside = /^\{ (.+) \}$/.exec(first)?.[1];
  const note = taken.note === undefined ? '' : `, note: ${valueText(taken.note)}`;
  if (more.length > 0) return `{ repeat: [${taken.texts.join(', ')}]${note} }`;
  if (note === '') return first;
  return `{ ${inside ?? `value: ${first}`}${note} }`;
}
