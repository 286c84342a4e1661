import type { Family } from '../../layout/family.ts';

/** What to write where a reading lacks its position, or has one that it cannot have. */
export const readingForm = ({ writtenUnder }: Family): string => FORMS[writtenUnder];

const FORMS: Readonly<Record<Family['writtenUnder'], string>> = {
  value: 'write `value:` and the reading',
  after: 'write `after: [{ step: …, value: … }]`',
  at: 'write `at: { 1: … }`',
};
