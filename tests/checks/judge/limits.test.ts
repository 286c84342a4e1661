import { describe, expect, it } from 'vitest';
import { engineIn, type Files, findingsOf, rowsOf, shopFiles, verdictsOf } from '../../shopOf.ts';

const CLEARANCE = '- { measure: main_bearing_clearance, at: { 1: 0.0030, 2: 0.0040, 3: 0.0050 } }';

const verdicts = (limits: string, blocks = CLEARANCE, stage = 'rebuild', more: Files = {}) =>
  Object.values(verdictsOf(shopFiles(limits, blocks, stage, more)));

describe('a limit as an amount', () => {
  it.each([
    ['in the document’s unit', '{ new: { max: 0.0040 } }'],
    ['as the manual prints it', '{ new: 0.0010 to 0.0040 }'],
    ['in its own unit', '{ new: { max: 0.1016 mm } }'],
    ['in thou', '{ new: { max: 4 thou } }'],
    ['in thou with a decimal', '{ new: { max: 4.0 thou } }'],
    ['printed with one unit for both', '{ new: 0.0254 to 0.1016 mm }'],
    ['printed with a unit each', '{ new: 1 thou to 0.1016 mm }'],
    ['as a formula', '{ new: { max: { formula: "0.004" } } }'],
  ])('%s', (_, limit) => expect(verdicts(`main_bearing_clearance: ${limit}`)).toEqual(['ok', 'ok', 'out']));
});

describe('a limit as a formula', () => {
  const sized = (size: string): Files => ({ 'e/engine.yaml': engineIn('in', `sizes: { bore: ${size} }\n`) });
  const TAPER = 'cylinder_taper: { wear: { max: { formula: "0.0005 * bore" } } }';
  const cylinder = (top: string) =>
    `- { measure: cylinder_bore, stations: [top, bottom], at: { 1: [${top}, 4.1260] } }`;
  const taper = (top: string) =>
    verdictsOf(shopFiles(TAPER, cylinder(top), 'teardown', sized('4.0000')))['cylinder_taper 1'];

  it('over a nominal size: exactly on it is inside', () => {
    expect(taper('4.1280')).toBe('ok');
    expect(taper('4.1281')).toBe('out');
  });

  it('over a reading at the same position, of which the mean counts', () => {
    const limit = 'main_bearing_clearance: { new: { max: { formula: "0.001 * main_journal_diameter" } } }';
    const journals =
      '- { measure: main_journal_diameter, stations: [a, b], at: { 1: [2.9990, 3.0010], 2: 4.0, 3: 5.0001 } }';
    expect(verdicts(limit, `${journals}\n${CLEARANCE}`).slice(3)).toEqual(['ok', 'ok', 'ok']);
    const smaller = '- { measure: main_journal_diameter, at: { 1: 2.9999, 2: 3.9999, 3: 4.9999 } }';
    expect(verdicts(limit, `${smaller}\n${CLEARANCE}`).slice(3)).toEqual(['out', 'out', 'out']);
  });

  it('a reading comes before the nominal size of the same name', () => {
    const limit = 'main_bearing_clearance: { new: { max: { formula: "0.001 * main_journal_diameter" } } }';
    const engine = { 'e/engine.yaml': engineIn('in', 'sizes: { main_journal_diameter: 9.0 }\n') };
    const read =
      '- { measure: main_journal_diameter, at: { 1: 2.5 } }\n- { measure: main_bearing_clearance, at: { 1: 0.0030, 2: 0.0030 } }';
    expect(verdictsOf(shopFiles(limit, read, 'rebuild', engine))).toMatchObject({
      'main_bearing_clearance 1': 'out',
      'main_bearing_clearance 2': 'ok',
    });
  });

  it('its lengths are in its document’s unit, whatever the engine’s', () => {
    const limit =
      'main_bearing_clearance: { new: { max: { formula: "0.001 * main_journal_diameter + 0.0254" } } }';
    const files = {
      ...shopFiles(
        limit,
        '- { measure: main_journal_diameter, at: { 1: 3.0 } }\n- { measure: main_bearing_clearance, at: { 1: 0.0040 } }',
      ),
    };
    const metric = { ...files, 'e/limits.yaml': `units: { length: mm }\n${files['e/limits.yaml']}` };
    expect(verdictsOf(metric)['main_bearing_clearance 1']).toBe('ok');
    expect(verdictsOf(files)['main_bearing_clearance 1']).toBe('ok');
    const tight = {
      ...metric,
      'e/session.yaml': (files['e/session.yaml'] ?? '').replace('0.0040', '0.00401'),
    };
    expect(verdictsOf(tight)['main_bearing_clearance 1']).toBe('out');
  });

  it('is rounded once to a tenth of a nanometre, as readings are', () => {
    // A third of 0.01 in is 0.00333… in, or 846,666.67 tenths of a nanometre.
    const limit = 'main_bearing_clearance: { new: { max: { formula: "0.01 / 3" } } }';
    const read = (text: string) =>
      verdicts(limit, `- { measure: main_bearing_clearance, at: { 1: ${text} } }`);
    expect(read('0.0846667 mm')[0]).toBe('ok');
    expect(read('0.0846668 mm')[0]).toBe('out');
  });

  it('with square roots, brackets and the greater of two', () => {
    const limit =
      'main_bearing_clearance: { new: { max: { formula: "max(sqrt(0.000016), 0.5 * (0.001 + 0.003))" } } }';
    expect(verdicts(limit)).toEqual(['ok', 'ok', 'out']);
  });

  it('that names what was not measured cannot judge, and says so', () => {
    const limit = 'main_bearing_clearance: { new: { max: { formula: "0.001 * main_journal_diameter" } } }';
    const files = shopFiles(limit, CLEARANCE);
    expect(Object.values(verdictsOf(files))).toEqual([null, null, null]);
    expect(findingsOf(files).filter(({ code }) => code === 'reading/missing')).toHaveLength(3);
  });
});

