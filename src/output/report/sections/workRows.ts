import type { SessionDocument } from '../../../documents/session/session.ts';
import { shortName } from '../../../layout/naming.ts';

export const workRows = (run: readonly SessionDocument[]): readonly (readonly string[])[] =>
  run.flatMap(({ work, stage, date }) => work.map((each) => [each.work, each.on.name, `${stage} ${date}`]));

/** The parts of the engine for whoever opens it next: what each is, its mark and its size. */
export const fittedRows = (run: readonly SessionDocument[]): readonly (readonly string[])[] =>
  run.flatMap(({ partChanges, stage, date }) =>
    partChanges.map(({ name, parts, how, condition, identity }) => [
      [name, placesIn(parts)].filter(Boolean).join(' '),
      [how, condition, [...identity.values()].join(' ')].filter(Boolean).join(', '),
      `${stage} ${date}`,
    ]),
  );

const placesIn = (parts: SessionDocument['partChanges'][number]['parts']): string =>
  [...new Set(parts.flatMap(({ positions }) => positions.map(shortName)))].filter(Boolean).join(', ');
