import { json as inJson, writtenJson } from '../../escape/json.ts';
import type { Writer } from '../../formats.ts';
import { diffJson } from '../diffJson.ts';
import type { ShownDiff } from './shownDiff.ts';

export const json: Writer<ShownDiff> = (shown) => writtenJson(inJson`${diffJson(shown, shown.exit)}\n`);
