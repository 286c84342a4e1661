export const KINDS = [
  'shop',
  'engine',
  'limits',
  'instruments',
  'session',
  'torque',
  'stock',
  'part',
] as const;

export type Kind = (typeof KINDS)[number];
