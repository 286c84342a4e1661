import { type Strength, strengthOf } from '../../src/torque/fasteners/grades.ts';
import type { Thread } from '../../src/torque/fasteners/threadForm.ts';
import { parseThread } from '../../src/torque/fasteners/threads.ts';

/** A thread that the tests know to be one. */
export function thread(text: string): Thread {
  const parsed = parseThread(text);
  if ('problem' in parsed) throw new Error(parsed.problem);
  return parsed.thread;
}

/** The strength of a grade that the tests know to be stated for the thread. */
export function strength(grade: string, size: string): Strength {
  const found = strengthOf(grade, thread(size));
  if ('problem' in found) throw new Error(found.problem);
  return found.strength;
}
