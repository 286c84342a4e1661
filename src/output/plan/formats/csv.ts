import { writtenCsv } from '../../escape/csv.ts';
import type { Writer } from '../../formats.ts';
import type { ShownPage } from './shownPage.ts';

export const csv: Writer<ShownPage> = ({ rows }) => writtenCsv(rows());
