import { describe, expect, it } from 'vitest';
import { characteristics } from '../../src/characteristics/registry.ts';
import { measureNamed } from '../../src/cli/shop/measureNamed.ts';
import { ALSO_CALLED } from '../../src/documents/alsoCalled.ts';
import { unknownMeasure } from '../../src/documents/measure.ts';
import { RENAMED_IDS } from '../../src/documents/renamedIds.ts';

const known = { all: characteristics, ids: () => characteristics.map(({ id }) => id) };
const plain = (text: string): string => text.replaceAll('_', ' ');

describe('other words of the trade', () => {
  it('stand for characteristics that there are, and are no names of any', () => {
    const names = new Set(characteristics.flatMap(({ id, label }) => [plain(id), label]));
    for (const [id, words] of Object.entries(ALSO_CALLED)) {
      expect(known.ids()).toContain(id);
      expect(
        words.filter((each) => names.has(each) || RENAMED_IDS.has(each)),
        id,
      ).toEqual([]);
      expect(new Set(words).size).toBe(words.length);
    }
  });

  it.each([
    ['thrust clearance', 'crankshaft_end_play'],
    ['Thrust_Clearance', 'crankshaft_end_play'],
    ['rotating torque', 'turning_torque'],
    ['big-end-side-clearance', 'rod_side_clearance'],
    ['stem_to_guide_clearance', 'valve_stem_clearance'],
  ])('%s means %s', (word, id) => expect(measureNamed(word, known).id).toBe(id));

  it('that may mean several are reported with all of them', () => {
    const message = 'oil clearance is called main_bearing_clearance or rod_bearing_clearance here';
    expect(() => measureNamed('oil clearance', known)).toThrow(message);
  });

  it('are no ids: a document that uses them learns what to write', () => {
    expect(unknownMeasure('thrust_clearance', known)).toEqual({
      message: 'thrust_clearance is called crankshaft_end_play here',
      help: 'write crankshaft_end_play',
    });
  });
});
