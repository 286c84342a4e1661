import type { Engine } from '../../documents/assemble.ts';
import { NOT_STATED } from '../../documents/unstatedSource.ts';
import { keyText, valueText } from '../../documents/writing/keyText.ts';
import { BANK } from '../../layout/family.ts';
import { readPart } from '../../layout/readPart.ts';
import { comment, schemaLine } from '../sessionText.ts';
import { type MadeFile, madeFile, schemaPath } from './madeFile.ts';

export interface TorqueRequest {
  /** Such as `main caps`. */
  readonly joint: string;
  /** Relative to the shop's root. */
  readonly path: string;
  readonly folder: string;
  /** Torques of the passes as they are to be written, first to last. */
  readonly passes: readonly string[];
  readonly fasteners: readonly string[] | undefined;
  readonly source: string | undefined;
}

/** Invented figures, to show the form alone. */
const EXAMPLES = {
  in: { fastener: 'thread: 9/16-12 and grade: 8', stretch: 'min: 0.0125, max: 0.0165' },
  mm: { fastener: 'thread: M14 x 2 and grade: 10.9', stretch: 'min: 0.31, max: 0.42' },
} as const;

/** A tightening sequence: order and figures are the maker's, so all that is left open says so. */
export function torqueFile(request: TorqueRequest, engine: Engine): MadeFile {
  const names = request.fasteners ?? fastenersOf(request.joint, engine);
  const list = names.map(keyText).join(', ');
  const example = EXAMPLES[engine.units.get('length')?.name === 'mm' ? 'mm' : 'in'];
  const lines = [
    schemaLine(schemaPath(request.folder, 'torque')),
    'kind: torque',
    `joint: ${valueText(request.joint)}`,
    '',
    comment('One name for each bolt, stud or nut, by its mark or its place.'),
    `fasteners: { names: [${list}] }`,
    comment(
      'Add inside it reuse: false where the maker says that they must not be used twice, else reuse: true.',
    ),
    comment(`With ${example.fastener} inside it, the clamp load can be estimated.`),
    '',
    comment(
      "The maker's order, as numbered in the manual; the order of the names, as below, is seldom the right one.",
    ),
    comment(`order: [${list}]`),
    '',
    comment('The torque holds for this lubricant only.'),
    comment('lubricant: engine oil on threads and under heads'),
    '',
    comment(`Also { turn: 90 deg }, { loosen: 360 deg }, { stretch: { ${example.stretch} } }.`),
    `passes: [${request.passes.map((torque) => `{ to: ${torque} }`).join(', ')}]`,
    '',
    `before: [${stepsBefore(request.joint, engine).join(', ')}]`,
    `source: ${request.source === undefined ? NOT_STATED : JSON.stringify(request.source)}`,
  ];
  return madeFile(request.path, `${lines.join('\n')}\n`);
}

/** Common practice, no source: the maker's manual comes first. */
function stepsBefore(joint: string, { document: { layout }, parts }: Engine): readonly string[] {
  const meant = readPart(joint, parts, layout);
  const ids = meant.kind === 'parts' ? meant.at.map(({ part }) => part.id) : [];
  if (ids.includes('head'))
    return ['threads clean', 'faces of head and block clean', 'gasket the right way up'];
  return ids.some((id) => BEARING_JOINTS.includes(id))
    ? ['threads clean', 'caps in their places and facing as marked', 'shells seated']
    : ['threads clean'];
}

const BEARING_JOINTS: readonly string[] = ['main_cap', 'main_bolt', 'rod_housing', 'rod_bolt'];

/** Two to a main cap or a rod; else four, to be named by whoever knows the joint. */
function fastenersOf(joint: string, { document: { layout }, parts }: Engine): readonly string[] {
  const meant = readPart(joint, parts, layout);
  const of =
    meant.kind === 'parts'
      ? meant.at.find(({ part }) => !part.family.isSingle && part.family !== BANK)
      : undefined;
  if (of === undefined) return ['1', '2', '3', '4'];
  return layout
    .positionsOf(of.part.family)
    .flatMap(({ name }) => (/^\d+$/.test(name) ? [`${name}L`, `${name}R`] : [`${name}-1`, `${name}-2`]));
}
