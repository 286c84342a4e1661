import { describe, expect, it } from 'vitest';
import { NOT_STATED } from '../../../src/documents/unstatedSource.ts';
import { engineIn, reportOf, sessionOf } from '../../shopOf.ts';

const READING = '- { measure: crankshaft_end_play, with: dial, value: 0.0090 }';

/** Where the sources of two sessions' engine are asked for. */
const askedFor = (limitsSource: string, torqueSource = 'Invented.'): readonly string[] =>
  reportOf({
    'e/engine.yaml': engineIn('in'),
    'e/limits.yaml': `kind: limits\nsource: ${limitsSource}\nlimits: { crankshaft_end_play: { new: 0.0065 to 0.0125 } }\n`,
    'e/main-caps.yaml': `kind: torque\njoint: main caps\nfasteners: { names: [1L, 1R] }\norder: [1L, 1R]\nlubricant: oil\nunits: { torque: lbf ft }\npasses: [{ to: 40 }]\nsource: ${torqueSource}\n`,
    'e/1.yaml': sessionOf('trial', READING).replace('02-03', '02-01'),
    'e/2.yaml': sessionOf('rebuild', READING),
  }).sessions.flatMap(({ findings }) =>
    findings
      .filter(({ code }) => code === 'source/unstated')
      .map(({ place }) => `${place.path}:${place.line}`),
  );

describe('limits and sequences say where their figures come from', () => {
  it.each([NOT_STATED, 'not stated', 'TODO', 'tbd.', '"?"', '"…"', 'unknown', 'xxx'])(
    '%s says nothing, and is asked for once, with the latest session',
    (source) => {
      expect(askedFor(source)).toEqual(['e/limits.yaml:2']);
    },
  );

  it.each(['Invented.', 'Workshop manual 12, p. 4, 1961', 'TM 9-254', 'Unknown author, 1950', 'X 40 manual'])(
    '%s is a source',
    (source) => {
      expect(askedFor(source)).toEqual([]);
    },
  );

  it('of a tightening sequence as well', () => {
    expect(askedFor('Invented.', NOT_STATED)).toEqual(['e/main-caps.yaml:8']);
  });
});
