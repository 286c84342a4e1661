import type { Writer } from '../../formats.ts';
import { trendCsv } from '../trendCsv.ts';
import { type ShownTrend, trendData } from './shownTrend.ts';

export const csv: Writer<ShownTrend> = (shown) => trendCsv(trendData(shown));
