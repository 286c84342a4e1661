import { named, type Printing, printingOf, readingText } from '../../checks/findings/readings.ts';
import type { Row } from '../../checks/judge/row.ts';
import { unitOfRow } from '../../checks/judge/session.ts';
import { isTheLatest, type RecalledEngine, type Rejudged } from '../../compare/instruments/recall.ts';
import { headedWithUnit } from '../../quantity/format.ts';
import { verdictText } from '../check/view/rowView.ts';
import type { Section } from '../plan/page.ts';

/** Whether it can be measured again where it stands. */
export const standingOf = (
  one: Rejudged,
  { engine, isDelivered }: RecalledEngine,
): 'here' | 'delivered' | 'earlier' =>
  isTheLatest(one, engine) ? (isDelivered ? 'delivered' : 'here') : 'earlier';

const TITLES = {
  here: 'Still here, measure again',
  delivered: 'Delivered',
  earlier: 'Of an earlier run',
} as const;

/** Verdicts that change, by engine: first what is still here, then what was delivered, then earlier runs. */
export const changedSections = (recalled: readonly RecalledEngine[]): readonly Section[] =>
  (['here', 'delivered', 'earlier'] as const).flatMap((standing) =>
    recalled.flatMap((each) => sectionsOf(standing, each)),
  );

function sectionsOf(standing: keyof typeof TITLES, of: RecalledEngine): readonly Section[] {
  const some = of.changed.filter((one) => standingOf(one, of) === standing);
  const runs = [...new Set(some.map(({ at }) => at))];
  const { name, job } = of.engine.document;
  const left = standing === 'delivered' ? `, on ${job.delivered}` : '';
  return runs.map((run) => ({
    title: `${TITLES[standing]}: ${name} as ${run.stage} ${run.date} left it${left}`,
    table: {
      columns: [
        { heading: '', key: 'what' },
        { heading: 'read', key: 'read', align: 'right' },
        { heading: 'put right', key: 'put_right', align: 'right' },
        { heading: 'verdict', key: 'verdict' },
        { heading: 'now', key: 'now' },
      ],
      rows: some.filter(({ at }) => at === run).map((one) => rowOf(one, of)),
    },
  }));
}

function rowOf({ before, after }: Rejudged, { engine }: RecalledEngine): readonly string[] {
  const printing = printingOf(before, (row) => unitOfRow(row, engine));
  return [
    headedWithUnit(named(before), printing.unit),
    ...valueTexts(before, after, printing),
    before.judgement.verdict ?? 'not judged',
    verdictText(after, printing) || 'not judged',
  ];
}

/** With as many digits more as it takes to see that they differ. */
function valueTexts(before: Row, after: Row, printing: Printing): readonly string[] {
  const texts = [before, after].map(({ routes: [judged] }) =>
    judged === undefined ? '' : readingText(judged, printing),
  );
  return texts[0] === texts[1] && printing.decimals < MOST_DECIMALS
    ? valueTexts(before, after, { ...printing, decimals: printing.decimals + 1 })
    : texts;
}

const MOST_DECIMALS = 7;
