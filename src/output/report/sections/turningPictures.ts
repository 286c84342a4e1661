import { limitText, printingOf, readingText } from '../../../checks/findings/readings.ts';
import { isTurningTorque } from '../../../checks/findings/turning.ts';
import { type EngineReport, type StateReport, unitsFor } from '../../../checks/judge/report.ts';
import type { Row } from '../../../checks/judge/row.ts';
import { numberIn } from '../../check/rowJson.ts';
import type { PicturesBlock } from '../sheet.ts';

/** The torque after each step of the assembly, with the jumps that the check found. */
export function turningPictures(
  rows: readonly Row[],
  { engine }: EngineReport,
  { findings }: StateReport,
): readonly PicturesBlock[] {
  const [first] = rows;
  if (first === undefined || !isTurningTorque(first) || rows.length < 2) return [];
  const unitFor = unitsFor(engine);
  const printing = printingOf(first, unitFor);
  const jumps = new Map(
    findings.flatMap(({ code, position, message }) =>
      code === 'turning/jump' && position !== undefined ? [[position, message] as const] : [],
    ),
  );
  const steps = rows.flatMap((row) => {
    const [judged] = row.routes;
    if (judged === undefined) return [];
    const jump = jumps.get(row.position.name);
    const { max } = row.judgement.deciding;
    return [
      {
        name: row.position.name,
        torque: numberIn(judged.mean, printing.unit),
        text: readingText(judged, printing),
        jump: jump === undefined ? undefined : riseIn(jump),
        limit: max && {
          value: numberIn(max.amount, printing.unit),
          text: limitText('max', max, printing),
        },
      },
    ];
  });
  const title = `${first.characteristic.label} after each step`;
  const description =
    jumps.size === 0 ? 'no step rises more than the others' : [...jumps.values()].join('; ');
  return [
    {
      kind: 'pictures',
      pictures: [
        {
          kind: 'turning torque',
          title,
          description,
          unit: printing.unit.name,
          steps,
        },
      ],
    },
  ];
}

/** `turning torque rose by 0.9 lbf ft with piston 3`: the figure that the finding gives. */
const riseIn = (message: string): string => /rose by (\S+)/.exec(message)?.[1] ?? '';
