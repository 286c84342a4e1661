import type { EngineReport, StateReport } from '../../checks/judge/report.ts';
import { type Line, line } from '../escape/line.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { wrap } from '../terminal/wrap.ts';
import { answerText } from './answerText.ts';

/** `Reservoir pump no. 2: 2 out: rod bearing clearance 2 3; 61 ok`: one engine among others. */
export function answerLines(
  { engine, followUps }: EngineReport,
  state: StateReport,
  { paint, width }: TextStyle,
): readonly Line[] {
  const { name } = engine.document;
  const [first = '', ...more] = wrap(`${name}: ${answerText(state, followUps)}`, width - INDENT.length);
  const rest = more.map((each) => `${INDENT}${each}`);
  // The name stands out where it is not wrapped.
  return first.startsWith(name)
    ? [line`${paint.strong(name)}${first.slice(name.length)}`, ...rest]
    : [first, ...rest];
}

const INDENT = '  ';
