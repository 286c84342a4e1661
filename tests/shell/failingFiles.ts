import { type FileLayer, nodeFiles } from '../../src/shell/write/fileLayer.ts';

export interface Fault {
  /** The first call that fails, counted from 1. */
  readonly at: number;
  readonly code: string;
  /** Fail this call alone, or it and every one after it. */
  readonly keeps: boolean;
}

export interface FailingFiles {
  readonly files: FileLayer;
  readonly calls: () => readonly string[];
}

/**
 * The real file system with faults: each call is counted, and the chosen ones throw instead of being made.
 * Syncing is only counted: it is slow, and no power is cut here.
 */
export function failingFiles(fault: Fault): FailingFiles {
  const calls: string[] = [];
  const wrapped = Object.entries(nodeFiles).map(([name, call]) => {
    const failing = (...given: unknown[]): unknown => {
      calls.push(name);
      const hit = fault.keeps ? calls.length >= fault.at : calls.length === fault.at;
      // A close that reports an error has closed all the same.
      if (hit && name === 'close') Reflect.apply(call, undefined, given);
      if (hit) throw Object.assign(new Error(`${fault.code} injected`), { code: fault.code });
      return name === 'sync' ? undefined : Reflect.apply(call, undefined, given);
    };
    return [name, failing];
  });
  return { files: Object.fromEntries(wrapped) as unknown as FileLayer, calls: () => calls };
}

export const faultless: Fault = { at: Number.POSITIVE_INFINITY, code: '', keeps: false };

/** A call of its own that always fails. */
export const failingWith = (code: string) => (): never => {
  throw Object.assign(new Error(`${code} injected`), { code });
};
