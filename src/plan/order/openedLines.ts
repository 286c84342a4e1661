import type { TorqueDocument } from '../../documents/tightening/torque.ts';
import type { PlanContext } from '../work/context.ts';
import { sundriesLeft } from './opened.ts';
import type { OrderLine } from './orderLine.ts';

/** What an opened engine takes whatever was found, until a session says that it is in. */
export const openedLines = (context: PlanContext): readonly OrderLine[] => [
  ...fastenerLines(context),
  ...sundriesLeft(context).map(sundryLine),
];

const fastenerLines = (context: PlanContext): readonly OrderLine[] =>
  context.engine.sequences
    .filter((document) => takesNewFasteners(document, context))
    .map(({ joint: { sequence, thread, reuse }, name }) => ({
      what: `${sequence.joint}: bolts`,
      code: undefined,
      size: thread?.designation ?? '',
      count: sequence.order.length,
      onShelf: 0,
      when: 'now',
      for: reuse === 'once' ? `${name}: used once` : `${name}: turned by an angle`,
    }));

/** Fasteners that are used once, and those that are turned by an angle unless their maker lets them be used again. */
export function takesNewFasteners(document: TorqueDocument, context: PlanContext): boolean {
  const { reuse, sequence } = document.joint;
  const isTurned = sequence.passes.some(({ action }) => action.kind === 'turn');
  return (reuse === 'once' || (isTurned && reuse !== 'allowed')) && !areNewIn(document, context);
}

/** A trial assembly comes apart again, and takes its bolts along. */
const areNewIn = (joint: TorqueDocument, { state }: PlanContext): boolean =>
  state.run.some(
    ({ stage, tightened }) =>
      stage === 'rebuild' &&
      tightened.some(({ document, fasteners }) => document === joint && fasteners === 'new'),
  );

const sundryLine = (what: string): OrderLine => ({
  what,
  code: undefined,
  size: '',
  count: 1,
  onShelf: 0,
  when: 'now',
  for: 'opened engine',
});
