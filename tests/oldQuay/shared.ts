export const README = `# A shop of ten engines

Old Quay is invented: none of its engines, parts, people, limits or readings exist, and no figure here is good for an engine. Its
documents are made by [tests/oldQuay](../../../tests/oldQuay), always the same, and a test holds what \`tenths check\` finds in them.

| engine | | |
|---|---|---|
| Quay crane, Ferry generator, Drain pump | three in line, inches | one crankshaft goes through all three ([parts](../../parts.md)); a micrometer was dropped ([instruments](../../instruments.md)) |
| Ice plant | four in line, inches | a cylinder was conceded for a season, which is over |
| Saw bench | four in line, inches | ground and bored twice |
| Slip winch | a vee of eight, inches | delivered |
| Lock gate pump | a vee of six, millimetres | delivered |
| Fog signal | an opposed four, millimetres | open on the bench, at its second overhaul |
| Dredger pump | an opposed pair, inches | delivered |
| Tide gate generator | six in line, millimetres | opened, and nothing agreed yet |

[Questions of a whole fleet](../../fleet.md) are asked of all ten.
`;

export const SHOP = `# An invented shop. None of its engines, parts, people, limits or readings exist.
kind: shop
name: Old Quay engine shop
units: { length: in, temperature: degF }
decision_rule: guarded
`;

export const INSTRUMENTS = `# An invented register: the errors are what such instruments usually allow.
kind: instruments
instruments:
  mic-2-3:
    type: micrometer
    range: { from: 2 in, to: 3 in }
    resolution: 0.0001 in
    max_error: 0.0001 in
    repeatability: 0.00003 in
    certificates:
      - { date: 2015-01-12, due: 2020-01-12, by: an invented laboratory, number: C-15-031 }
      - { date: 2020-01-13, due: 2025-01-13, by: an invented laboratory, number: C-20-007 }
      - date: 2025-01-14
        due: 2027-01-14
        by: an invented laboratory
        number: C-25-012
        errors: [{ at: 2.0 in, as_found: 0.00005 in }, { at: 2.5 in, as_found: 0.00005 in }, { at: 3.0 in, as_found: 0.0001 in }]
        uncertainty: 0.00004 in
  mic-2-3-fine: { type: micrometer, range: { from: 2 in, to: 3 in }, resolution: 0.00005 in, max_error: 0.00005 in, repeatability: 0.00002 in, calibrated: 2025-01-14, due: 2027-01-14 }
  bore-2-6: { type: bore gauge, range: { from: 2 in, to: 6 in }, resolution: 0.0001 in, max_error: 0.0001 in, repeatability: 0.00005 in, calibrated: 2025-01-14, due: 2027-01-14 }
  dial-1: { type: dial indicator, range: { from: 0 in, to: 1 in }, resolution: 0.001 in, max_error: 0.001 in, calibrated: 2024-01-15, due: 2026-01-15 }
  bore-50-150: { type: bore gauge, range: { from: 50 mm, to: 150 mm }, resolution: 0.001 mm, max_error: 0.003 mm, repeatability: 0.001 mm, calibrated: 2025-01-14, due: 2027-01-14 }
  mic-50-75: { type: micrometer, range: { from: 50 mm, to: 75 mm }, resolution: 0.001 mm, max_error: 0.002 mm, repeatability: 0.0006 mm, calibrated: 2025-01-14, due: 2027-01-14 }
  dial-10: { type: dial indicator, range: { from: 0 mm, to: 10 mm }, resolution: 0.01 mm, max_error: 0.015 mm, calibrated: 2025-06-03, due: 2027-06-03 }
`;
