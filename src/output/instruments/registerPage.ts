import { named } from '../../checks/findings/readings.ts';
import type { Register, RegisterEntry } from '../../compare/instruments/register.ts';
import type { UndecidedRow } from '../../compare/instruments/undecided.ts';
import { plural } from '../../quantity/words.ts';
import type { Page, Section } from '../plan/page.ts';
import { evidenceText } from './evidenceText.ts';

/** A shop's instruments: what is due, when each was last known to be good, and what it leaves undecided. */
export function registerPage(register: Register, isAsked: boolean): Page {
  const { day, entries } = register;
  return {
    title: 'Instruments',
    about: [isAsked ? `on ${day}` : `on ${day}, the day of the latest session; --on names another`],
    answer: [answer(register)],
    sections: [
      dueSection(entries),
      ...knownSection(entries),
      useSection(register),
      ...undecidedSection(register),
    ],
    cautions: [],
  };
}

function answer({ entries }: Register): string {
  const count = (is: boolean | null): number => entries.filter(({ isOverdue }) => isOverdue === is).length;
  return [
    plural(entries.length, 'instrument'),
    `${count(true)} overdue`,
    `${count(false)} not due yet`,
    `${count(null)} without a day on which they are due`,
  ].join(', ');
}

const dueSection = (entries: readonly RegisterEntry[]): Section => ({
  title: 'Calibration',
  table: {
    heading: ['instrument', 'type', 'calibrated', 'due', ''],
    align: ['left', 'left', 'left', 'left', 'left'],
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

/** Checks on a standard, and studies; an instrument that has neither is not named. */
function knownSection(entries: readonly RegisterEntry[]): readonly Section[] {
  const rows = entries.flatMap(({ instrument: { id, study }, evidence }) => {
    const last = evidence.findLast(({ by }) => by === 'check');
    return [
      ...(last === undefined ? [] : [[id, last.day, evidenceText(last)]]),
      ...(study === undefined ? [] : [[id, '', `repeats as the study ${study.name} found`]]),
    ];
  });
  return rows.length === 0
    ? []
    : [
        {
          title: 'Last checks, and studies',
          table: { heading: ['instrument', 'day', ''], align: ['left', 'left', 'left'], rows },
        },
      ];
}

function useSection({ entries, undecided }: Register): Section {
  const used = entries.filter(({ places, joints }) => places + joints > 0);
  return {
    title: 'In use',
    table: {
      heading: ['instrument', 'places', 'joints', 'undecided', 'share of the doubt'],
      align: ['left', 'right', 'right', 'right', 'right'],
      rows: used.map((each) => [
        each.instrument.id,
        String(each.places),
        String(each.joints),
        String(each.undecided),
        undecided.length === 0 ? '' : `${Math.round(100 * each.share)} %`,
      ]),
    },
  };
}

function undecidedSection({ undecided, verdicts }: Register): readonly Section[] {
  if (undecided.length === 0) return [];
  return [
    {
      title: `Undecided: ${undecided.length} of ${plural(verdicts, 'verdict')}`,
      table: {
        heading: ['engine', 'what', 'doubt', 'if it reads the same'],
        align: ['left', 'left', 'left', 'left'],
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