describe('a band that cannot be worked out', () => {
  const bore = '- { measure: cylinder_bore, stations: [a, b], at: { 1: [4.0100, 4.0000] } }';
  const sized: Files = { 'e/engine.yaml': engineIn('in', 'sizes: { bore: 4 }\n') };
  const taper = (bands: string) =>
    verdictsOf(shopFiles(`cylinder_taper: { ${bands} }`, bore, 'teardown', sized))['cylinder_taper 1'];
  const lacking = '{ max: { formula: "0.0001 * piston_diameter" } }';

  it('does not hide another that can', () => {
    expect(taper(`target: ${lacking}, wear: { max: { formula: "0.0005 * bore" } }`)).toBe('out');
  });

  it('does not pass a reading: without any other there is no verdict', () => {
    expect(taper(`target: ${lacking}`)).toBeNull();
    expect(taper(`wear: ${lacking}`)).toBeNull();
  });
});

describe('what was read is rounded once, where it is judged', () => {
  it('a mean of three a third of a step above the limit lies on it', () => {
    const repeat = (last: string) =>
      verdicts(
        'main_bearing_clearance: { new: { max: 0.1 mm } }',
        `- { measure: main_bearing_clearance, at: { 1: { repeat: [0.1 mm, 0.1 mm, ${last} mm] } } }`,
      );
    expect(repeat('0.1000001')[0]).toBe('ok');
    expect(repeat('0.1000002')[0]).toBe('out');
  });

  it('a torque is never rounded', () => {
    const turning = (value: string) =>
      verdicts(
        'turning_torque: { new: { max: 1.5 lbf ft } }',
        `- { measure: turning_torque, after: [{ step: crankshaft, value: ${value} }] }`,
      );
    expect(turning('18')).toEqual(['ok']);
    expect(turning('18.000000000001')).toEqual(['out']);
    expect(turning('1.5 lbf ft')).toEqual(['ok']);
    expect(turning('288 ozf in')).toEqual(['ok']);
    expect(turning('2.0337 N m')).toEqual(['ok']);
    expect(turning('2.0338 N m')).toEqual(['out']);
  });
});

describe('the place of a limit', () => {
  it('is kept with each side, for the finding to point at', () => {
    const files = shopFiles('main_bearing_clearance: { new: { max: 0.0040 } }', CLEARANCE);
    const [found] = findingsOf(files).filter(({ code }) => code === 'reading/out');
    expect(found?.limitPlace).toMatchObject({ path: 'e/limits.yaml', line: 4, column: 41 });
    expect(rowsOf(files)[0]?.limits.bands.new?.max?.written).toBe('0.0040');
  });
});

