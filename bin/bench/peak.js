// Loaded before a program: when that ends, its peak memory in KiB and its processor time in milliseconds go to file
// descriptor 3.
import { writeSync } from 'node:fs';

process.on('exit', () => {
  const { maxRSS: kib, userCPUTime, systemCPUTime } = process.resourceUsage();
  writeSync(3, JSON.stringify({ kib, cpu: (userCPUTime + systemCPUTime) / 1000 }));
});
