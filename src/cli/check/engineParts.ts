import type { EngineReport, ReportedSession, StateReport } from '../../checks/judge/report.ts';
import type { CheckFormat } from '../../output/check/formats/format.ts';
import { CHECK_FORMATS } from '../../output/check/formats/index.ts';
import { ShownEngine } from '../../output/check/shownEngine.ts';
import type { Showing } from '../../output/check/view/engineView.ts';
import type { World } from '../../shell/world.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { styleOf } from '../format/outputs.ts';

export interface PartOptions extends Showing {
  readonly format: readonly FormatChoice[];
}

/** What each format of a call makes of an engine, in their order: plain data, looked into by the format alone. */
export type EngineParts = (
  report: EngineReport,
  chosen: readonly (ReportedSession | StateReport)[],
) => readonly unknown[];

export async function engineParts(options: PartOptions, world: World): Promise<EngineParts> {
  const formats = await formatsOf(options.format);
  const styles = options.format.map((each) => styleOf(each, world, options.detail));
  return (report, chosen) => {
    const shown = new ShownEngine(report, chosen, options);
    return formats.flatMap(({ part }, index) => {
      const style = styles[index];
      return style === undefined ? [] : [part(shown, style)];
    });
  };
}

export const formatsOf = (choices: readonly FormatChoice[]): Promise<readonly CheckFormat[]> =>
  Promise.all(
    choices.map(({ format }) => {
      const load = CHECK_FORMATS[format];
      if (load === undefined) throw new Error(`no format ${format}`);
      return load();
    }),
  );
