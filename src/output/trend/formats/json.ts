import { json as inJson, writtenJson } from '../../escape/json.ts';
import type { Writer } from '../../formats.ts';
import { type ShownTrend, trendData } from './shownTrend.ts';

export const json: Writer<ShownTrend> = (shown) => writtenJson(inJson`${trendData(shown)}\n`);
