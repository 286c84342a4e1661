import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import { type Condition, conditionWhere, type PartChange } from '../../documents/session/partChanges.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Position } from '../../layout/position.ts';
import type { PartAt } from '../../layout/readPart.ts';
import { isAnotherPart } from '../history/anotherPart.ts';
import { isAt } from '../history/dependsOn.ts';

/** A session and the engine whose layout names its positions. */
export interface SessionOfEngine {
  readonly engine: Engine;
  readonly session: SessionDocument;
  readonly registry: Registry;
  /** Where the engine's state is judged: the earlier sessions of its run, the latest first. */
  readonly earlier?: readonly SessionDocument[];
}

/**
 * Which condition of a part chooses the band; where nothing is said the stage does. A part that was machined or renewed is
 * new, until another one is fitted. A fit with one such part is judged as new; else the part decides that the figure is of.
 */
export function statedCondition(
  around: SessionOfEngine,
  characteristic: Characteristic,
  position: Position,
): StatedCondition | undefined {
  const { of } = characteristic;
  const { session, earlier = [] } = around;
  // Most sessions say nothing of it.
  if ([session, ...earlier].every(({ partChanges }) => partChanges.length === 0)) return undefined;
  const stated = partsOfFit(characteristic, around.registry).flatMap((id) =>
    conditionsOf(id, characteristic, position, around).map((each) => ({ ...each, isItsOwn: id === of })),
  );
  return stated.find(({ band }) => band === 'new') ?? stated.find(({ isItsOwn }) => isItsOwn);
}

export interface StatedCondition {
  readonly text: string;
  readonly band: 'new' | 'wear';
}

/** The part that it is of, and those that its figures are of from which it is worked out: a shell, its housing, its journal. */
const partsOfFit = ({ of, derivations }: Characteristic, registry: Registry): readonly string[] => [
  ...new Set(
    [of, ...derivations.flatMap(({ inputs }) => inputs.map((id) => registry.find(id)?.of))].flatMap(
      (id) => id ?? [],
    ),
  ),
];

/** Of a part at a place: what is said of it, and what was done to it since it came. */
function conditionsOf(
  id: string,
  { isCutDown }: Characteristic,
  position: Position,
  around: SessionOfEngine,
): readonly StatedCondition[] {
  const { session, engine, registry, earlier = [] } = around;
  const isHere = (part: PartAt): boolean => isAt(id, position, part, registry, engine.document.layout);
  const changes = sinceItCame([session, ...earlier], isHere, registry);
  const cut = changes.find(({ how }) => how === 'machined');
  // What was cut down is thinner than a new one, and as good.
  if (isCutDown === true && cut !== undefined) return [{ text: `machined ${cut.name}`, band: 'wear' }];
  const said = changes.flatMap((change) => {
    const condition = conditionWhere(change, isHere);
    return condition === undefined ? [] : [{ condition, name: change.name }];
  });
  const saidLast = said.filter(({ name }, index) => said.findIndex((each) => each.name === name) === index);
  const made = changes.filter(({ how }) => how === 'machined' || (how === 'replaced' && said.length === 0));
  return [
    ...saidLast.map(({ condition, name }) => ({ text: `${condition} ${name}`, band: bandOf(condition) })),
    ...made.map(({ how, name }) => ({ text: `${how} ${name}`, band: 'new' as const })),
  ];
}

/** What the sessions say of a part since it came: since it was renewed, or another one was fitted. The latest first, as they are. */
const sinceItCame = (
  sessions: readonly SessionDocument[],
  isHere: (part: PartAt) => boolean,
  { parts }: Registry,
): readonly PartChange[] =>
  sessions
    .reduceRight<readonly (readonly PartChange[])[]>((before, { partChanges }) => {
      const here = partChanges.filter((each) => each.parts.some(isHere));
      const said = before.flat();
      const isAnother = here.some((each) => COMES.includes(each.how) || isAnotherPart(each, said, parts));
      return isAnother ? [here] : before.concat([here]);
    }, [])
    .toReversed()
    .flat();

const COMES: readonly PartChange['how'][] = ['replaced', 'tried'];

const bandOf = (condition: Condition): 'new' | 'wear' => (condition === 'used' ? 'wear' : 'new');
