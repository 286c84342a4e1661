// Loaded before a program: when that ends, its peak memory in KiB and its milliseconds by the clock and of processors go to
// file descriptor 3.
import { writeSync } from 'node:fs';

process.on('exit', () => {
  const { maxRSS: kib, userCPUTime, systemCPUTime } = process.resourceUsage();
  writeSync(3, JSON.stringify({ kib, wall: performance.now(), cpu: (userCPUTime + systemCPUTime) / 1000 }));
});
