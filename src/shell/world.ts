/** Everything outside the program that a command may touch: given to it, so that a test can give another. */
export interface World {
  readonly workingDirectory: string;
  readonly environment: Readonly<Record<string, string | undefined>>;
  readonly out: Output;
  readonly err: Output;
  /** Tells that a run will be long, so that it pays to compile for it. */
  readonly optimise?: () => void;
  /** What is typed or piped in; undefined where a command has nothing to ask. */
  readonly input?: () => Input;
}

export interface Input extends NodeJS.ReadableStream {
  readonly isTTY?: boolean;
}

export interface Output {
  readonly isTTY?: boolean;
  readonly columns?: number;
  readonly write: (text: string) => unknown;
}
