import type { TighteningLog } from '../../../documents/tightening/tightened.ts';

/** `main caps tightened (main-caps): 3 of 3 passes logged, with beam-60`. */
export function tightenedText({ document, with: wrench, passes, fasteners }: TighteningLog): string {
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
