export const KINDS = ['shop', 'engine', 'limits', 'instruments', 'session', 'torque'] as const;

export type Kind = (typeof KINDS)[number];
