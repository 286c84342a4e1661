import type { EngineState } from '../../../compare/state.ts';
import type { Trend } from '../../../compare/trend.ts';
import type { NamedCommit } from '../../diff/revision.ts';
import { trendJson } from '../trendJson.ts';
import type { TrendView } from '../trendView.ts';

/** A trend, of an engine or of a part, and what is said about it. */
export interface ShownTrend {
  readonly view: TrendView;
  readonly about: Parameters<typeof trendJson>[0];
  readonly found: Trend;
  readonly revision: NamedCommit | undefined;
  readonly exit: 0 | 2;
  readonly unitFor: EngineState['unitFor'];
}

/** For programs. */
export const trendData = ({ about, found, revision, unitFor, exit }: ShownTrend) =>
  trendJson(about, found, revision, unitFor, exit);
