import { expect, it } from 'vitest';
import { pageOf } from '../../../../src/cli/plan/pages.ts';
import { NO_OFFERS } from '../../../../src/documents/parts/offeredPart.ts';
import { writtenLines } from '../../../../src/output/escape/line.ts';
import { pageLines } from '../../../../src/output/plan/pageText.ts';
import { textStyle } from '../../../../src/shell/process/terminal.ts';
import { veeEngine } from '../../../plan/veeEngine.ts';
import { reportOf, sessionOf } from '../../../shopOf.ts';

function customerText(limits: string, readings: string): string {
  const report = reportOf(veeEngine(limits, { 'e/a.yaml': sessionOf('teardown', readings) }));
  const { page } = pageOf({ for: 'customer' }, report, report.engine, () => NO_OFFERS);
  const style = textStyle({ isTTY: true, columns: 200 }, { NO_COLOR: '1' }, false);
  return writtenLines(pageLines(page, style)).replace(/\s+/g, ' ');
}

it.each([
  [
    'main_bearing_clearance: { new: 0.025 to 0.062 }',
    '- { measure: main_bearing_clearance, at: { 1: 0.040, 2: 0.100, 3: 0.040, 4: 0.040 } }',
    '1 choose main shell 2 ________ ________ New main shells of the size that fits are put in',
  ],
  [
    'crankshaft_end_play: { new: 0.08 to 0.20 }',
    '- { measure: crankshaft_end_play, value: 0.30 }',
    '1 choose thrust washer ________ ________ New thrust washers of the size that fits are put in',
  ],
  [
    'valve_stem_clearance: { new: 0.015 to 0.045 }',
    '- { measure: valve_stem_clearance, at: { 1: { I: 0.030, E: 0.100 } } }',
    '1 renew valve guide 1 E ________ ________ The part is replaced by a new one.',
  ],
])('the customer reads what is done to the part itself: %s', (limits, readings, line) => {
  expect(customerText(limits, readings)).toContain(line);
});
