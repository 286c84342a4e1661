/** A piece of work that is always the same: to look at four million letters, which takes around a millisecond. */
const LETTERS = 'a'.repeat(4_000_000);
const UNIT = (): boolean => /^[^!]*$/u.test(LETTERS);

/** In µs of the processor, so that other work on the machine does not count: the sum, since systems only sample how it is shared. */
export function processorTimeSince(before: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(before);
  return user + system;
}

function processorTime(action: () => unknown): number {
  const before = process.cpuUsage();
  action();
  return processorTimeSince(before);
}

const quickest = (action: () => unknown, times: number): number =>
  Math.min(...Array.from({ length: times }, () => processorTime(action)));

let unit: number | undefined;

/** How many pieces of that work an action comes to, so that a slow machine does not count either: the least of some tries. */
export function effort(action: () => unknown, tries = 3): number {
  unit ??= quickest(UNIT, 20);
  return quickest(action, tries) / unit;
}
