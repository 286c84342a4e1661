import type { Family } from './family.ts';
import type { Part, Sized } from './part.ts';

interface Named {
  readonly plural?: string;
  readonly also?: readonly string[];
  readonly material?: readonly string[];
  readonly from?: readonly string[];
  readonly carries?: readonly string[];
  readonly sized?: Sized;
  readonly runsOn?: string;
  readonly calledBy?: Family;
  readonly ofOnePieceWith?: string;
  readonly boredInto?: string;
  readonly boughtAs?: string;
  readonly isFastener?: true;
}

/** A part with what is usual where nothing is said of it. */
export const part = (id: string, label: string, family: Family, named: Named): Part => ({
  id,
  label,
  plural: named.plural ?? `${label}s`,
  also: named.also ?? [],
  family,
  material: named.material ?? [],
  assembledFrom: [...(named.from ?? []), ...(named.carries ?? [])],
  carries: named.carries ?? [],
  ...(named.runsOn === undefined ? {} : { runsOn: named.runsOn }),
  ...(named.calledBy === undefined ? {} : { calledBy: named.calledBy }),
  ...(named.ofOnePieceWith === undefined ? {} : { ofOnePieceWith: named.ofOnePieceWith }),
  ...(named.boredInto === undefined ? {} : { boredInto: named.boredInto }),
  ...(named.boughtAs === undefined ? {} : { boughtAs: named.boughtAs }),
  ...(named.isFastener === undefined ? {} : { isFastener: named.isFastener }),
  ...(named.sized === undefined ? {} : { sized: named.sized }),
});
