import { describe, expect, it } from 'vitest';
import { closingPage } from '../../../src/output/plan/closingPage.ts';
import { customerReasons } from '../../../src/output/report/customerReasons.ts';
import { closingOf, mayClose } from '../../../src/plan/closing/closing.ts';
import { type Files, findingsOf, reportOf, sessionOf, shopFiles, verdictsOf } from '../../shopOf.ts';

const LIMITS = `main_bearing_clearance: { new: { max: 0.0038 }, wear: { max: 0.0050 } }
crankshaft_end_play: { new: { max: 0.012 } }
main_journal_taper: { wear: { max: 0.0010 } }`;
const END_PLAY = '- { measure: crankshaft_end_play, value: 0.008 }';
const BARE = '- { measure: main_bearing_clearance, at: { 1: 0.0030, 2: 0.0030, 3: ~ } }';
const REASON = BARE.replace('3: ~', '3: { value: ~, note: bore plugged }');

const rebuilt = (readings: string, more: Files = {}): Files =>
  shopFiles(LIMITS.replace(/\nmain_journal_taper.*/, ''), readings, 'rebuild', more);
const messagesOf = (files: Files): readonly string[] =>
  findingsOf(files)
    .filter(({ code }) => /missing|left-out|unmeasured/.test(code))
    .map(({ code, severity, message }) => `${severity} ${code} ${message}`);

