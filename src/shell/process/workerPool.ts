import { availableParallelism } from 'node:os';
import type { Worker as Thread } from 'node:worker_threads';
import { workerThreads } from './lateModules.ts';

/** More gain little: what is printed goes through one thread. */
const MOST_THREADS = 4;

/** How many results may wait for those before them, so that memory does not grow with the tasks. */
const LEAD = 16;

/** What goes to a thread, and what it answers. */
export interface Order<Task> {
  readonly index: number;
  readonly task: Task;
}

export interface Answer<Result> {
  readonly index: number;
  readonly result: Result;
}

/**
 * Carries out tasks in threads and gives the results in the order of the tasks. What goes wrong in a thread goes wrong here.
 * @param member the absolute path of the file of the bundle that a thread runs
 */
export async function* workerPool<Call, Task, Result>(
  member: string,
  call: Call,
  tasks: readonly Task[],
): AsyncGenerator<Result> {
  const { Worker } = workerThreads();
  const results = new Inbox<Result>();
  let given = 0;
  let taken = 0;
  const idle: Thread[] = [];
  const give = (worker: Thread): void => {
    const task = tasks[given];
    if (task === undefined) return;
    if (given >= taken + LEAD) idle.push(worker);
    else worker.postMessage({ index: given++, task } satisfies Order<Task>);
  };
  const workers = Array.from({ length: Math.min(MOST_THREADS, availableParallelism()) }, () => {
    const worker = new Worker(member, { workerData: call });
    worker.on('message', ({ index, result }: Answer<Result>) => {
      results.put(index, result);
      give(worker);
    });
    worker.on('error', (error) => results.fail(error));
    worker.on('exit', (code) => results.fail(new Error(`a thread ended with ${code}`)));
    // A second task waits in the thread, so that it need not wait for this one.
    give(worker);
    give(worker);
    return worker;
  });
  try {
    for (taken = 0; taken < tasks.length; ) {
      const result = await results.take(taken);
      taken += 1;
      for (const worker of idle.splice(0)) give(worker);
      yield result;
    }
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
}

/** Results by number, in whatever order they come; asked for in their order. */
class Inbox<Result> {
  readonly #came = new Map<number, Result>();
  #trouble: { readonly error: unknown } | undefined;
  #wake: () => void = () => {};

  put(index: number, result: Result): void {
    this.#came.set(index, result);
    this.#wake();
  }

  fail(error: unknown): void {
    this.#trouble ??= { error };
    this.#wake();
  }

  async take(index: number): Promise<Result> {
    for (;;) {
      if (this.#trouble !== undefined) throw this.#trouble.error;
      const result = this.#came.get(index);
      if (result !== undefined) {
        this.#came.delete(index);
        return result;
      }
      await new Promise<void>((resolve) => {
        this.#wake = resolve;
      });
    }
  }
}
