import { describe, expect, it } from 'vitest';
import {
  codesOf,
  type Files,
  findingsOf,
  limitsOf,
  reportOf,
  rowsOf,
  sessionOf,
  shopFiles,
  verdictsOf,
} from '../../shopOf.ts';

const LIMITS = 'main_bearing_clearance: { new: 0.0020 to 0.0038 }';

const conceded = (reading: string, concessions: string): Files =>
  shopFiles(LIMITS, '', 'rebuild', {
    'e/session.yaml': `${sessionOf('rebuild', `- { measure: main_bearing_clearance, ${reading.startsWith('[') ? 'stations: [front, rear], ' : ''}at: { 2: ${reading} } }`)}concessions:\n${concessions}\n`,
  });

const entry = (of: string): string =>
  `  - { measure: main_bearing_clearance, ${of}, reason: invented, by: RK, agreed: the owner }`;

describe('a concession', () => {
  it.each([
    ['reaches as far as the reading', '0.0045', ['at: 2, up_to: 0.0045'], 'accepted'],
    ['does not reach', '0.0046', ['at: 2, up_to: 0.0045'], 'out'],
    ['speaks of the other side', '0.0045', ['at: 2, down_to: 0.0010'], 'out'],
    [
      'reaches, though an earlier one for the position does not',
      '0.0045',
      ['at: [1, 2], up_to: 0.0042', 'at: 2, up_to: 0.0047'],
      'accepted',
    ],
    [
      'of either side covers its own',
      '[0.0010, 0.0045]',
      ['at: 2, up_to: 0.0045', 'at: 2, down_to: 0.0010'],
      'accepted',
    ],
    ['of one side leaves the other out', '[0.0010, 0.0045]', ['at: 2, up_to: 0.0045'], 'out'],
  ])('%s: %s', (_, reading, concessions, verdict) => {
    const files = conceded(reading, concessions.map(entry).join('\n'));
    expect(verdictsOf(files)['main_bearing_clearance 2']).toBe(verdict);
  });

  it.each([
    [
      'the side that nothing covers, though the other lies farther beyond its limit',
      '[0.0019, 0.0060]',
      ['at: 2, up_to: 0.0060'],
      [
        'reading/out: main bearing clearance 2: 0.0019 to 0.0060 in, tight by 1 tenth (new min 0.0020)',
        'concession/exceeded: main bearing clearance 2 was accepted up to 0.0060 in (rebuild 2026-02-03, RK; agreed by the owner): it is beyond its other limit as well',
      ],
    ],
    [
      'what an entry for either side accepts',
      '[0.0010, 0.0045]',
      ['at: 2, up_to: 0.0045', 'at: 2, down_to: 0.0010'],
      [
        'reading/accepted: main bearing clearance 2: 0.0010 to 0.0045 in is accepted down to 0.0010 in (rebuild 2026-02-03, RK; agreed by the owner): invented',
        'reading/accepted: main bearing clearance 2: 0.0010 to 0.0045 in is accepted up to 0.0045 in (rebuild 2026-02-03, RK; agreed by the owner): invented',
      ],
    ],
    [
      'how far either of two entries falls short',
      '[0.0009, 0.0047]',
      ['at: 2, up_to: 0.0045', 'at: 2, down_to: 0.0010'],
      [
        'reading/out: main bearing clearance 2: 0.0009 to 0.0047 in, tight by 1.1 thou (new min 0.0020)',
        'concession/exceeded: main bearing clearance 2 was accepted up to 0.0045 in (rebuild 2026-02-03, RK; agreed by the owner): it is 2 tenths beyond that',
        'concession/exceeded: main bearing clearance 2 was accepted down to 0.0010 in (rebuild 2026-02-03, RK; agreed by the owner): it is 1 tenth beyond that',
      ],
    ],
    [
      'the farther of two that do not reach',
      '0.0047',
      ['at: 2, up_to: 0.0041', 'at: 2, up_to: 0.0046'],
      [
        'reading/out: main bearing clearance 2: 0.0047 in, loose by 9 tenths (new max 0.0038)',
        'concession/exceeded: main bearing clearance 2 was accepted up to 0.0046 in (rebuild 2026-02-03, RK; agreed by the owner): it is 1 tenth beyond that',
        'concession/unused: the concession for main bearing clearance 2 is not used: another concession accepts as much or more',
      ],
    ],
    [
      'an entry that covers nothing beside one that does',
      '0.0045',
      ['at: 2, up_to: 0.0041', 'at: 2, up_to: 0.0046', 'at: 2, down_to: 0.0010'],
      [
        'concession/unused: the concession for main bearing clearance 2 is not used: another concession covers the value',
        'concession/unused: the concession for main bearing clearance 2 is not used: 0.0045 in is beyond the other limit',
        'reading/accepted: main bearing clearance 2: 0.0045 in is accepted up to 0.0046 in (rebuild 2026-02-03, RK; agreed by the owner): invented',
      ],
    ],
  ])('tells %s', (_, reading, concessions, told) => {
    const found = findingsOf(conceded(reading, concessions.map(entry).join('\n')));
    const about = found.filter(({ code }) => /^(concession|reading)\/(?!marginal|missing)/.test(code));
    expect(about.map(({ code, message }) => `${code}: ${message}`)).toEqual(told);
  });

  it.each([
    ['who decided or who agreed: write by: and agreed:', '', ''],
    ['who decided: write by:', '', 'agreed: the owner'],
    ['who agreed: write agreed:', '', 'by: RK'],
    ['who agreed: write agreed:', 'by: RK', ''],
  ])('that accepts a value and does not say %s', (missing, session, says) => {
    const files = conceded(
      '0.0045',
      `  - { measure: main_bearing_clearance, at: [2, 3], up_to: 0.0045, reason: invented, ${says} }\n${session}`,
    );
    expect(findingsOf(files).filter(({ code }) => code === 'concession/unsigned')).toMatchObject([
      {
        severity: 'warning',
        message: `the concession for main bearing clearance 2, 3 (rebuild 2026-02-03) does not say ${missing}`,
      },
    ]);
  });

  it('that accepts nothing, or names both, is not asked who', () => {
    const told = (of: string, by = '') =>
      codesOf(conceded('0.0045', `  - { measure: main_bearing_clearance, ${of} }\n${by}`));
    expect(told('at: 2, up_to: 0.0041, reason: invented')).not.toContain('concession/unsigned');
    expect(told('at: 2, up_to: 0.0045, reason: invented, agreed: the owner', 'by: RK')).not.toContain(
      'concession/unsigned',
    );
  });

  it('promises one follow-up for each position that it names', () => {
    const files = conceded(
      '0.0045',
      '  - { measure: main_bearing_clearance, at: 2, up_to: 0.0045, reason: invented, follow_up: { measure: compression_pressure, at: [1, 3], min: 90 psi } }',
    );
    expect(reportOf(files).followUps.map(({ followUp, state }) => [followUp.position.name, state])).toEqual([
      ['1', 'open'],
      ['3', 'open'],
    ]);
    expect(codesOf(files).filter((code) => code === 'follow-up/open')).toHaveLength(2);
  });
});

