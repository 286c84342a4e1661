import { ENGINE, type Family, familyOf } from '../../layout/family.ts';

/** A part that is made in service sizes. */
export interface SizedPart {
  readonly id: string;
  readonly label: string;
  readonly family: Family;
  /** A pair of shells: its halves may differ, and what is over standard is its outside. */
  readonly isShell?: true;
  /** Ground smaller or bored larger when it is worn. */
  readonly made?: 'under' | 'over';
  /** What it is called in `machined:` and `replaced:`, and the keys in `fitted:` that state its size. */
  readonly names: readonly string[];
  readonly keys: readonly string[];
}

const part = (
  id: string,
  family: Family,
  names: readonly string[],
  keys: readonly string[],
  more: Pick<SizedPart, 'isShell' | 'made'> = {},
): SizedPart => ({
  id,
  label: id.replaceAll('_', ' '),
  family,
  names: [id, `${id}s`, ...names],
  keys: [...keys, `${id}s`, id],
  ...more,
});

const MAIN = familyOf('main');
const CRANKPIN = familyOf('crankpin');
const CYLINDER = familyOf('cylinder');

export const SIZED_PARTS: readonly SizedPart[] = [
  part('main_journal', MAIN, ['crankshaft', 'mains'], ['crankshaft', 'crankshaft main'], { made: 'under' }),
  part('main_shell', MAIN, ['main_bearing', 'main_bearings', 'shells'], [], {
    made: 'under',
    isShell: true,
  }),
  part(
    'crankpin',
    CRANKPIN,
    ['crankshaft', 'rod_journal', 'rod_journals'],
    ['crankshaft', 'crankshaft crankpin'],
    { made: 'under' },
  ),
  part('rod_shell', CYLINDER, ['rod_bearing', 'rod_bearings', 'shells'], [], {
    made: 'under',
    isShell: true,
  }),
  part('cylinder', CYLINDER, ['bores', 'bore', 'block'], ['block', 'block cylinder'], { made: 'over' }),
  part('piston', CYLINDER, [], [], { made: 'over' }),
  part('ring', CYLINDER, ['piston_ring', 'piston_rings'], []),
  part('thrust_washer', ENGINE, [], []),
  part('thrust_journal', ENGINE, [], ['crankshaft thrust']),
];

/** Parts of one fit, the one that is machined first: where one is not said to be of some size it is made for the others. */
export const FITS: readonly (readonly string[])[] = [
  ['main_journal', 'main_shell'],
  ['crankpin', 'rod_shell'],
  ['cylinder', 'piston', 'ring'],
];
