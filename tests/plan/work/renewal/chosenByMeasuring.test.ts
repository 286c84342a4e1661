import { expect, it } from 'vitest';
import { ENGINE, type Files, limitsOf, REGISTER, sessionOf } from '../../../shopOf.ts';
import { jobCalled } from '../../planOf.ts';

const shop = (limits: string, blocks: string): Files => ({
  'register.yaml': REGISTER,
  'e/engine.yaml': ENGINE.replace('crankpins: 4', 'crankpins: 4, cam_bearings: 3'),
  'e/limits.yaml': limitsOf(limits),
  'e/session.yaml': sessionOf('teardown', blocks),
});

const CAM_LOOSE = '- { measure: cam_bearing_clearance, at: { 1: 0.0030, 2: 0.0080, 3: 0.0030 } }';
const CAM_BUSH = '- { measure: cam_bearing_fit, at: { 1: 0.0001, 2: 0.0001, 3: 0.0001 } }';

it.each<readonly [string, string, string, string, readonly string[]]>([
  [
    'a loose cam bearing',
    'choose cam bearings',
    'cam_bearing_clearance: { wear: { max: 0.0060 } }',
    CAM_LOOSE,
    ['buy by the measured cam journal diameter: plan --fit chooses no cam bearings'],
  ],
  [
    'a cam bearing that is loose both ways',
    'choose cam bearings',
    'cam_bearing_clearance: { wear: { max: 0.0060 } }\ncam_bearing_fit: { new: { max: 0 } }',
    `${CAM_LOOSE}\n${CAM_BUSH}`,
    ['buy by the measured cam housing bore and cam journal diameter: plan --fit chooses no cam bearings'],
  ],
  [
    'a loose pin',
    'choose piston pins',
    'piston_pin_clearance: { wear: { max: 0.0040 } }',
    '- { measure: piston_pin_clearance, with: fine, at: { 1: 0.0055, 2: 0.0020 } }',
    ['buy by the measured piston pin bore: plan --fit chooses no piston pins'],
  ],
  [
    'a loose main, whose shells are chosen from the shelf',
    'choose main shells',
    'main_bearing_clearance: { wear: { max: 0.0040 } }',
    '- { measure: main_bearing_clearance, with: fine, at: { 1: 0.0055, 2: 0.0020, 3: 0.0020 } }',
    [],
  ],
  [
    'too much end play, for which thrust washers are chosen',
    'choose thrust washer',
    'crankshaft_end_play: { wear: { max: 0.0100 } }',
    '- { measure: crankshaft_end_play, with: dial, value: 0.0150 }',
    [],
  ],
])('%s says what it is chosen by', (_, name, limits, blocks, follows) =>
  expect(jobCalled(name, shop(limits, blocks)).follows).toEqual(follows),
);
