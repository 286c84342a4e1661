import { existsSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { findingKinds } from '../src/checks/catalogue.ts';
import { DOCUMENT_CODES } from '../src/diagnostic/catalogue.ts';
import { carryOut, holds, inCopyOf, isUpdating, stepsOf, transcript } from './replay.ts';
import { cases, casesFolder, SESSION, sessionOf } from './transcripts.ts';

describe('every case goes as it is written down', () => {
  it.concurrent.each(cases)('%s', async (name) => {
    const written = sessionOf(name);
    const steps = await inCopyOf(join(casesFolder, name), (copy) =>
      carryOut(stepsOf(written), copy, 'always'),
    );
    expect(steps.length, 'no $ line').toBeGreaterThan(0);
    if (isUpdating) writeFileSync(join(casesFolder, name, SESSION), transcript(steps));
    else expect(transcript(steps)).toBe(written);
  });

  it('and no folder of documents lies there without a session', () => {
    const holders = readdirSync(casesFolder, { recursive: true, encoding: 'utf8' }).filter((name) =>
      /\.ya?ml$/.test(name),
    );
    const lonely = holders.filter((name) => !cases.some((each) => name.startsWith(`${each}/`)));
    expect(lonely).toEqual([]);
  });
});

describe('the cases are a catalogue', () => {
  const findings = findingKinds.map(({ code }) => [code, `findings/${code.replace('/', '-')}`] as const);
  const documents = Object.keys(DOCUMENT_CODES).map(
    (what) => [`document/${what}`, `documents/${what}`] as const,
  );

  it.each([...findings, ...documents])('%s has a case that shows it, and nothing else', (code, name) => {
    expect(cases).toContain(name);
    if (!isUpdating) expect(codesIn(sessionOf(name))).toEqual([code, ...(BRINGS[code] ?? [])].sort());
  });

  it.each(findingKinds.map((kind) => [kind.code, kind.example] as const))(
    'the example that explains %s is printed by its case',
    (code, example) => {
      expect(sessionOf(`findings/${code.replace('/', '-')}`)).toContain(example);
    },
  );

  it('every folder of findings and documents shows a code that exists', () => {
    const known: readonly string[] = [...findings, ...documents].map(([, name]) => name);
    const stray = ['findings', 'documents'].flatMap((area) =>
      readdirSync(join(casesFolder, area)).map((name) => `${area}/${name}`),
    );
    expect(stray.filter((name) => !known.includes(name))).toEqual([]);
  });
});

/** What cannot be shown alone. */
const BRINGS: Readonly<Record<string, readonly string[]>> = {
  // The error of an instrument that nobody registered is assumed, and that is said as well.
  'instrument/unknown': ['instrument/assumed'],
  // Limits closer together than the uncertainty have a value within it of one of them.
  'instrument/coarse': ['reading/marginal'],
  // A size is asked about where it is out.
  'reading/grade': ['reading/out'],
  // A concession bears on a value that is out; a follow-up, and what a concession leaves unsaid, on one that was accepted.
  'concession/exceeded': ['reading/out'],
  'concession/expired': ['reading/out'],
  'follow-up/open': ['reading/accepted'],
  'concession/unsigned': ['reading/accepted'],
  // Work is planned, and a yes given, for what is out.
  'plan/unagreed': ['reading/out'],
  'plan/unknown-work': ['reading/out'],
  'plan/other-work': ['reading/grade', 'reading/out'],
  'plan/released-open': ['reading/out'],
};

/** Codes of findings and diagnostics in what was printed, each once. */
function codesIn(session: string): readonly string[] {
  const areas = [...new Set([...findingKinds.map(({ code }) => code.split('/')[0]), 'document'])].join('|');
  const told = stepsOf(session).flatMap((step) => step.told);
  const found = told.flatMap((line) => [
    ...line.matchAll(new RegExp(`(?<![\\w/.-])(?:${areas})/[a-z-]+(?![\\w/.-])`, 'g')),
  ]);
  return [...new Set(found.map(([code]) => code))].sort();
}

describe('a replay', () => {
  it('reads back the transcript that it writes', () => {
    const text =
      '# What it shows.\n$ tenths check\nout\n\nmore\n! trouble\n[exit 1]\n\n$ tenths --version\n[exit 0]\n';
    expect(transcript(stepsOf(text))).toBe(text);
  });

  it('refuses lines that no command gives', () => {
    expect(() => stepsOf('out\n$ tenths check\n')).toThrow('no command gives this line: out');
    expect(() => stepsOf('$ tenths check\n[exit 0]\nmore\n')).toThrow('no command gives this line: more');
  });

  it('notices another exit code, another line and another stream', async () => {
    const told = stepsOf(
      '$ tenths --version\n0.0.0\n[exit 1]\n\n$ tenths check nowhere\nno stderr\n[exit 0]\n',
    );
    const steps = await inCopyOf(undefined, (copy) => carryOut(told, copy, 'always'));
    expect(steps[0]?.told).toEqual([expect.stringMatching(/^\d+\.\d+\.\d+$/), '[exit 0]']);
    expect(steps[1]?.told.at(0)).toMatch(/^! tenths: /);
    expect(steps[1]?.told.at(-1)).toBe('[exit 2]');
  });

  it('runs nothing but what a shop needs', async () => {
    await expect(carryOut(stepsOf('$ curl example.org\n'), '/', 'always')).rejects.toThrow(
      'does not run this',
    );
  });

  it.each([
    [['a', '…', 'd'], ['a', 'b', 'c', 'd'], true],
    [['a', '…', 'd'], ['a', 'd'], true],
    [['…'], [], true],
    [['a', '…'], ['a', 'b'], true],
    [['a', '…', 'd'], ['a', 'b'], false],
    [['a'], ['a', 'b'], false],
  ])('takes … for any lines: %j of %j', (told, lines, expected) => {
    expect(holds(told, lines)).toBe(expected);
  });

  it('leaves the folder of a case as it is', async () => {
    const place = await inCopyOf(undefined, async (copy) => {
      expect(statSync(copy).isDirectory()).toBe(true);
      return copy;
    });
    expect(existsSync(place)).toBe(false);
  });
});
