import type { CardPass, TighteningCard } from '../../torque/card.ts';
import type { Joint } from '../../torque/joint.ts';
import { type NamedCommit, revisionWords } from '../diff/revision.ts';
import {
  assumptionWords,
  boltsLine,
  frictionWords,
  type LoadRow,
  loadRows,
  placesText,
  toolsLine,
} from './cardWords.ts';
import { type PassLine, passLines } from './torqueWords.ts';

/** Where a card comes from: said in its heading. */
export interface CardOrigin {
  readonly engine: string;
  readonly path: string;
  /** The commit that it was read from; undefined for the working tree. */
  readonly revision?: NamedCommit | undefined;
}

/** What a tightening card says: every format that people read is written from it. */
export interface CardView {
  readonly title: string;
  readonly about: string;
  /** Fasteners, tools, and what is noted of the joint. */
  readonly notes: readonly string[];
  /** To be drawn as wide as the page is. */
  readonly joint: Joint;
  readonly sections: readonly CardSection[];
  readonly source: string;
}

export type CardSection =
  | { readonly kind: 'boxes' | 'items' | 'doubts'; readonly title: string; readonly texts: readonly string[] }
  | { readonly kind: 'passes'; readonly title: string; readonly passes: readonly PassView[] }
  | LoadSection;

export interface PassView {
  readonly pass: string;
  readonly lines: readonly PassLine[];
  /** Which fasteners, where not all of them, and what is noted of the pass. */
  readonly asides: readonly string[];
}

/** Each pass in kilonewtons and pounds, then what the figures take for granted. */
export interface LoadSection {
  readonly kind: 'loads';
  readonly title: string;
  readonly rows: readonly LoadRow[];
  readonly hasPercent: boolean;
  readonly texts: readonly string[];
}

export function cardView(card: TighteningCard, { engine, path, revision }: CardOrigin): CardView {
  const { joint } = card;
  const { sequence } = joint;
  return {
    title: `${sequence.joint}: tightening card`,
    about: [
      engine,
      path,
      ...(revision === undefined ? [] : [`as it stood at ${revisionWords(revision)}`]),
    ].join(', '),
    notes: [boltsLine(joint), toolsLine(card), joint.note].filter((each) => each !== undefined),
    joint,
    sections: [
      ...textSection('boxes', 'confirm before', sequence.before),
      { kind: 'passes', title: 'passes', passes: card.passes.map((each) => passView(each, joint)) },
      ...textSection('boxes', 'confirm after', sequence.after),
      ...loadSection(card),
      ...textSection('doubts', 'doubtful', card.doubts),
      ...textSection(
        'items',
        'caution',
        card.cautions.map(({ text }) => text),
      ),
    ],
    source: `source: ${joint.source}`,
  };
}

const textSection = (
  kind: 'boxes' | 'items' | 'doubts',
  title: string,
  texts: readonly string[],
): readonly CardSection[] => (texts.length === 0 ? [] : [{ kind, title, texts }]);

const passView = (pass: CardPass, { torqueUnit, lengthUnit }: Joint): PassView => ({
  pass: `${pass.pass}`,
  lines: passLines(pass, { torque: torqueUnit, length: lengthUnit }),
  asides: [placesText(pass), pass.note].filter((each) => each !== undefined),
});

function loadSection({ passes, joint, assumptions, comparisons }: TighteningCard): readonly LoadSection[] {
  const rows = loadRows(passes, joint.torqueUnit);
  const texts =
    rows.length === 0
      ? joint.lacking.map((each) => `none: ${each}`)
      : [...frictionWords(passes), ...joint.lacking, ...assumptionWords(assumptions), ...comparisons];
  if (rows.length + texts.length === 0) return [];
  const hasPercent = passes.some(({ load }) => load?.percent !== undefined);
  return [
    { kind: 'loads', title: 'expected clamp load of one fastener: an estimate', rows, hasPercent, texts },
  ];
}

/** Heads and cells of the loads, for a page. */
export const loadTable = ({ rows, hasPercent }: LoadSection) => ({
  heads: ['pass', 'load', 'between', ...(hasPercent ? ['of proof', 'at most'] : [])],
  cells: rows.map(({ passes, load, between, ofProof, atMost }) => [
    passes,
    load,
    between,
    ...(hasPercent ? [ofProof, atMost] : []),
  ]),
});
