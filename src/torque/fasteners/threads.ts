import { quoted } from '../../diagnostic/quoted.ts';
import { parseMetricThread } from './metricThreads.ts';
import type { ParsedThread } from './threadForm.ts';
import { parseUnifiedThread } from './unifiedThreads.ts';

/**
 * Reads a thread as people write it: `M12`, `M10x1.25`, `9/16-12`, `3/4-10 UNC`, `10-32`.
 * Tolerance classes (`-6g`, `-2A`) are read over: they do not enter an estimate of clamp load.
 */
export function parseThread(text: string): ParsedThread {
  const tidy = text.trim().replace(/\s+/g, ' ');
  const parsed = parseMetricThread(tidy) ?? parseUnifiedThread(tidy);
  return (
    parsed ?? {
      problem: `${quoted(text)} is not a thread`,
      help: 'write it as M10 x 1.25, M12, 9/16-12 or 10-32',
    }
  );
}
