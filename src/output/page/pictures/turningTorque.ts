import type { Element } from '../element.ts';
import { type Described, dot, frame, line, polyline, scale, words } from './marks.ts';

/** What it takes to turn the engine after each step of its assembly, in the order of fitting. */
export interface TurningTorquePicture extends Described {
  readonly kind: 'turning torque';
  readonly unit: string;
  readonly steps: readonly {
    readonly name: string;
    readonly torque: number;
    readonly text: string;
    /** How much it rose by, where that stands out. */
    readonly jump: string | undefined;
    readonly limit: { readonly value: number; readonly text: string } | undefined;
  }[];
}

const STEP = 74;
const TOP = 20;
const BOTTOM = 104;
const LEFT = 14;
const HEIGHT = 138;

type Limit = TurningTorquePicture['steps'][number]['limit'];

/** Each step may have a limit of its own: it is named where it is another than that of the step before. */
const limitMarks = (limit: NonNullable<Limit>, before: Limit, x: number, y: number): readonly Element[] => [
  line('wear-limit', x - STEP / 2, y, x + STEP / 2, y),
  ...(before?.text === limit.text ? [] : [words('figure', x - STEP / 2, y - 4, 'start', limit.text)]),
];

export function drawTurningTorque(picture: TurningTorquePicture): Element {
  const { steps, unit } = picture;
  const most = Math.max(0, ...steps.flatMap(({ torque, limit }) => [torque, limit?.value ?? 0]));
  const y = scale(0, most, BOTTOM, TOP);
  const x = (index: number): number => LEFT + STEP * (index + 0.5);
  const width = LEFT * 2 + STEP * Math.max(1, steps.length);
  return frame(
    'turning-torque',
    picture,
    { width, height: HEIGHT },
    line('axis', LEFT, BOTTOM, width - LEFT, BOTTOM),
    ...steps.flatMap(({ limit }, index) =>
      limit === undefined ? [] : limitMarks(limit, steps[index - 1]?.limit, x(index), y(limit.value)),
    ),
    polyline(
      'course',
      steps.map(({ torque }, index) => [x(index), y(torque)] as const),
    ),
    ...steps.flatMap(({ name, torque, text, jump }, index) => [
      dot(jump === undefined ? 'reading' : 'reading jump', x(index), y(torque), jump === undefined ? 3 : 5),
      words(
        'figure',
        x(index) + 6,
        y(torque) + 12,
        'start',
        jump === undefined ? text : `${text}, rose ${jump}`,
      ),
      words('name', x(index), BOTTOM + 13, 'middle', name),
    ]),
    words('name', LEFT, HEIGHT - 5, 'start', `turning torque, ${unit}, after each step`),
  );
}
