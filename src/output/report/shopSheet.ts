import type { EngineReport, StateReport } from '../../checks/judge/report.ts';
import { closingOf } from '../../plan/closing/closing.ts';
import { openTexts } from '../../plan/closing/openTexts.ts';
import { answerText } from '../state/answerText.ts';
import { boardFact, factsOf, type Origin } from './facts.ts';
import type { Links } from './links.ts';
import { filmSection } from './sections/filmSection.ts';
import { measureSections } from './sections/measureSections.ts';
import { findingsSection, recordSections } from './sections/recordSections.ts';
import { tighteningSections } from './sections/tighteningSection.ts';
import { trendSection } from './sections/trendSection.ts';
import { everyReason, items, type Sheet, section } from './sheet.ts';
import { statusOf } from './status.ts';

export interface ShopOptions {
  readonly links: Links;
  readonly withCustomer: boolean;
}

/** All that is known of an engine, for the shop's wall and its files. */
export function shopSheet(
  report: EngineReport,
  state: StateReport,
  origin: Origin,
  { links, withCustomer }: ShopOptions,
): Sheet {
  const closing = closingOf(report, state);
  const reasons = openTexts(closing, report);
  const status = statusOf(report.engine, state, closing);
  return {
    title: report.engine.document.name,
    about: 'build sheet',
    facts: [...factsOf(report, state, 'shop', origin, withCustomer), ...boardFact(links)],
    status,
    verdict: answerText(state, report.followUps),
    reasons,
    sections: [
      ...everyReason(reasons),
      ...measureSections(report, state),
      ...tighteningSections(report, state),
      ...trendSection(report, state),
      ...filmSection(report, state),
      ...findingsSection(state),
      ...section('First start and running in', items('text', [BY_HAND]), items('blanks', BLANKS)),
      ...recordSections(report, state, links),
      ...section('Release', items('blanks', ['released by', 'date and signature'])),
    ],
    cautions: CAUTIONS,
  };
}

const BY_HAND = "By the maker's manual, and written down as it is done:";

export const BLANKS: readonly string[] = [
  'oil primed, by',
  'oil pressure at the first start, and after how long',
  'running in: load and hours',
  'retorque: which joints, when, by',
  'first oil and filter change at',
  'old parts: kept where, until when',
];

export const CAUTIONS: readonly string[] = [
  "The engine maker's manual and a qualified engineer come first: the limits are the shop's own.",
  'Prime the oil system and bring up oil pressure before the first start.',
  'Keep clear of what turns, and of the plane of fan and flywheel; know how to stop the engine before it starts.',
  'Parts are heavy and springs are loaded: lift, support and relieve them as the manual says.',
];
