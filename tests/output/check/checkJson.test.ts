import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import { checkSchema } from '../../../src/output/schema/checkSchema.ts';
import { callHere } from '../../inProcess.ts';

const SHOP = {
  'shop.yaml': 'kind: shop\nunits: { length: in }\n',
  'engines/a/engine.yaml': 'kind: engine\nname: A\nlayout: { mains: 2, crankpins: 1, cylinders: 1 }\n',
  'engines/a/limits.yaml':
    'kind: limits\nsource: invented\nlimits: { main_bearing_clearance: { new: 0.0020 to 0.0038 } }\n',
  'engines/a/one.yaml':
    'kind: session\nstage: rebuild\ndate: 2026-02-03\nreadings:\n  - { measure: main_bearing_clearance, at: { 1: 0.0039 } }\n',
};

async function checkJson(
  files: Readonly<Record<string, string>>,
): Promise<{ output: unknown; exit: number }> {
  const root = mkdtempSync(join(tmpdir(), 'tenths-json-'));
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(join(root, path, '..'), { recursive: true });
    writeFileSync(join(root, path), text);
  }
  const { stdout, stderr, exitCode } = await callHere(['check', '--format', 'json'], { cwd: root });
  return { output: JSON.parse(stdout + stderr), exit: exitCode };
}

describe('check --format json', () => {
  const validate = new Ajv({ allErrors: true }).compile(checkSchema());

  it('is as its schema says, and its exit is the exit code', async () => {
    const { output, exit } = await checkJson(SHOP);
    expect(validate(output), JSON.stringify(validate.errors)).toBe(true);
    expect(output).toMatchObject({
      exit: 1,
      engines: [{ name: 'A', state: { counts: { out: 1, missing: 1 } } }],
    });
    expect(exit).toBe(1);
  });

  it('is as its schema says when a document cannot be trusted', async () => {
    const { output, exit } = await checkJson({ ...SHOP, 'engines/a/two.yaml': 'kind: sesion\n' });
    expect(validate(output), JSON.stringify(validate.errors)).toBe(true);
    expect(output).toMatchObject({
      exit: 2,
      diagnostics: [{ code: 'document/kind', place: { line: 1, column: 7 } }],
    });
    expect(exit).toBe(2);
  });

  it('is as its schema says of what was tightened', async () => {
    const { output } = await checkJson({
      ...SHOP,
      'engines/a/torque/main-caps.yaml':
        'kind: torque\njoint: main caps\nfasteners: { names: [1L, 1R] }\npasses: [{ to: 40 N m }]\nsource: invented\n',
      'engines/a/two.yaml':
        'kind: session\nstage: rebuild\ndate: 2026-02-04\ntightened: [{ sequence: main-caps, fasteners: reused }]\n',
    });
    expect(validate(output), JSON.stringify(validate.errors)).toBe(true);
    expect(output).toMatchObject({
      engines: [
        {
          state: {
            run: ['engines/a/one.yaml', 'engines/a/two.yaml'],
            tightened: [{ sequence: 'main-caps', joint: 'main caps', fasteners: 'reused', passes: null }],
          },
        },
      ],
    });
  });

  it('is as its schema says of a part that was made to another size, half by half', async () => {
    const { output } = await checkJson({
      ...SHOP,
      'engines/a/limits.yaml':
        'kind: limits\nsource: invented\nlimits:\n  main_journal_diameter: { new: 2.999 to 3.000 }\n  main_shell_thickness: { new: 0.0930 to 0.0935, sizes: { 0.010 under: { new: 0.0980 to 0.0985 } } }\n',
      'engines/a/one.yaml':
        'kind: session\nstage: rebuild\ndate: 2026-02-03\nmachined: [{ part: main journals, size: 0.010 under }]\nfitted: { main_shells: { at: { 2: { lower: 0.011 under } } } }\nreadings:\n  - { measure: main_journal_diameter, at: { 1: 2.9895, 2: 2.9895 } }\n  - { measure: main_shell_thickness, at: { 1: [0.0982, 0.0982], 2: [0.0982, 0.0987] } }\n',
    });
    expect(validate(output), JSON.stringify(validate.errors)).toBe(true);
    const journal = { half: null, graded: { size: '0.010 under', rule: 'moved', assumed: false } };
    expect(output).toMatchObject({
      engines: [
        {
          state: {
            counts: { ok: 5 },
            rows: [
              journal,
              journal,
              { half: null, graded: { size: '0.010 under', rule: 'stated', assumed: true } },
              { half: 'upper', graded: { size: '0.010 under', rule: 'stated' } },
              { half: 'lower', graded: { size: '0.011 under', rule: 'moved', assumed: false } },
            ],
          },
        },
      ],
    });
  });

  it('refuses an output without its findings, so the schema can fail', async () => {
    const { output } = await checkJson(SHOP);
    const broken = JSON.parse(JSON.stringify(output).replaceAll('"findings"', '"finding"'));
    expect(validate(broken)).toBe(false);
  });
});
