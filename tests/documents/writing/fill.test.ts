import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fillScalars } from '../../../src/documents/writing/fill.ts';

const SESSION = `# by hand
readings:
  - measure: a   # first
    at: { 1: ~, 2: [~, 3.2478], "3":   ~ }   # flow
  - measure: b
    value:
    note: "~"
`;

const at = (...path: readonly (string | number)[]) => path;

describe('readings filled in', () => {
  it('stand where a ~ stood, and no other byte changes', () => {
    const filled = fillScalars(SESSION, [
      { path: at('readings', 1, 'value'), text: '0.0090' },
      { path: at('readings', 0, 'at', '1'), text: '{ value: 3.2470, note: scored }' },
      { path: at('readings', 0, 'at', '2', 0), text: '3.2480' },
      { path: at('readings', 0, 'at', '3'), text: '+7' },
    ]);
    expect(filled).toEqual({
      ok: true,
      value: SESSION.replace('1: ~', '1: { value: 3.2470, note: scored }')
        .replace('[~,', '[3.2480,')
        .replace('"3":   ~', '"3":   +7')
        .replace('    value:\n', '    value: 0.0090\n'),
    });
  });

  it.each([
    ['nothing stands there', at('readings', 7, 'value'), '1', 'place'],
    ['it is no scalar', at('readings', 0, 'at'), '1', 'place'],
    ['the text is no YAML', at('readings', 1, 'value'), '[1', 'text'],
    ['the text would say more than it should', at('readings', 0, 'at', '1'), '1, 9: 9', 'layout'],
  ])('are refused where %s', (_, path, text, reason) => {
    expect(fillScalars(SESSION, [{ path, text }])).toMatchObject({ ok: false, problem: { reason } });
  });

  it('in any number change nothing but their own places', () => {
    const cells = fc.array(fc.option(fc.integer({ min: 0, max: 99_999 })), { minLength: 1, maxLength: 12 });
    const number = (value: number | null): string => (value === null ? '~' : (value / 10_000).toFixed(4));
    fc.assert(
      fc.property(cells, fc.constantFrom('\n', '\r\n'), (values, lineEnd) => {
        const text = (all: readonly (number | null)[]) =>
          [
            '# top',
            'readings:',
            '  - at:',
            ...all.map((each, i) => `      ${i + 1}: ${number(each)}  # ${i}`),
            '',
          ].join(lineEnd);
        const fillings = values.flatMap((value, index) =>
          value === null ? [] : [{ path: at('readings', 0, 'at', String(index + 1)), text: number(value) }],
        );
        expect(fillScalars(text(values.map(() => null)), fillings)).toEqual({
          ok: true,
          value: text(values),
        });
      }),
    );
  });
});
