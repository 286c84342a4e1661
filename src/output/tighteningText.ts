import type { SessionDocument } from '../documents/session.ts';
import type { TighteningLog } from '../documents/tightened.ts';
import { visible } from './visible.ts';
import { wrap } from './wrap.ts';

/** A line for each joint that was tightened: `main caps tightened with beam-60 (main-caps): 3 passes logged`. */
export const tighteningLines = ({ tightened }: SessionDocument, width: number): readonly string[] =>
  tightened.flatMap((log) => wrap(lineOf(log), width - INDENT.length).map((line) => `${INDENT}${line}`));

const INDENT = '  ';

function lineOf({ document, with: wrench, passes, fasteners }: TighteningLog): string {
  const count = passes?.length ?? 0;
  const logged = count === 0 ? 'no pass logged' : `${count} pass${count === 1 ? '' : 'es'} logged`;
  const parts = [
    logged,
    wrench === undefined ? undefined : `with ${wrench.name}`,
    fasteners && `${fasteners} fasteners`,
  ];
  const said = parts.filter((each) => each !== undefined).join(', ');
  return visible(`${document.joint.sequence.joint} tightened (${document.name}): ${said}`);
}
