/** 128 plus the signal's number, as shells count. */
const EXIT_CODES = { SIGHUP: 129, SIGINT: 130, SIGTERM: 143 } as const;

export interface SignalWatch {
  /** The exit code that the first signal asks for; undefined while there was none. */
  readonly exitCode: () => number | undefined;
  readonly stop: () => void;
}

/**
 * From here on a signal is only noted: the write in hand, which is synchronous, ends whole and leaves nothing behind.
 * Who watches must look at `exitCode` between two writes, or give `onSignal`.
 */
export function watchSignals(onSignal: () => void = () => {}): SignalWatch {
  let exitCode: number | undefined;
  const note = (signal: NodeJS.Signals) => {
    exitCode ??= EXIT_CODES[signal as keyof typeof EXIT_CODES];
    onSignal();
  };
  const signals = Object.keys(EXIT_CODES) as NodeJS.Signals[];
  for (const signal of signals) process.on(signal, note);
  const stop = () => {
    for (const signal of signals) process.off(signal, note);
  };
  return { exitCode: () => exitCode, stop };
}
