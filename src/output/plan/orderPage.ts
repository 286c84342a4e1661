import type { Engine } from '../../documents/assemble.ts';
import type { OrderLine } from '../../plan/order/orderList.ts';
import type { Page, Section } from './page.ts';

/** What has to be bought, now and when sizes are known. */
export function orderPage(lines: readonly OrderLine[], engine: Engine, about: readonly string[]): Page {
  const { number, serial } = engine.document.job;
  const whose = [
    serial === undefined ? 'engine no. ____________' : `engine no. ${serial}`,
    ...(number === undefined ? [] : [`job ${number}`]),
  ];
  return {
    title: `${engine.document.name}: order list`,
    about: [whose.join(', '), ...about],
    answer: lines.length === 0 ? ['nothing is to be ordered'] : [counted(lines)],
    sections: [
      ...section('order now', 'now', lines),
      ...section('order after measuring: the size may still change', 'after measuring', lines),
    ],
    cautions: lines.length === 0 ? [] : CAUTIONS,
  };
}

const counted = (lines: readonly OrderLine[]): string => {
  const now = lines.filter(({ when }) => when === 'now').length;
  return `${now} to order now, ${lines.length - now} after measuring`;
};

const CAUTIONS: readonly string[] = [
  'Part numbers are those that documents state; the maker’s parts list comes first.',
  'Ask for the size on the box, and measure what comes before anything is cut to it.',
];

function section(title: string, when: OrderLine['when'], lines: readonly OrderLine[]): readonly Section[] {
  const rows = lines.filter((each) => each.when === when);
  if (rows.length === 0) return [];
  return [
    {
      title,
      table: {
        columns: [
          { heading: '', key: undefined },
          { heading: 'count', key: 'count', align: 'right' },
          { heading: 'what', key: 'what' },
          { heading: 'size', key: 'size' },
          { heading: 'part number', key: 'part_number' },
          { heading: 'in stock', key: 'in_stock', align: 'right' },
          { heading: 'needed by', key: 'needed_by' },
          { heading: 'for', key: 'for' },
        ],
        rows: rows.map(({ count, what, size, code, onShelf, neededBy, for: job }) => [
          '[ ]',
          { text: String(count), value: count },
          what,
          size,
          code ?? { text: '________', value: null },
          { text: onShelf === 0 ? '' : String(onShelf), value: onShelf },
          neededBy ?? '',
          job,
        ]),
      },
    },
  ];
}

/** The same for a spreadsheet. */
export const orderRows = (
  lines: readonly OrderLine[],
  { document: { name, job } }: Engine,
): readonly (readonly (string | number)[])[] => [
  ['engine', 'serial', 'job', 'when', 'count', 'what', 'size', 'part number', 'in stock', 'needed by', 'for'],
  ...lines.map(({ when, count, what, size, code, onShelf, neededBy, for: whose }) => [
    name,
    job.serial ?? '',
    job.number ?? '',
    when,
    count,
    what,
    size,
    code ?? '',
    onShelf,
    neededBy ?? '',
    whose,
  ]),
];
