import type { SessionDocument } from '../documents/session.ts';
import type { TighteningLog } from '../documents/tightened.ts';
import { visible } from './visible.ts';
import { wrap } from './wrap.ts';

/** A line for each joint that was tightened: `main caps tightened (main-caps): 3 of 3 passes logged, with beam-60`. */
export const tighteningLines = ({ tightened }: SessionDocument, width: number): readonly string[] =>
  tightened.flatMap((log) => wrap(lineOf(log), width - INDENT.length).map((line) => `${INDENT}${line}`));

const INDENT = '  ';

function lineOf({ document, with: wrench, passes, fasteners }: TighteningLog): string {
  const asked = document.joint.sequence.passes.length;
  const of = `of ${asked} pass${asked === 1 ? '' : 'es'}`;
  const logged = `${passes === undefined ? 'none' : passes.length} ${of} logged`;
  const parts = [
    logged,
    wrench === undefined ? undefined : `with ${wrench.name}`,
    fasteners && `${fasteners} fasteners`,
  ];
  const said = parts.filter((each) => each !== undefined).join(', ');
  return visible(`${document.joint.sequence.joint} tightened (${document.name}): ${said}`);
}
