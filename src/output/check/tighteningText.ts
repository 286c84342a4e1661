import type { TighteningLog } from '../../documents/tightening/tightened.ts';
import { wrap } from '../terminal/wrap.ts';

/** A line for each joint that was tightened: `main caps tightened (main-caps): 3 of 3 passes logged, with beam-60`. */
export const tighteningLines = (tightened: readonly TighteningLog[], width: number): readonly string[] =>
  tightened.flatMap((log) => wrap(lineOf(log), width - INDENT.length).map((line) => `${INDENT}${line}`));

const INDENT = '  ';

function lineOf({ document, with: wrench, passes, fasteners }: TighteningLog): string {
  const asked = document.joint.sequence.passes.length;
  const plural = asked === 1 ? '' : 'es';
  const count = passes?.length ?? 0;
  // More than were asked for are no share of them.
  const logged =
    count > asked
      ? `${count} passes logged, ${asked} asked for`
      : `${count === 0 ? 'none' : count} of ${asked} pass${plural} logged`;
  const parts = [
    logged,
    wrench === undefined ? undefined : `with ${wrench.name}`,
    fasteners && `${fasteners} fasteners`,
  ];
  const said = parts.filter((each) => each !== undefined).join(', ');
  return `${document.joint.sequence.joint} tightened (${document.name}): ${said}`;
}
