import { type ComparedState, diffStates } from '../../compare/diff.ts';
import { stateAfter } from '../../compare/state.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { STAGES } from '../../documents/session/stage.ts';
import type { World } from '../../shell/world.ts';
import { documentsNamed } from '../check/chooseSessions.ts';
import { type EngineFolder, findEngine, judgeable } from '../shop/resolveShop.ts';
import type { ShopSource } from '../shop/shopSource.ts';
import { UsageError } from '../usage.ts';
import type { Compared } from './compared.ts';
import { type DiffCall, mayNameSession } from './diffCall.ts';

/** How an engine stood after two of its sessions, by the documents on disk; undefined where the words name none. */
export function compareSessions(call: DiffCall, source: ShopSource, world: World): Compared | undefined {
  const words = call.b === undefined ? [call.a] : [call.a, call.b];
  if (call.engine === undefined && !words.some((word) => mayBeBelow(word, source))) return undefined;
  const found = engineHere(call.engine ?? words.find((word) => isFile(word, source)), source);
  if (found === undefined || !words.some((word) => mayBeSession(word, found))) return undefined;
  const read = judgeable(found, world);
  const { engine, hasProblems } = read;
  const sessions = words.map((word) => documentsNamed(word, engine.sessions)[0]);
  if (sessions.every((each) => each === undefined)) return undefined;
  const [a, b] = sessions;
  if (a === undefined || b === undefined) throw notTwo(words, sessions, engine.sessions);
  const state = stateAfter(read, b);
  const diff = diffStates(stateAfter(read, a), state);
  const about = { path: engine.folder, name: engine.document.name };
  return {
    sides: { a: sideOf(a), b: sideOf(b) },
    engines: [{ ...about, diff, unitFor: state.unitFor }],
    notCompared: [],
    hasProblems,
  };
}

const sideOf = ({ stage, date }: SessionDocument): ComparedState => ({
  kind: 'session',
  name: `${stage} ${date}`,
  commit: null,
});

/** Whether the words may name sessions of one of the engines here. */
export const mayBeSessions = ({ a, b = a }: DiffCall, source: ShopSource): boolean =>
  mayBeBelow(a, source) && mayBeBelow(b, source);

/** A session by its path is of the engine in which it lies. */
const isFile = (word: string, source: ShopSource): boolean => source.locate(word)?.file !== undefined;

/** The engine meant, where there is one on disk and only one. */
function engineHere(name: string | undefined, source: ShopSource): EngineFolder | undefined {
  if (name !== undefined) return findEngine(name, source);
  const located = source.locate('.');
  const [only, ...others] = located?.shop.loader.find({ folders: [located.folder] }).engines ?? [];
  return located === undefined || only === undefined || others.length > 0
    ? undefined
    : { shop: located.shop, folder: only };
}

/** To find the engines of a shop its files are read: not for words that are no file's name. */
function mayBeBelow(word: string, source: ShopSource): boolean {
  const located = source.locate('.');
  return located !== undefined && mayBeSession(word, { shop: located.shop, folder: located.folder });
}

const mayBeSession = (word: string, { shop, folder }: EngineFolder): boolean =>
  mayNameSession(word, shop.store.list([folder]), STAGES);

function notTwo(
  words: readonly string[],
  sessions: readonly (SessionDocument | undefined)[],
  known: readonly SessionDocument[],
): UsageError {
  const names = known.map(({ name }) => name).join(', ');
  const unknown = words.find((_, index) => sessions[index] === undefined);
  return unknown === undefined
    ? new UsageError(
        'diff compares two sessions, or one git revision with the files on disk',
        `the engine has ${names}`,
      )
    : new UsageError(`unknown session ${unknown}`, `the engine has ${names}`);
}
