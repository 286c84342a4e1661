import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { bundled } from './bundled.js';
import { added, medians } from './runs.js';
import { writeShop } from './shop.js';
import { CHECKED, runsWarm, TENTHS } from './startUp.js';
import { validate, validatorCalls } from './validator.js';

const here = (name) => fileURLToPath(new URL(name, import.meta.url));
export const PEAK = pathToFileURL(here('peak.js')).href;

/** A shop of 1,000 engines beside parsing its documents, and its memory beside that of 100. */
export async function manyEngines({ scratch, longRounds: rounds, scale, timed, told }) {
  const parser = await bundled(scratch, 'parse');
  const threads = Math.min(4, availableParallelism());
  const [few, many] = [100, 1000].map((engines) => Math.ceil(engines * scale));
  const folder = (engines) => join(scratch, String(engines));
  for (const engines of [few, many]) writeShop(folder(engines), engines);
  const check = (engines, ...options) => [TENTHS, 'check', folder(engines), ...options];
  const anew = (engines) =>
    told(['--import', PEAK, ...check(engines, '--format', 'json', '--no-cache')], { pipe: 3, ...CHECKED });
  const calls = validatorCalls(folder(many));
  const validators = () => added(Object.values(calls).map((words) => validate(words, { timed })));
  const measured = medians(
    {
      parse: () => told([parser, folder(many)]),
      thousandFloor: () => told([parser, folder(many), String(threads)]),
      hundred: () => anew(few),
      thousand: () => anew(many),
      ...(calls === undefined ? {} : { validThousand: validators }),
    },
    rounds,
  );
  const kept = runsWarm(
    {
      again: () => timed(check(many), CHECKED),
      againJson: () => timed(check(many, '--format', 'json'), CHECKED),
      againFloor: () => timed([here('readAll.js'), folder(many)]),
    },
    rounds,
  );
  const row = (name, what, against) => ({ [name]: { what, against, ...measured[name], ...kept[name] } });
  const peak = (name, of, what, against) => ({ [name]: { what, against, wall: measured[of].kib } });
  return {
    ...row('parse', 'parsing the documents of 1,000 engines', 'parse'),
    ...row('thousand', `check of 1,000 engines as JSON, ${threads} threads`, 'parse'),
    ...row('thousandFloor', `  floor: parsing alone, ${threads} threads`, 'parse'),
    ...row('again', '  again, nothing changed, as text', 'parse'),
    ...row('againJson', '  again, nothing changed, as JSON', 'parse'),
    ...row('againFloor', '  floor: node, reading and a digest of each document', 'parse'),
    ...(calls === undefined ? {} : row('validThousand', 'schemas alone by ajv-cli, 1,000 engines', 'parse')),
    ...row('hundred', 'check of 100 engines as JSON'),
    ...peak('hundredPeak', 'hundred', 'peak memory of 100 engines'),
    ...peak('thousandPeak', 'thousand', 'peak memory of 1,000 engines', 'hundredPeak'),
  };
}
