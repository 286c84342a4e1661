import type { Engine } from '../../documents/assemble.ts';
import type { Job } from '../../plan/work/job.ts';
import type { Unmeasured } from '../../plan/work/measuring/unmeasured.ts';
import { placesText } from '../../plan/work/placesText.ts';

/** Why figures are to be measured. */
export const measureLines = ({ rows, unmeasured = [] }: Job, engine: Engine): readonly string[] => [
  ...(rows.length === 0 ? [] : [MISSING]),
  ...unmeasuredTexts(unmeasured, engine),
];

const MISSING = 'no value; where one was left out on purpose, write why: { value: ~, note: … }';

/** `with limits, and not measured: crankshaft end play; rod housing bore 1 to 6`, and `crankshaft crack test: crankpins machined, and no test since`. */
export function unmeasuredTexts(unmeasured: readonly Unmeasured[], engine: WithLayout): readonly string[] {
  const names = unmeasured.flatMap((each) =>
    each.askedBy === undefined ? [unmeasuredName(each, engine)] : [],
  );
  return [
    ...(names.length === 0 ? [] : [`with limits, and not measured: ${names.join('; ')}`]),
    ...unmeasured.flatMap(({ characteristic, askedBy }) =>
      askedBy === undefined ? [] : [`${characteristic.label}: ${askedBy}, and no test since`],
    ),
  ];
}

export const unmeasuredName = (
  { characteristic: { label }, ended }: Unmeasured,
  { document: { layout } }: WithLayout,
): string => [label, placesText(ended, layout)].filter(Boolean).join(' ');

type WithLayout = Pick<Engine, 'document'>;