describe('what is known of a limit by a formula', () => {
  const limitsAt = (formula: string, blocks = CLEARANCE, more: Files = {}) => {
    const row = rowsOf(
      shopFiles(
        `main_bearing_clearance: { new: { max: { formula: "${formula}" } }, wear: { max: 0.0050 } }`,
        blocks,
        'rebuild',
        more,
      ),
    ).find(({ characteristic }) => characteristic.id === 'main_bearing_clearance');
    if (row === undefined) throw new Error('no row');
    return row.limits;
  };
  const JOURNAL = `- { measure: main_journal_diameter, at: { 1: 3.0010 } }\n${CLEARANCE}`;

  it('is its numbers, with two decimals at least, and the unit that it was worked out in', () => {
    const { bands, lacking, failed, open } = limitsAt('0.001 * main_journal_diameter', JOURNAL);
    expect(bands.new?.max?.written).toBe('0.001 × 3.001');
    expect(bands.new?.max?.unit?.name).toBe('in');
    expect(bands.new?.max?.warm?.text).toBe('20 degC');
    expect(bands.new?.min).toBeUndefined();
    expect([lacking, failed, [...open]]).toEqual([[], [], []]);
    expect(
      limitsAt('0.001 * main_journal_diameter', JOURNAL.replace('3.0010', '3')).bands.new?.max?.written,
    ).toBe('0.001 × 3.00');
  });

  it('of several places is all of theirs', () => {
    const journals = JOURNAL.replace('{ 1: 3.0010 }', '{ 1: 3.0010, 2: 3.0020, 3: 3.0030 }');
    expect(limitsAt('0.001 * max(main_journal_diameter[*])', journals).bands.new?.max?.written).toContain(
      '3.001, 3.002, 3.003',
    );
    expect(limitsAt('0.001 * max(main_journal_diameter[*])', JOURNAL).lacking).toEqual([
      'main_journal_diameter[*]',
    ]);
  });

  it('is what it lacks, once, and that its side is open', () => {
    const { bands, lacking, failed, open } = limitsAt(
      '0.001 * main_journal_diameter + main_journal_diameter / 9',
    );
    expect([Object.keys(bands), lacking, failed, [...open]]).toEqual([
      ['wear'],
      ['main_journal_diameter'],
      [],
      ['new max'],
    ]);
  });

  it('is why it came to nothing, with its numbers', () => {
    const { bands, lacking, failed, open } = limitsAt('1 / (main_journal_diameter - 3.001)', JOURNAL);
    expect([Object.keys(bands), lacking, [...open]]).toEqual([['wear'], [], ['new max']]);
    expect(failed).toEqual([
      {
        band: 'new',
        side: 'max',
        written: '1 / (3.001 − 3.001)',
        problem: expect.anything(),
        place: expect.objectContaining({ path: 'e/limits.yaml', line: 4 }),
      },
    ]);
  });

  it('a nominal size says nothing of another place', () => {
    const sized: Files = { 'e/engine.yaml': engineIn('in', 'sizes: { main_journal_diameter: 3.0 }\n') };
    expect(limitsAt('0.001 * main_journal_diameter', CLEARANCE, sized).bands.new?.max?.written).toBe(
      '0.001 × 3.00',
    );
    expect(limitsAt('0.001 * main_journal_diameter[2]', CLEARANCE, sized).lacking).toEqual([
      'main_journal_diameter[2]',
    ]);
  });
});

it('without a formula the limits of all places are worked out once', () => {
  const [first, second] = rowsOf(shopFiles('main_bearing_clearance: { new: { max: 0.0040 } }', CLEARANCE));
  expect(first?.limits).toBe(second?.limits);
  const formula = rowsOf(
    shopFiles('main_bearing_clearance: { wear: { min: { formula: "0.001" } } }', CLEARANCE),
  );
  expect(formula[0]?.limits).not.toBe(formula[1]?.limits);
});

it('a formula for what has one unit alone needs none', () => {
  const ratio = (value: string) =>
    verdicts(
      'compression_ratio: { new: { max: { formula: "2 * 5.25" } } }',
      `- { measure: compression_ratio, at: { 1: ${value} } }`,
    )[0];
  expect([ratio('10.5'), ratio('10.6')]).toEqual(['ok', 'out']);
});
