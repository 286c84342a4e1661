import { type ComparedState, diffStates } from '../../compare/diff.ts';
import { titleOf } from '../../compare/parts/conflicts.ts';
import { type MeasuredPart, type MeasuredSitting, measuredParts } from '../../compare/parts/measuredPart.ts';
import { type EngineState, keyOf, stateOfSession } from '../../compare/state.ts';
import type { World } from '../../shell/world.ts';
import { documentsNamed } from '../check/chooseSessions.ts';
import { partsMarked, partsOfShop } from '../parts/part.ts';
import { UsageError } from '../usage.ts';
import type { Compared } from './compared.ts';

/** Two sittings of a part, in whatever engines it was; without a second the last of them is. */
export function comparePart(words: readonly string[], mark: string, world: World): Compared {
  const [first = '', second, ...more] = words;
  if (more.length > 0) throw new UsageError('too many words', 'tenths diff A [B] --part MARK');
  const { parts, hasProblems } = partsOfShop(undefined, world);
  const [part, ...others] = measuredParts(partsMarked(mark, parts));
  if (part === undefined || others.length > 0) {
    const named = parts.filter((each) => each.mark === mark).map((each) => `"${titleOf(each)}"`);
    throw new UsageError(`several parts are marked ${mark}`, `name one of them: ${named.join(', ')}`);
  }
  const a = sittingNamed(first, part);
  const b = second === undefined ? lastOf(part) : sittingNamed(second, part);
  const state = stateOf(b);
  return {
    sides: { a: sideOf(a), b: sideOf(b) },
    engines: [
      {
        path: b.engine.folder,
        name: titleOf(part),
        diff: diffStates(stateOf(a), state),
        unitFor: state.unitFor,
      },
    ],
    notCompared: [],
    hasProblems,
  };
}

function sittingNamed(word: string, part: MeasuredPart): MeasuredSitting {
  const measured = part.sittings.filter(({ rows }) => rows.length > 0);
  const [session] = documentsNamed(
    word,
    measured.map((each) => each.session),
  );
  const found = measured.find((each) => each.session === session);
  if (found !== undefined) return found;
  const known = measured.map((each) => each.session.name).join('; ');
  throw new UsageError(`${titleOf(part)} was not measured in ${word}`, `it was in ${known}`);
}

function lastOf(part: MeasuredPart): MeasuredSitting {
  const last = part.sittings.findLast(({ rows }) => rows.length > 0);
  if (last === undefined) throw new UsageError(`${titleOf(part)} was never measured`);
  return last;
}

const sideOf = ({ session: { stage, date }, engine, isBench }: MeasuredSitting): ComparedState => ({
  kind: 'session',
  name: `${stage} ${date}, ${isBench ? 'outside' : engine.document.name}`,
  commit: null,
});

/** What is said of the engine beside it is none of the part's. */
function stateOf({ engine, registry, session, rows }: MeasuredSitting): EngineState {
  const own = new Set(rows.map(keyOf));
  const whole = stateOfSession({ engine, registry }, session);
  const values = new Map([...whole.values].filter(([key]) => own.has(key)));
  return { ...whole, values, concessions: [] };
}
