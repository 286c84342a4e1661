import type { JudgedRoute } from '../../checks/judge/row.ts';

/** Whether another way of measuring agrees with the judged one: above an E_n of 1 (ISO 13528) one of them is wrong. */
export const agreementText = ({ en }: JudgedRoute): string =>
  en === null ? '' : `, ${en > 1 ? 'contradicts' : 'agrees'}`;
