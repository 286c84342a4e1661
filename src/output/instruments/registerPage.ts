import { named } from '../../checks/findings/readings.ts';
import type { Register, RegisterEntry } from '../../compare/instruments/register.ts';
import type { UndecidedRow } from '../../compare/instruments/undecided.ts';
import { plural } from '../../quantity/words.ts';
import type { Page, Section } from '../plan/page.ts';
import { certificateText, evidenceText } from './evidenceText.ts';

/** A shop's instruments: what is due, when each was last known to be good, and what it leaves undecided. */
export function registerPage(register: Register, isAsked: boolean): Page {
  const { day, entries } = register;
  return {
    title: 'Instruments',
    about: [dayText(day, isAsked)],
    answer: [answer(register)],
    sections: [
      dueSection(entries),
      ...knownSection(entries),
      ...useSection(register),
      ...undecidedSection(register),
    ],
    cautions: [],
  };
}

function dayText(day: string | undefined, isAsked: boolean): string {
  if (day === undefined) return 'there is no session yet: --on YEAR-MONTH-DAY says what is overdue by then';
  return isAsked ? `on ${day}` : `on ${day}, the day of the latest session; --on names another`;
}

function answer({ day, entries }: Register): string {
  const count = (is: (entry: RegisterEntry) => boolean): number => entries.filter(is).length;
  const onThatDay = [
    `${count(({ isOverdue }) => isOverdue === true)} overdue`,
    `${count(({ isOverdue }) => isOverdue === false)} not due yet`,
  ];
  return [
    plural(entries.length, 'instrument'),
    ...(day === undefined ? [] : onThatDay),
    `${count(({ instrument }) => instrument.due === undefined)} without a day on which they are due`,
  ].join(', ');
}

const dueSection = (entries: readonly RegisterEntry[]): Section => ({
  title: 'Calibration',
  table: {
    columns: [
      { heading: 'instrument', key: 'instrument' },
      { heading: 'type', key: 'type' },
      { heading: 'calibrated', key: 'calibrated' },
      { heading: 'due', key: 'due' },
      { heading: '', key: undefined },
    ],
    rows: [...entries]
      .sort(overdueFirst)
      .map(({ instrument: { id, type, calibrated, due }, isOverdue }) => [
        id,
        type,
        calibrated ?? '',
        due ?? '',
        isOverdue === true ? 'overdue' : '',
      ]),
  },
});

const overdueFirst = (a: RegisterEntry, b: RegisterEntry): number => rankOf(a) - rankOf(b);

const rankOf = ({ isOverdue }: RegisterEntry): number => (isOverdue === true ? 0 : 1);

/** Certificates, checks on a standard, and studies; an instrument that has none is not named. */
function knownSection(entries: readonly RegisterEntry[]): readonly Section[] {
  const rows = entries.flatMap(({ instrument: { id, study, certificates }, evidence }) => {
    const last = evidence.findLast(({ by }) => by === 'check');
    const certificate = certificates.at(-1);
    return [
      ...(certificate === undefined ? [] : [[id, certificate.date, certificateText(certificate, evidence)]]),
      ...(last === undefined ? [] : [[id, last.day, evidenceText(last)]]),
      ...(study === undefined ? [] : [[id, '', `repeats as the study ${study.name} found`]]),
    ];
  });
  return rows.length === 0
    ? []
    : [
        {
          title: 'Last certificates, checks and studies',
          table: {
            columns: [
              { heading: 'instrument', key: 'instrument' },
              { heading: 'day', key: 'day' },
              { heading: '', key: undefined },
            ],
            rows,
          },
        },
      ];
}

function useSection({ entries, undecided }: Register): readonly Section[] {
  const used = entries.filter(({ places, joints }) => places + joints > 0);
  if (used.length === 0) return [];
  const section: Section = {
    title: 'In use',
    table: {
      columns: [
        { heading: 'instrument', key: 'instrument' },
        { heading: 'places', key: 'places', align: 'right' },
        { heading: 'joints', key: 'joints', align: 'right' },
        { heading: 'undecided', key: 'undecided', align: 'right' },
        { heading: 'share of the doubt', key: 'share_of_doubt', align: 'right' },
      ],
      rows: used.map((each) => [
        each.instrument.id,
        String(each.places),
        String(each.joints),
        String(each.undecided),
        undecided.length === 0 ? '' : `${Math.round(100 * each.share)} %`,
      ]),
    },
  };
  return [section];
}

function undecidedSection({ undecided, verdicts }: Register): readonly Section[] {
  if (undecided.length === 0) return [];
  return [
    {
      title: `Undecided: ${undecided.length} of ${plural(verdicts, 'verdict')}`,
      table: {
        columns: [
          { heading: 'engine', key: 'engine' },
          { heading: 'what', key: 'what' },
          { heading: 'doubt', key: 'doubt' },
          { heading: 'if it reads the same', key: 'if_it_reads_the_same' },
        ],
        rows: undecided.map(undecidedRow),
      },
    },
  ];
}

const undecidedRow = ({ engine, row, shares, better }: UndecidedRow): readonly string[] => [
  engine.document.name,
  named(row),
  shares.map(([id, share]) => `${id} ${Math.round(100 * share)} %`).join(', '),
  better === undefined ? 'nothing registered would decide it' : `${better.instruments} would decide it`,
];