describe('a place left out on purpose', () => {
  it('with its reason is no missing reading but a remark', () => {
    const files = rebuilt(`${REASON}\n${END_PLAY}`);
    expect(verdictsOf(files)['main_bearing_clearance 3']).toBe('left out');
    expect(messagesOf(files)).toEqual([
      'remark reading/left-out main bearing clearance 3 was left out on purpose: bore plugged',
    ]);
  });

  it('is told at its own place', () => {
    const [{ place } = { place: undefined }] = findingsOf(rebuilt(`${REASON}\n${END_PLAY}`)).filter(
      ({ code }) => code === 'reading/left-out',
    );
    expect([place?.line, place?.column]).toEqual([5, 71]);
  });

  it('without a reason stays missing, and it is said how to state one', () => {
    const files = rebuilt(`${BARE}\n${END_PLAY}`);
    expect(verdictsOf(files)['main_bearing_clearance 3']).toBe('missing');
    expect(messagesOf(files)).toEqual([
      'warning reading/missing main bearing clearance 3 is missing; other positions were measured; if it was left out on purpose, write why: { value: ~, note: … }',
    ]);
  });

  it.each([
    [
      'at each of its stations',
      '{ front: { value: ~, note: bore plugged }, rear: { value: ~, note: no light } }',
    ],
    ['at one of them', '{ front: { value: ~, note: bore plugged; no light }, rear: ~ }'],
    ['in a list', '[{ value: ~, note: bore plugged }, { value: ~, note: no light }]'],
  ])('has its reason %s', (_, at) => {
    const stations = at.startsWith('[') ? 'stations: [front, rear], ' : '';
    const two = BARE.replace(', 3: ~', '');
    const third = `- { measure: main_bearing_clearance, ${stations}at: { 3: ${at} } }`;
    expect(messagesOf(rebuilt(`${two}\n${third}\n${END_PLAY}`))).toEqual([
      'remark reading/left-out main bearing clearance 3 was left out on purpose: bore plugged; no light',
    ]);
  });

  it('counts as read where it was read all the same', () => {
    const read = '- { measure: main_bearing_clearance, at: { 3: 0.0031 } }';
    expect(verdictsOf(rebuilt(`${REASON}\n${read}`))['main_bearing_clearance 3']).toBe('ok');
  });

  it.each([
    [
      'all of one, by a note on each',
      '- { measure: crankshaft_end_play, value: { value: ~, note: no dial } }',
    ],
    ['all of one, by a note on the whole', '- { measure: crankshaft_end_play, value: ~, note: no dial }'],
    [
      'all of one, by a note on the first of two tries',
      '- { measure: crankshaft_end_play, value: { value: ~, note: no dial } }\n- { measure: crankshaft_end_play, value: ~ }',
    ],
  ])('may be %s', (_, endPlay) => {
    const clearances = BARE.replace('3: ~', '3: 0.0030');
    expect(messagesOf(rebuilt(`${clearances}\n${endPlay}`))).toEqual([
      'remark reading/left-out crankshaft end play was left out on purpose: no dial',
    ]);
  });

  it('leaves the whole unmeasured where only some of it has a reason', () => {
    const one = '- { measure: main_bearing_clearance, at: { 1: ~, 3: { value: ~, note: bore plugged } } }';
    expect(messagesOf(rebuilt(`${one}\n${END_PLAY}`))).toEqual([
      'warning session/unmeasured main bearing clearance has limits and was not measured',
    ]);
  });

  it('takes with it what is only worked out from it', () => {
    const journals =
      '- { measure: main_journal_diameter, stations: [front, rear], at: { 1: [2.9985, 2.9985], 2: [2.9985, 2.9984], 3: { value: ~, note: cap seized } } }';
    const files = shopFiles('main_journal_taper: { wear: { max: 0.0010 } }', journals, 'teardown');
    expect(messagesOf(files)).toEqual([
      'remark reading/left-out main journal taper 3 was left out on purpose: cap seized',
    ]);
  });

  it('takes with it what is worked out from it in one of several ways', () => {
    const travels =
      '- { measure: piston_travel, at: { 1: 3.5000, 2: 3.5001, 3: { value: ~, note: valve in the way }, 4: 3.5000 } }';
    expect(messagesOf(shopFiles('crank_stroke: { new: { max: 4 } }', travels, 'teardown'))).toEqual([
      'remark reading/left-out crank stroke 3 was left out on purpose: valve in the way',
    ]);
  });

  describe('takes with it what is worked out from all of its places', () => {
    const limits =
      'compression_pressure: { new: { min: 100 psi } }\ncompression_share: { new: { min: 80 % } }';
    const pressed = (at: string, more = ''): Files =>
      shopFiles(limits, `- { measure: compression_pressure, at: { ${at} }${more} }`, 'rebuild');
    const share = (files: Files) => messagesOf(files).filter((each) => /lowest compression/.test(each));
    const unmeasured = ['warning session/unmeasured lowest compression has limits and was not measured'];
    const note = '{ value: ~, note: no starter }';

    it.each<readonly [string, Files, readonly string[]]>([
      [
        'with the reason of all',
        pressed('1: ~, 2: ~, 3: ~, 4: ~', ', note: after the first start'),
        ['remark reading/left-out lowest compression was left out on purpose: after the first start'],
      ],
      [
        'with each of their reasons',
        pressed(`1: ${note}, 2: { value: ~, note: plug seized }, 3: ${note}, 4: ${note}`),
        ['remark reading/left-out lowest compression was left out on purpose: no starter; plug seized'],
      ],
      ['but not where one of them has none', pressed(`1: ${note}, 2: ~, 3: ${note}, 4: ${note}`), unmeasured],
      ['nor where one of them is not spoken of', pressed(`1: ${note}, 2: ${note}`), unmeasured],
    ])('%s', (_, files, said) => expect(share(files)).toEqual(said));

    it('with one box for both', () => {
      const report = reportOf(pressed('1: ~, 2: ~, 3: ~, 4: ~', ', note: no starter'));
      if (report.state === undefined) throw new Error('no session');
      const { boxes, unmeasured: open } = closingOf(report, report.state);
      expect(boxes.filter(({ isRequired }) => isRequired).map(({ what }) => what)).toEqual([
        'left out on purpose at rebuild: compression pressure 1 to 4: no starter',
      ]);
      expect(open).toEqual([]);
    });
  });

  it('stays so in later sessions as long as a reading there would hold', () => {
    const size = 'main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 } }';
    const journals =
      '- { measure: main_journal_diameter, at: { 1: 2.9985, 2: 2.9984, 3: { value: ~, note: cap seized } } }';
    const verdictsAfter = (work: string): unknown =>
      reportOf({
        ...shopFiles(size, journals, 'teardown'),
        'e/later.yaml': sessionOf('machined', work).replace(/date: .*/, 'date: 2026-03-01'),
      }).state?.rows.map(({ judgement }) => judgement.verdict);
    expect(verdictsAfter('- { work: painted, on: flywheel }')).toEqual(['ok', 'ok', 'left out']);
    expect(verdictsAfter('- { work: polished, on: main journal 3 }')).toEqual(['ok', 'ok', 'missing']);
  });

  it('is a box to tick before the engine is closed up, with its reason; bare it is open', () => {
    const what = 'left out on purpose at rebuild: main bearing clearance 3: bore plugged';
    const closing = (files: Files) => {
      const report = reportOf(files);
      if (report.state === undefined) throw new Error('no session');
      const found = closingOf(report, report.state);
      const boxes = closingPage(found, report.engine, []).sections.flatMap((each) => each.boxes ?? []);
      return { may: mayClose(found), boxes, reasons: customerReasons(found, report) };
    };
    const open = closing(rebuilt(`${REASON}\n${END_PLAY}`));
    expect(open.may).toBe(false);
    expect(open.boxes).toContain(`${what} (required: confirmed: in a session settles it)`);
    expect(open.reasons).toContain('Left out on purpose, not measured: main bearing clearance 3.');
    expect(closing(rebuilt(`${BARE}\n${END_PLAY}`))).toMatchObject({ may: false });
    const head = `confirmed: [{ what: "${what}", by: RK }]\n`;
    const ticked = closing({
      ...rebuilt(''),
      'e/session.yaml': sessionOf('rebuild', `${REASON}\n${END_PLAY}`, head),
    });
    expect(ticked.may).toBe(true);
    expect(ticked.reasons).toEqual([]);
    expect(ticked.boxes).not.toContain(what);
  });
});

it('what is missing is told beside what was measured of it', () => {
  const missing = findingsOf(
    rebuilt(`- { measure: main_bearing_clearance, at: { 2: 0.0030 } }\n${END_PLAY}`),
  ).filter(({ code }) => code === 'reading/missing');
  expect(missing.map(({ position, place: { line, column } }) => [position, line, column])).toEqual([
    ['1', 5, 49],
    ['3', 5, 49],
  ]);
});
