import { writtenCsv } from '../../escape/csv.ts';
import type { Written } from '../../escape/language.ts';
import type { EngineJson } from '../shownEngine.ts';
import type { CheckFormat } from './format.ts';
import { type ShownJson, shownIn } from './told.ts';

/** A row a judged value, for a spreadsheet or a data tool. */
export const csv: CheckFormat<Written> = {
  part: ({ data }) =>
    writtenCsv(
      shownIn(data).flatMap(([session, shown]) =>
        shown.rows.map((row) =>
          Object.values(COLUMNS).map((value) => value({ engine: data, session, shown, row }) ?? ''),
        ),
      ),
    ),
  writer: (_, write) => {
    let isFirst = true;
    const begin = (): void => {
      if (isFirst) write(writtenCsv([Object.keys(COLUMNS)]));
      isFirst = false;
    };
    return {
      diagnostics: () => undefined,
      engine(rows) {
        begin();
        write(rows);
      },
      findings: () => undefined,
      notJudged: () => undefined,
      end: begin,
    };
  },
};

type RowJson = ShownJson['rows'][number];

interface Judged {
  readonly engine: EngineJson;
  readonly session: string;
  readonly shown: ShownJson;
  readonly row: RowJson;
}

const COLUMNS: Readonly<Record<string, (of: Judged) => string | number | null | undefined>> = {
  engine: ({ engine }) => engine.path,
  name: ({ engine }) => engine.name,
  session: ({ session }) => session,
  stage: ({ shown }) => shown.stage,
  date: ({ shown }) => shown.date,
  measure: ({ row }) => row.measure,
  position: ({ row }) => row.position,
  half: ({ row }) => row.half,
  unit: ({ row }) => row.unit,
  written: ({ row }) => row.written.join(' '),
  least: ({ row }) => row.least,
  mean: ({ row }) => row.mean,
  greatest: ({ row }) => row.greatest,
  u: ({ row }) => row.u,
  U: ({ row }) => row.U,
  min: ({ row }) => row.limits.min?.value,
  max: ({ row }) => row.limits.max?.value,
  verdict: ({ row }) => row.verdict,
  past_side: ({ row }) => row.past?.side,
  past_by: ({ row }) => row.past?.by,
  marginal: ({ row }) => String(row.marginal),
  route: ({ row }) => row.route,
  with: ({ row }) => row.routes[0]?.with.join('; '),
  findings: ({ row, shown }) => codesAt(row, shown),
  read_in: ({ row }) => row.read_in,
  left_out: ({ row }) => row.left_out,
  path: ({ row }) => row.place.path,
  line: ({ row }) => row.place.line,
};

const codesAt = ({ measure, position }: RowJson, { findings }: ShownJson): string =>
  findings
    .filter((each) => each.measure === measure && each.position === position)
    .map(({ code }) => code)
    .join(' ');
