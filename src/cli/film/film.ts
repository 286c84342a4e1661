import { type EngineReport, type ReportedSession, reportEngine } from '../../checks/judge/report.ts';
import { unitOf, unitOfRow } from '../../checks/judge/session.ts';
import { BEARING_KINDS } from '../../oiling/bearingKind.ts';
import { deliveryOf, demandOf, engineFilms } from '../../oiling/engineFilms.ts';
import { isLacking, supplyOf } from '../../oiling/supply.ts';
import type { ToldFilms } from '../../output/film/filmText.ts';
import { FILM_FORMATS } from '../../output/film/formats/index.ts';
import { unitNamed } from '../../quantity/units.ts';
import type { World } from '../../shell/world.ts';
import { sessionNamed } from '../check/chooseSessions.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { printFormats } from '../format/printFormats.ts';
import { openEngine } from '../shop/resolveShop.ts';
import { UsageError } from '../usage.ts';
import { readFilmCall } from './filmCall.ts';
import { whatIfAsked } from './whatIfAsked.ts';

export interface FilmOptions {
  readonly engine?: string | undefined;
  readonly session?: string | undefined;
  readonly at?: string | undefined;
  /** `0.0020..0.0045` */
  readonly clearance?: string | undefined;
  readonly format: readonly FormatChoice[];
}

/** Prints the oil films of an engine's bearings by their measured clearances; the exit code. */
export async function film(words: readonly string[], options: FilmOptions, world: World): Promise<number> {
  const call = readFilmCall(words, options.engine);
  const opened = openEngine(call.engine, world, options.at);
  const report = reportEngine(opened.engine, opened.registry, {});
  const told = toldFilms(report, shownSession(report, options.session), call.measure);
  const whatIf = options.clearance === undefined ? undefined : whatIfAsked(options.clearance, told);
  const exit = opened.hasProblems ? 2 : 0;
  const origin = { at: opened.revision, exit, whatIf } as const;
  await printFormats(FILM_FORMATS, options.format, { told, origin }, world);
  return exit;
}

function shownSession(report: EngineReport, session: string | undefined): ReportedSession {
  const shown = session === undefined ? report.state : sessionNamed(session, report.sessions)[0];
  if (shown !== undefined) return shown;
  throw new UsageError(
    session === undefined ? `${report.engine.document.name} has no session` : `unknown session ${session}`,
    'tenths check shows what was measured',
  );
}

function toldFilms(report: EngineReport, shown: ReportedSession, measure: string | undefined): ToldFilms {
  const { engine } = report;
  const supply = supplyOf(engine);
  if (isLacking(supply)) {
    throw new UsageError(
      `${engine.document.name} does not state what an oil film depends on`,
      `write into its engine document: ${supply.join(' and ')}`,
    );
  }
  const kinds = engineFilms(report, shown, supply, measure);
  if (kinds.length === 0) {
    const measures = BEARING_KINDS.map((kind) => kind.measure).join(', ');
    throw new UsageError(
      `no ${measure ?? 'clearance of a bearing'} is measured in ${engine.document.name}`,
      `films are worked out from ${measures}`,
    );
  }
  const isInch = unitOf('length', engine).name === 'in';
  return {
    engine,
    supply,
    kinds,
    demand: demandOf(kinds),
    delivery: deliveryOf(report),
    units: {
      ofRow: (row) => unitOfRow(row, engine),
      temperature: unitOf('temperature', engine),
      force: engine.units.get('force') ?? unitNamed(isInch ? 'lbf' : 'N'),
    },
  };
}
