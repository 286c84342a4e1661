/** What is done to an engine, in the order of work: nothing that cuts before what shows whether it is worth it. */
export const OPERATIONS = [
  'measure',
  'measure again',
  'state the size',
  'decide about',
  'clean',
  'crack test',
  'straighten',
  'line bore',
  'surface',
  'bore',
  'resize',
  'grind',
  'machine',
  'machine or renew',
  'renew',
  'choose',
  'adjust',
  'find the cause',
  'weigh and balance',
  'wash',
] as const;

export type Operation = (typeof OPERATIONS)[number];