describe('a follow-up that was measured and not met', () => {
  const later = (date: string, value: string): string =>
    `kind: session\nstage: service\ndate: ${date}\nreadings: [{ measure: compression_pressure, at: { 1: ${value} } }]\n`;
  const files = (...values: readonly string[]): Files => ({
    ...conceded(
      '0.0045',
      '  - { measure: main_bearing_clearance, at: 2, up_to: 0.0045, reason: invented, follow_up: { measure: compression_pressure, at: 1, min: 90 psi } }',
    ),
    ...Object.fromEntries(
      values.map((value, index) => [`e/z${index}.yaml`, later(`2026-03-0${index + 1}`, value)]),
    ),
  });
  const said = (...values: readonly string[]): readonly string[] =>
    (reportOf(files(...values)).state?.findings ?? [])
      .filter(({ code }) => code === 'follow-up/open')
      .map(({ severity, message }) => `${severity}: ${message}`);

  it.each([
    ['never', [], ['remark: to be measured: compression pressure 1, at least 90 psi']],
    ['once', ['82 psi'], ['warning: compression pressure 1, at least 90 psi: not met, 82 psi on 2026-03-01']],
    [
      'twice: the last counts',
      ['82 psi', '85 psi'],
      ['warning: compression pressure 1, at least 90 psi: not met, 85 psi on 2026-03-02'],
    ],
    ['and met the second time', ['82 psi', '95 psi'], []],
  ])('%s', (_, values, expected) => expect(said(...values)).toEqual(expected));
});

