/** Documents of an invented shop, from plain data to the YAML that a person would have written. */

/** By position one reading as it is typed, or one at each station or direction. */
export type At = Readonly<Record<string, string | readonly string[]>>;

export interface Block {
  readonly measure: string;
  readonly with: string;
  readonly setWith?: string;
  /** Whose figures they are, where a machine shop sent them. */
  readonly from?: string;
  readonly at: At | string;
  /** `directions: [throw, square]`. */
  readonly along?: string;
}

export interface Session {
  readonly stage: string;
  readonly date: string;
  readonly by: string;
  readonly hours?: number;
  /** Lines before the readings and after them. */
  readonly before?: readonly string[];
  readonly readings: readonly Block[];
  readonly after?: readonly string[];
}

export interface EngineSheet {
  readonly about: string;
  readonly name: string;
  /** Where they are not the shop's. */
  readonly units?: string;
  readonly layout: string;
  readonly sizes: string;
  readonly job: string;
}

const lines = (...all: readonly string[]): string => `${all.join('\n')}\n`;

export const engineText = ({ about, name, units, layout, sizes, job }: EngineSheet): string =>
  lines(
    `# An invented engine: ${about}.`,
    'kind: engine',
    `name: ${name}`,
    ...(units === undefined ? [] : [`units: { ${units} }`]),
    `layout: { ${layout} }`,
    `sizes: { ${sizes} }`,
    `job: { ${job} }`,
  );

export const sessionText = ({ stage, date, by, hours, before, readings, after }: Session): string =>
  lines(
    '# Invented readings of an invented engine.',
    'kind: session',
    `stage: ${stage}`,
    `date: ${date}`,
    `by: ${by}`,
    ...(hours === undefined ? [] : [`hours: ${hours}`]),
    ...(before ?? []),
    ...(readings.length === 0
      ? ['readings: []']
      : ['readings:', ...readings.map((each) => `  - ${blockText(each)}`)]),
    ...(after ?? []),
  );

export const limitsText = (about: string, limits: readonly string[], more: readonly string[] = []): string =>
  lines(
    `# Invented: ${about}`,
    'kind: limits',
    "source: Invented for this example. Use the engine maker's manual.",
    ...more,
    'limits:',
    ...limits.map((each) => `  ${each}`),
  );

export function blockText({ measure, with: gauge, setWith, from, at, along }: Block): string {
  const where =
    typeof at === 'string' ? `value: ${at}` : `at: { ${Object.entries(at).map(positionText).join(', ')} }`;
  const parts = [`measure: ${measure}`, `with: ${gauge}`];
  if (setWith !== undefined) parts.push(`set_with: ${setWith}`);
  if (from !== undefined) parts.push(`from: ${from}`);
  return `{ ${[...parts, where, ...(along === undefined ? [] : [along])].join(', ')} }`;
}

const positionText = ([name, typed]: [string, string | readonly string[]]): string =>
  `${name}: ${typeof typed === 'string' ? typed : `[${typed.join(', ')}]`}`;

/** `1: …, 2: …`, in the order of the positions. */
export const inTurn = (typed: readonly (string | readonly string[])[]): At =>
  Object.fromEntries(typed.map((each, index) => [String(index + 1), each]));
