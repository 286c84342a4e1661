/** Where the job stands at a session. */
export const STAGES = ['teardown', 'machined', 'trial', 'rebuild', 'service'] as const;

export type Stage = (typeof STAGES)[number];
