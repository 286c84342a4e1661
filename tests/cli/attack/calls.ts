/** A call of the program that shows what documents say. */
export interface Call {
  readonly words: readonly string[];
  readonly language: 'text' | 'markdown' | 'json' | 'csv' | 'xml' | 'commands';
}

const text = (words: string): Call => ({ words: words.split(' '), language: 'text' });

const markdown = (words: string): Call => ({
  words: [...words.split(' '), '--format', 'markdown'],
  language: 'markdown',
});

const json = (words: string): Call => ({
  words: [...words.split(' '), '--format', 'json'],
  language: 'json',
});

/** What programs read of a check. */
const forPrograms = (words: string): readonly Call[] => [
  { words: [...words.split(' '), '--format', 'sarif'], language: 'json' },
  { words: [...words.split(' '), '--format', 'junit'], language: 'xml' },
  { words: [...words.split(' '), '--format', 'github'], language: 'commands' },
  { words: [...words.split(' '), '--format', 'lines'], language: 'text' },
];

const SIDES = 'diff teardown rebuild engines/pump';
const TREND = 'trend main_bearing_clearance engines/pump';

/** What of a plan is asked for by itself, and what is handed over. */
const PLANS: readonly string[] = [
  '--fit',
  '--order',
  '--closing',
  '--for customer',
  '--for machine-shop',
].map((asked) => `plan engines/pump ${asked}`);

/** Of a shop whose documents have problems: wherever they are reported of. */
export const OF_PROBLEMS: readonly Call[] = [
  text('check'),
  text('explain stud_height'),
  text('torque caps engines/pump'),
];

/** The same, of no width. */
export const OF_PROBLEMS_OF_NO_WIDTH: readonly Call[] = [
  json('check'),
  markdown('check'),
  ...forPrograms('check'),
];

/** What lays its lines out for the width of a terminal. */
export const LAID_OUT: readonly Call[] = [
  text('check engines'),
  text('check engines --all --detail'),
  text('check engines --session teardown'),
  text('check --known known.json'),
  text('explain stud_height'),
  text('explain stud_spread'),
  text('explain engines/pump stud_height'),
  text('torque caps engines/pump'),
  text('torque rows engines/pump'),
  text('torque row engines/pump'),
  text('torque pairs engines/pump'),
  text('torque round engines/pump'),
  text(`${SIDES} --all`),
  text(TREND),
  text('study engines/pump'),
  text('plan engines/pump'),
  ...PLANS.map(text),
  text('instruments'),
  text('part'),
  text('part qCrankMark'),
  text('part qShelfMark'),
  text('recall qMic'),
  text('recall qMic --error 0.01'),
  text('film engines/pump'),
  text('film main_bearing_clearance engines/pump --clearance 0.001..0.006'),
];

/** What is the same at any width. */
export const OF_NO_WIDTH: readonly Call[] = [
  markdown('torque caps engines/pump'),
  markdown('torque rows engines/pump'),
  markdown(`${SIDES} --all`),
  json('check engines --all --detail'),
  markdown('check engines'),
  markdown('check --known known.json'),
  json('check --known known.json'),
  markdown('check engines --all --detail'),
  markdown('plan engines/pump'),
  ...PLANS.map(markdown),
  json('plan engines/pump --fit'),
  json('plan engines/pump --order'),
  json('plan engines/pump --closing'),
  { words: [...'plan engines/pump --order'.split(' '), '--format', 'csv'], language: 'csv' },
  markdown('instruments'),
  json('instruments'),
  markdown('part qShelfMark'),
  json('part'),
  json('part qCrankMark'),
  json('film engines/pump'),
  markdown('recall qMic --error 0.01'),
  json('recall qMic --error 0.01'),
  json('torque caps engines/pump'),
  json('plan engines/pump'),
  ...forPrograms('check engines --all'),
  { words: ['check', 'engines', '--all', '--format', 'csv'], language: 'csv' },
  json(SIDES),
  json(TREND),
  markdown(TREND),
  markdown('explain engines/pump stud_height'),
  markdown('study engines/pump'),
  { words: [...TREND.split(' '), '--format', 'csv'], language: 'csv' },
];

/** What says whether all documents were taken. */
export const JUDGED: Call = json('check engines');
