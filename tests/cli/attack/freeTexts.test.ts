import { expect, it } from 'vitest';
import { KINDS } from '../../../src/documents/schema/kinds.ts';
import { documentsByPath, freePaths } from './freeTexts.ts';
import { attackedPaths, FAULTY_SHOP, schemas } from './madeDocuments.ts';
import { SOUND_SHOP } from './soundShop.ts';

it.each(KINDS)('every free text of a document of kind %s is attacked', (kind) => {
  const attacked = new Set(
    [SOUND_SHOP, FAULTY_SHOP].flatMap((shop) => Object.values(shop)).flatMap(attackedPaths),
  );
  const free = freePaths(schemas[kind], kind);
  expect(free).toContain(`${kind}.note`);
  expect([...free].filter((path) => !attacked.has(path))).toEqual([]);
});

it.each(KINDS)('a document of kind %s is made for each of its texts', (kind) => {
  for (const [path, document] of documentsByPath(schemas[kind], kind)) {
    expect(attackedPaths(document)).toContain(path);
  }
});

it('texts that are free are values of any wording, and keys that are names', () => {
  const free = [...freePaths(schemas.engine, 'engine'), ...freePaths(schemas.session, 'session')];
  expect(free).toEqual(
    expect.arrayContaining(['engine.labels.main.*', 'engine.labels.main.<name>', 'engine.job.customer']),
  );
  for (const bound of ['session.stage', 'session.date', 'session.readings[].measure', 'session.hours']) {
    expect(free).not.toContain(bound);
  }
});
