import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { callHere } from '../../inProcess.ts';

const FILES: Readonly<Record<string, string>> = {
  'shop.yaml': 'kind: shop\nunits: { length: in, torque: lbf ft }\n',
  'pump/engine.yaml': 'kind: engine\nname: Pump\nlayout: { mains: 1 }\n',
  'pump/torque/main-caps.yaml':
    'kind: torque\njoint: bearing caps\nfasteners: { count: 2, thread: 9/16-12, grade: 8 }\nlubricant: engine oil\npasses: [{ to: 110 }]\nsource: Invented.\n',
  'pump/torque/rod-caps.yaml':
    'kind: torque\njoint: big ends\nfasteners: { count: 2, thread: 1/4-20, grade: 2 }\nlubricant: engine oil\npasses: [{ to: 30 }]\nsource: Invented.\n',
  'pump/torque/studs.yaml':
    'kind: torque\njoint: studs\nfasteners: { count: 2 }\npasses: [{ to: 30 }]\nwrench: { length: 18 }\nadapter: { length: 6, angle: 90 deg }\nsource: Invented.\n',
  'other/engine.yaml': 'kind: engine\nname: Other\nlayout: { mains: 1 }\n',
  'other/head.yaml':
    'kind: torque\njoint: head\nfasteners: { count: 2 }\npasses: [{ to: 30 mm }]\nsource: Invented.\n',
};

let shop = '';
beforeAll(() => {
  shop = mkdtempSync(join(tmpdir(), 'card-'));
  for (const [name, text] of Object.entries(FILES)) {
    mkdirSync(dirname(join(shop, name)), { recursive: true });
    writeFileSync(join(shop, name), text);
  }
});
afterAll(() => rmSync(shop, { recursive: true }));

async function told(words: readonly string[], folder = 'pump') {
  const { stdout, stderr, exitCode } = await callHere(['torque', ...words], { cwd: join(shop, folder) });
  return { exit: exitCode, out: stdout, err: stderr };
}

describe('the sequence is found', () => {
  test.each([
    ['by its file', ['main-caps']],
    ['by a part of its file', ['main']],
    ['by its joint', ['bearing caps']],
    ['by a part of its joint', ['bearing']],
  ])('%s', async (_, words) => {
    const { exit, out } = await told(words);
    expect([exit, out.split('\n')[0]]).toEqual([0, 'bearing caps: tightening card']);
  });

  test('in an engine named from elsewhere', async () => {
    const { exit, out } = await told(['main', 'pump'], '.');
    expect([exit, out.split('\n')[0]]).toEqual([0, 'bearing caps: tightening card']);
  });

  test('or, where a part of a name fits two, both are listed', async () => {
    expect(await told(['caps'])).toEqual({
      exit: 2,
      out: '',
      err: 'tenths: caps may be any of several sequences: main-caps, rod-caps\n        write more of the name\n',
    });
  });

  test('or, where none is known by the name, those there are', async () => {
    const { exit, err } = await told(['flywheel']);
    expect([exit, err]).toEqual([
      2,
      'tenths: Pump has no valid torque document flywheel\n        it has main-caps, rod-caps, studs\n',
    ]);
  });
});

describe('the call ends', () => {
  test('with 1 where a written torque is beyond proof', async () => {
    const { exit, out } = await told(['rod']);
    expect(exit).toBe(1);
    expect(out).toMatch(/doubtful\n {2}- pass 1: \d+ % of the proof load of 1\/4-20 UNC/);
  });

  test('with 2 and the place where the document is wrong', async () => {
    const { exit, err } = await told(['head'], 'other');
    expect(exit).toBe(2);
    expect(err).toMatch(/head\.yaml:4:16: error document\/wrong-quantity/);
  });

  test.each([
    [
      'an adapter without the length of the wrench',
      ['main', '--adapter', '6in'],
      /length of the wrench, which is not known/,
    ],
    ['a weight for a length', ['main', '--wrench', '18kg'], /--wrench 18kg is not a length/],
    ['an angle without an adapter', ['main', '--adapter-angle', '90'], /--adapter-angle needs --adapter/],
    ['a wrench without a length', ['main', '--wrench', '0'], /the wrench must have a length/],
    [
      'an adapter back past the hand',
      ['main', '--wrench', '10', '--adapter', '12', '--adapter-angle', '180'],
      /reaches back to the hand/,
    ],
    ['a format that is none', ['main', '--format', 'pdf'], /Allowed choices are text, markdown, json/],
  ])('with 2 for %s', async (_, words, message) => {
    const { exit, out, err } = await told(words);
    expect([exit, out]).toEqual([2, '']);
    expect(err).toMatch(message);
  });
});

test('options stand over the document, plain lengths are in the units of the engine', async () => {
  const { out } = await told(['main', '--wrench', '18', '--adapter', '6in', '--run-on', '10']);
  expect(out).toContain('wrench 18 in with an adapter of 6 in straight on; run-on torque added: 10 lbf ft');
  expect(out).toMatch(/set wrench to +90 lbf ft +122 N m/);
});

test('the same in Markdown and in JSON', async () => {
  expect((await told(['main', '--format', 'markdown'])).out).toContain(
    '| 1 | tighten to | 110 lbf ft | 149 N m | ☐ |',
  );
  expect(JSON.parse((await told(['main', '--format', 'json'])).out)).toMatchObject({
    format: 'tenths.torque',
    version: 1,
    joint: 'bearing caps',
  });
});

test('an adapter of another length stays at the angle of the document', async () => {
  const { out } = await told(['studs', '--adapter', '4in']);
  expect(out).toContain('with an adapter of 4 in at 90 deg');
});
