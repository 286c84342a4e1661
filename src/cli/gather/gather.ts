import type { RunTotals } from '../../output/check/formats/format.ts';
import { sortKnown } from '../../output/check/knownFinding.ts';
import type { World } from '../../shell/world.ts';
import { CheckWriters } from '../check/checkWriters.ts';
import { shownParts } from '../check/engineParts.ts';
import { Tally } from '../check/tally.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { Outputs } from '../format/outputs.ts';
import { UsageError } from '../usage.ts';
import { type DiagnosticJson, diagnosticFrom, findingFrom } from './fromJson.ts';
import { type NamedRevision, readShares, type SharedEngine, type ShareOutput, unfolded } from './shares.ts';

/** Writes what shares of a check have found as one run would have; its exit code. */
export async function gather(
  files: readonly string[],
  { format }: { readonly format: readonly FormatChoice[] },
  world: World,
): Promise<number> {
  const shares = readShares(files, world);
  const [first] = shares;
  if (first === undefined) throw new UsageError('no share is named');
  const outputs = new Outputs(world);
  const { detail } = first.share;
  const writer = await CheckWriters.open(format, headOf(first), { outputs, world, detail });
  const partsOf = await shownParts({ format, detail }, world);
  // Knows which problems were told already: a shared document has its faults once.
  const tally = new Tally(first.strict);
  const texts = new Map(shares.flatMap(({ share }) => Object.entries(share.texts)));
  const report = (list: readonly DiagnosticJson[]): void =>
    writer.diagnostics(tally.newDiagnostics(list.map(diagnosticFrom)), texts);
  const unfoldedShares = shares.map(unfolded);
  const engines = inTurn(unfoldedShares.map((each) => each.engines));
  for (const { path, diagnostics, shown, faulty } of engines) {
    report(diagnostics);
    if (shown === undefined) writer.notJudged(path, faulty);
    else writer.engine(partsOf(shown));
  }
  for (const { rest } of unfoldedShares) report(rest);
  writer.findings(shares.flatMap(({ findings }) => findings.map(findingFrom)));
  const totals = totalsOf(shares, engines.length, tally.diagnostics);
  writer.end(totals);
  outputs.save();
  return totals.exit;
}

const headOf = ({ at, since, strict }: ShareOutput) => ({
  ...{ strict, staged: false, share: undefined },
  ...{ at: revisionFrom(at), since: revisionFrom(since) },
});

const revisionFrom = (named: NamedRevision | null) =>
  named === null ? undefined : { name: named.revision, commit: named.commit };

/** The first of each share, then the second of each: as one run would have come across them. */
function inTurn(shares: readonly (readonly SharedEngine[])[]): readonly SharedEngine[] {
  const most = Math.max(...shares.map(({ length }) => length));
  return Array.from({ length: most }, (_, row) => shares.flatMap((each) => each[row] ?? [])).flat();
}

function totalsOf(shares: readonly ShareOutput[], engines: number, diagnostics: number): RunTotals {
  const sum = (of: (share: ShareOutput) => number): number =>
    shares.reduce((total, each) => total + of(each), 0);
  const isKnown = shares.some(({ known }) => known !== undefined);
  return {
    ...{ engines, diagnostics, sessions: sum(({ summary }) => summary.sessions) },
    findings: {
      error: sum(({ summary }) => summary.errors),
      warning: sum(({ summary }) => summary.warnings),
      remark: sum(({ summary }) => summary.remarks),
    },
    known: isKnown
      ? {
          findings: sum(({ known }) => known?.findings ?? 0),
          gone: sortKnown(shares.flatMap(({ known }) => known?.gone ?? [])),
        }
      : undefined,
    exit: ([2, 1] as const).find((code) => shares.some(({ exit }) => exit === code)) ?? 0,
  };
}
