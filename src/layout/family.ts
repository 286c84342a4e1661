import { type Axis, HOLDER } from './axis.ts';

/** Like positions: the axes in the order in which a person says them, cylinder and then ring. There is one of each. */
export interface Family {
  readonly axes: readonly Axis[];
  /** As messages name it: `main`, `ring of a cylinder`. */
  readonly name: string;
  /** There is but one: what is measured once an engine. */
  readonly isSingle: boolean;
  /** Each session names its positions itself, such as the steps of an assembly; a layout has none. */
  readonly isNamedBySession: boolean;
  /** The key under which a session says what was read there. */
  readonly writtenUnder: 'value' | 'after' | 'at';
}

const families = new Map<string, Family>();

/** The family of these axes; what is counted on each thing of another axis brings that axis. */
export function familyOf(...axes: readonly Axis[]): Family {
  const whole = [...new Set(axes.flatMap((axis) => [HOLDER[axis] ?? axis, axis]))];
  const key = whole.join();
  const known = families.get(key);
  if (known !== undefined) return known;
  const writtenUnder = key === 'engine' ? 'value' : key === 'step' ? 'after' : 'at';
  const family: Family = {
    axes: whole,
    name: whole.toReversed().join(' of a '),
    isSingle: writtenUnder === 'value',
    isNamedBySession: writtenUnder === 'after',
    writtenUnder,
  };
  families.set(key, family);
  return family;
}

/** What is measured once an engine has one position. */
export const ENGINE = familyOf('engine');

/** A vee has two banks, and what lies on a deck twice; an engine in line has one of it. */
export const BANK = familyOf('bank');

/** Steps of an assembly are named by each session; a layout has none. */
export const STEP = familyOf('step');
