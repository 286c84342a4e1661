import type { Characteristic } from '../../../characteristics/characteristic.ts';
import type { Row } from '../../../checks/judge/row.ts';

/** A test of the program or of a shop whose fail is a crack. */
export const isCrackTest = ({ outcomes }: Characteristic): boolean => /\bcrack/i.test(outcomes?.fail ?? '');

/** A crack test that failed: what is cracked is renewed, and nothing of it is cut. */
export const isCracked = ({ characteristic, judgement }: Row): boolean =>
  isCrackTest(characteristic) && judgement.verdict === 'out';
