import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import { bandsText } from '../bandsText.ts';
import type { Plan, PlannedBlock } from '../plan.ts';
import { rowsAt } from '../points.ts';
import { type SessionHead, sessionText, type WrittenBlock } from '../sessionText.ts';

/** An empty session: everything that the plan names, not taken yet, with what there is to know beside it. */
export const scaffoldSession = (head: SessionHead, plan: Plan, engine: Engine, registry: Registry): string =>
  sessionText(
    head,
    [...HEAD_COMMENTS, ...(plan.blocks.length === 0 ? NOTHING_LIMITED : [])],
    plan.blocks.map((block) => emptyBlock(block, engine, registry)),
  );

const HEAD_COMMENTS = [
  'Put the reading in the place of each ~, with the digits that the instrument shows: 2.4980, not 2.498.',
  'What was not measured stays ~. A number may carry its own unit (63.45 mm) or a note:',
  '{ value: 2.4980, note: scored at the edge }.',
];

const NOTHING_LIMITED = [
  'The limits of this engine name nothing yet, so nothing is listed here: fill in limits.yaml and make the',
  'session again, or write blocks of your own.',
];

function emptyBlock(block: PlannedBlock, engine: Engine, registry: Registry): WrittenBlock {
  const characteristic = registry.find(block.measure);
  return {
    ...block,
    halves: characteristic?.halves === true,
    zero: undefined,
    at: block.positions.map((position) => ({
      position,
      rows: rowsAt(block, position).map((row) => row.map(() => '~')),
    })),
    comments: [
      ...(characteristic === undefined ? [] : [characteristic.description]),
      ...limitLines(block, engine, registry),
      ...(characteristic?.atTheBench === undefined ? [] : [characteristic.atTheBench]),
      ...howLines(block),
    ],
  };
}

/** The general limits of what is read here, and of what is worked out from it. */
function limitLines({ measure, positions }: PlannedBlock, engine: Engine, registry: Registry) {
  const related = registry.all.filter(
    (each) =>
      each.id === measure ||
      (each.onlyWithLimits === true && each.derivations.some(({ inputs }) => inputs.includes(measure))),
  );
  return related.flatMap((each) => {
    const texts = new Set(positions.map((position) => bandsText(each, position, engine)));
    const [text] = texts;
    if (text === undefined || text === '') return texts.size > 1 ? [`${each.label}: limits by position`] : [];
    return [`${each.label}: ${text}${texts.size > 1 ? ', and others at some positions' : ''}`];
  });
}

function howLines({ grid }: PlannedBlock): readonly string[] {
  const { stations, directions, distances = [] } = grid;
  const rows = `rows are ${stations.join(', ')}; columns are ${directions.join(', ')}`;
  return [
    ...(stations.length === 0 || directions.length === 0 ? [] : [`At each position ${rows}.`]),
    ...(distances.includes('~')
      ? ['A limit is for a length: write how far each station is from one end.']
      : []),
  ];
}
