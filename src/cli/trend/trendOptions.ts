import type { TrendAxis } from '../../compare/trend.ts';
import type { FormatChoice } from '../format/formatChoice.ts';

export interface TrendOptions {
  readonly engine?: string | undefined;
  readonly position?: string | undefined;
  readonly by?: TrendAxis | undefined;
  readonly at?: string | undefined;
  readonly history?: boolean | undefined;
  /** A mark: its part is followed instead of an engine. */
  readonly part?: string | undefined;
  readonly format: readonly FormatChoice[];
}
