import { random } from '../checks/slips/generated/random.ts';
import type { Files } from '../shopOf.ts';
import { engineText, limitsText, type Session, sessionText } from './documents.ts';
import { FLEET, type Life } from './fleet.ts';
import { sessionsOf, UNITS } from './measured.ts';
import { INSTRUMENTS, README, SHOP } from './shared.ts';
import { K4471, STORY, STORY_LIMITS } from './story.ts';

const SEED = 4471;

/** Ten invented engines over ten years, as `docs/shops/old-quay` holds them: the same at every call. */
export function oldQuay(): Files {
  const next = random(SEED);
  return {
    'README.md': README,
    'shop.yaml': SHOP,
    'instruments.yaml': INSTRUMENTS,
    'limits/three-in-line.yaml': limitsText('these limits hold for no engine.', STORY_LIMITS),
    'parts/K4471.yaml': K4471,
    ...folders(STORY.map(({ folder, sheet, sessions }) => [folder, engineText(sheet), LENT, sessions])),
    ...folders(FLEET.map((life) => [life.folder, sheetOf(life), limitsOf(life), sessionsOf(life, next)])),
  };
}

const LENT = limitsText(
  'what all three engines of this make have in common.',
  [],
  ['extends: ../../limits/three-in-line.yaml'],
).replace('limits:\n', 'limits: {}\n');

type Folder = readonly [name: string, engine: string, limits: string, sessions: readonly Session[]];

const folders = (all: readonly Folder[]): Files =>
  Object.fromEntries(
    all.flatMap(([name, engine, limits, sessions]) => [
      [`engines/${name}/engine.yaml`, engine],
      [`engines/${name}/limits.yaml`, limits],
      ...sessions.map((each) => [
        `engines/${name}/sessions/${each.date}-${each.stage}.yaml`,
        sessionText(each),
      ]),
    ]),
  );

function sheetOf({ about, name, unit, layout, sizes, job }: Life): string {
  const { places, journal, bore } = UNITS[unit];
  const middle = (size: number, wide: number): string => (size + wide / 2).toFixed(places);
  return engineText({
    about,
    name,
    ...(unit === 'in' ? {} : { units: 'length: mm, temperature: degC' }),
    layout,
    sizes: `bore: ${middle(sizes.bore, bore.wide)}, main_journal_diameter: ${middle(sizes.main, journal.wide)}, crankpin_diameter: ${middle(sizes.pin, journal.wide)}`,
    job,
  });
}

function limitsOf({ unit, sizes }: Life): string {
  const { places, journal, bore, play } = UNITS[unit];
  const text = (size: number): string => size.toFixed(places);
  const shaft = (size: number): string =>
    `{ new: ${text(size)} to ${text(size + journal.wide)}, wear: { min: ${text(size - journal.worn)} } }`;
  return limitsText('these limits hold for no engine.', [
    `cylinder_bore: { new: ${text(sizes.bore)} to ${text(sizes.bore + bore.wide)}, wear: { max: ${text(sizes.bore + bore.worn)} } }`,
    `main_journal_diameter: ${shaft(sizes.main)}`,
    `crankpin_diameter: ${shaft(sizes.pin)}`,
    `crankshaft_end_play: { new: ${play.from} to ${play.to}, wear: { max: ${play.worn} } }`,
  ]);
}