describe('a session that uses an earlier one', () => {
  const trial = `${sessionOf('trial', '- { measure: main_journal_diameter, at: { 2: 2.9990 } }')}`.replace(
    '2026-02-03',
    '2026-01-20',
  );
  const rebuild = (more: string): Files => ({
    ...shopFiles(LIMITS, ''),
    'e/limits.yaml': limitsOf(LIMITS),
    'e/trial.yaml': trial,
    'e/session.yaml': sessionOf(
      'rebuild',
      '- { measure: main_bearing_bore, at: { 2: 3.0020 } }',
      `uses: [trial]\n${more}`,
    ),
  });

  it('takes the journal that it has not measured itself', () => {
    expect(verdictsOf(rebuild(''))['main_bearing_clearance 2']).toBe('ok');
  });

  it('takes what was measured after work of the same day, in a later session of that day', () => {
    const files = {
      ...rebuild(''),
      'e/before.yaml':
        `${sessionOf('trial', '- { measure: crankshaft_end_play, value: 0.0070 }', 'machined: [{ part: main journals }]\n')}`.replace(
          '2026-02-03',
          '2026-01-20',
        ),
    };
    expect(verdictsOf(files)['main_bearing_clearance 2']).toBe('ok');
  });

  it('is read once however many lead to it', () => {
    const names = Array.from({ length: 40 }, (_, index) => `s${index + 10}`);
    const sessions = names.map((name, index) => {
      const blocks = '- { measure: main_bearing_bore, at: { 2: 3.0020 } }';
      return [
        `e/${name}.yaml`,
        sessionOf('rebuild', blocks, index === 0 ? '' : `uses: [${names.slice(0, index).join(', ')}]\n`),
      ];
    });
    const files = {
      ...shopFiles(LIMITS, '- { measure: main_bearing_bore, at: { 2: 3.0020 } }'),
      ...Object.fromEntries(sessions),
    };
    expect(reportOf(files).sessions).toHaveLength(41);
  });

  it.each([
    ['replaced', 'replaced: [{ part: crankshaft }]\n'],
    ['machined', 'machined: [{ part: main journals }]\n'],
    ['fitted anew', 'fitted: { crankshaft: { condition: new } }\n'],
  ])('does not take that of a shaft that was %s since', (_, more) => {
    expect(verdictsOf(rebuild(more))['main_bearing_clearance 2']).toBeUndefined();
    expect(codesOf(rebuild(more))).toContain('session/unmeasured');
  });
});

describe('a reading of 0 without an instrument', () => {
  const half = (files: Files): number | undefined =>
    rowsOf(files).find(({ position }) => position.name === '2' || position.name === 'crankshaft')?.routes[0]
      ?.route.u;

  it('is not as coarse as one inch', () => {
    const files = shopFiles(
      'crankshaft_runout: { wear: { max: 0.0040 } }',
      '- { measure: crankshaft_runout, at: { 2: 0 } }',
      'teardown',
    );
    expect(verdictsOf(files, { rule: 'guarded' })['crankshaft_runout 2']).toBe('ok');
  });

  it('is as fine as the other readings of its block', () => {
    const block = (zero: string): Files =>
      shopFiles('', `- { measure: crankshaft_runout, at: { 1: 0.0005, 2: ${zero} } }`, 'teardown', {
        'e/limits.yaml': limitsOf('crankshaft_runout: { wear: { max: 0.0040 } }'),
      });
    expect(half(block('0'))).toBe(half(block('0.0000')));
  });

  it('of torque is no coarser than 1 N m', () => {
    const torque = (zero: string): Files =>
      shopFiles(
        'turning_torque: { new: { max: 9 lbf ft } }',
        `- { measure: turning_torque, after: [{ step: crankshaft, value: ${zero} }] }`,
      );
    expect(half(torque('0 kgf m'))).toBe(half(torque('0 N m')));
    expect(half(torque('0 ozf in'))).toBeLessThan(half(torque('0 N m')) ?? 0);
  });
});
