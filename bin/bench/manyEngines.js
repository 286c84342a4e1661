import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { bundled } from './bundled.js';
import { added, median, medians } from './runs.js';
import { writeShop } from './shop.js';
import { CHECKED, runsWarm, TENTHS } from './startUp.js';
import { validate, validatorCalls } from './validator.js';

export const PEAK = pathToFileURL(fileURLToPath(new URL('peak.js', import.meta.url))).href;

/** A shop of 1,000 engines beside parsing its documents, and its memory beside that of 100. */
export async function manyEngines({ scratch, longRounds: rounds, timed, told }) {
  const parser = await bundled(scratch, 'parse');
  const folder = (engines) => join(scratch, String(engines));
  for (const engines of [100, 1000]) writeShop(folder(engines), engines);
  const again = (...options) => [TENTHS, 'check', folder(1000), ...options];
  const check = (engines) => [TENTHS, 'check', folder(engines), '--format', 'json', '--no-cache'];
  const calls = validatorCalls(folder(1000));
  const validators = () => added(Object.values(calls).map((words) => validate(words, { timed })));
  const measured = medians(
    {
      parse: () => told([parser, folder(1000)]),
      hundred: () => timed(check(100), CHECKED),
      thousand: () => timed(check(1000), CHECKED),
      ...(calls === undefined ? {} : { validThousand: validators }),
    },
    rounds,
  );
  const kept = runsWarm(
    {
      again: () => timed(again(), CHECKED),
      againJson: () => timed(again('--format', 'json'), CHECKED),
    },
    rounds,
  );
  const peak = (engines) =>
    median(
      Array.from(
        { length: rounds },
        () => told(['--import', PEAK, ...check(engines)], { pipe: 3, ...CHECKED }).kib,
      ),
    );
  const threads = Math.min(4, availableParallelism());
  const row = (name, what, against) => ({ [name]: { what, against, ...measured[name], ...kept[name] } });
  return {
    ...row('parse', 'parsing the documents of 1,000 engines'),
    ...row('thousand', `check of 1,000 engines as JSON, ${threads} threads`, 'parse'),
    ...row('again', '  again, nothing changed, as text', 'parse'),
    ...row('againJson', '  again, nothing changed, as JSON', 'parse'),
    ...(calls === undefined ? {} : row('validThousand', 'schemas alone by ajv-cli, 1,000 engines', 'parse')),
    ...row('hundred', 'check of 100 engines as JSON'),
    hundredPeak: { what: 'peak memory of 100 engines', wall: peak(100) },
    thousandPeak: { what: 'peak memory of 1,000 engines', against: 'hundredPeak', wall: peak(1000) },
  };
}
