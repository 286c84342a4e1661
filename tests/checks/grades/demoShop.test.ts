import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { type Files, reportOf } from '../../shopOf.ts';

const examples = fileURLToPath(new URL('../../../examples/', import.meta.url));

/** The documents of one engine of the example shop, and of the shop. */
function filesOf(engine: string): Files {
  const own = readdirSync(`${examples}engines/${engine}`, { recursive: true, encoding: 'utf8' });
  const paths = [
    'shop.yaml',
    'instruments.yaml',
    ...own.filter((name) => name.endsWith('.yaml')).map((name) => `engines/${engine}/${name}`),
  ];
  return Object.fromEntries(paths.map((path) => [path, readFileSync(examples + path, 'utf8')]));
}

/** What each session says beyond remarks, without its numbers. */
const said = (files: Files): Readonly<Record<string, readonly string[]>> =>
  Object.fromEntries(
    reportOf(files).sessions.map(({ session, findings }) => [
      session.stage,
      findings
        .filter(({ severity }) => severity !== 'remark')
        .map(({ code, measure, position }) => `${code} ${measure} ${position}`),
    ]),
  );

const SILENT = { machined: [], trial: [], rebuild: [] };

describe('an engine that is ground under goes from teardown to rebuild with true findings alone', () => {
  it('in line: six cylinders, 0.010 under, a lower half of 0.011 under at one main, bores 0.020 over', () => {
    expect(said(filesOf('generator-set-6'))).toEqual({
      teardown: [
        'reading/out main_journal_diameter 3',
        'reading/out main_journal_out_of_round 3',
        'reading/out crankpin_diameter 3',
        'reading/out crankpin_out_of_round 3',
        'reading/out cylinder_bore 3',
      ],
      ...SILENT,
    });
  });

  it('a vee of eight with two rods a pin, its crankpins 0.25 mm under', () => {
    expect(said(filesOf('drainage-pump-8'))).toEqual({
      teardown: [
        'reading/out crankpin_diameter 4',
        'reading/out crankpin_out_of_round 4',
        'reading/out rod_bearing_bore 7',
        'reading/out rod_bearing_clearance 7',
        'reading/out rod_bearing_bore 8',
        'reading/out rod_bearing_clearance 8',
      ],
      ...SILENT,
    });
  });

  it('and without a word of the sizes that is told once, as an error with the block to write', () => {
    const files = Object.entries(filesOf('drainage-pump-8')).map(([path, text]) => [
      path,
      text.replace(/^machined:.*$/m, '').replace(/^fitted:\n( {2}.*\n)+/m, ''),
    ]);
    const { machined, trial } = said(Object.fromEntries(files));
    for (const stage of [machined, trial])
      expect(stage?.filter((each) => /^reading\/(?:out|grade) /.test(each))).toEqual([
        expect.stringMatching(/^reading\/grade /),
      ]);
  });
});

describe('the six of the example shop', () => {
  const report = reportOf(filesOf('generator-set-6'));

  it('is measured whole: what its limits name holds after the rebuild, from compression to oil pump', () => {
    const { rows = [], findings = [] } = report.state ?? {};
    const measured = new Set(rows.map(({ characteristic }) => characteristic.id));
    const limited = new Set(report.engine.limits.flatMap(({ limits }) => [...limits.keys()]));
    expect(limited.size).toBeGreaterThan(120);
    expect([...limited].filter((id) => !measured.has(id))).toEqual([]);
    expect(findings.filter(({ severity }) => severity !== 'remark')).toEqual([]);
    const parts = new Set(rows.map(({ characteristic }) => characteristic.of));
    for (const part of [
      'ring',
      'head',
      'valve',
      'valve_seat',
      'lifter',
      'rocker',
      'lobe',
      'cam_bearing',
      'rod',
    ])
      expect(parts).toContain(part);
  });

  it('has something to read at every stage', () => {
    const counted = report.sessions.map(({ session, rows }) => [
      session.stage,
      new Set(rows.map(({ characteristic }) => characteristic.id)).size >= 10,
    ]);
    expect(counted).toEqual([
      ['teardown', true],
      ['machined', true],
      ['trial', true],
      ['rebuild', true],
    ]);
  });
});
