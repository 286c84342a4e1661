import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { builtProgram, keepingCompiled, quoted } from '../program.ts';

/** Whether `script` of util-linux is there: Node alone can open no terminal. */
export const hasTerminal =
  spawnSync('script', ['-qec', 'true', '/dev/null'], { stdio: 'ignore', timeout: 100_000 }).status === 0;

/** A program in a terminal of its own, and a hand on its keyboard. */
export class Terminal {
  readonly #child: ChildProcess;
  #shown = '';
  readonly #ended: Promise<number>;

  constructor(
    folder: string,
    words: readonly string[],
    environment: Readonly<Record<string, string>> = {},
    program: readonly string[] = [process.execPath, builtProgram()],
  ) {
    const command = [...program, ...words].map(quoted).join(' ');
    this.#child = spawn('script', ['-qec', command, '/dev/null'], {
      cwd: folder,
      env: { ...process.env, ...keepingCompiled(), TERM: 'xterm', NO_COLOR: '1', ...environment },
    });
    this.#child.stdout?.setEncoding('utf8').on('data', (text: string) => {
      this.#shown += text;
    });
    this.#ended = new Promise((resolve) => {
      this.#child.on('close', (code) => resolve(code ?? -1));
    });
  }

  get shown(): string {
    return this.#shown;
  }

  get pid(): number | undefined {
    return this.#child.pid;
  }

  /** Waits until a text is on the screen. */
  see(text: string): Promise<void> {
    return this.seeTimes(text, 1);
  }

  /** Waits until a text was shown so many times. */
  async seeTimes(text: string, times: number, patienceMs = 100_000): Promise<void> {
    const until = performance.now() + patienceMs;
    while (this.#shown.split(text).length <= times) {
      if (performance.now() > until) throw new Error(`never saw ${JSON.stringify(text)} in:\n${this.#shown}`);
      await pause(5);
    }
  }

  /** All at once, as a gauge that dumps its memory does. */
  send(text: string): void {
    this.#child.stdin?.write(text);
  }

  /** Character by character, one a millisecond on the average, without a gap between readings. */
  async type(text: string): Promise<void> {
    const began = performance.now();
    for (let sent = 0; sent < text.length; ) {
      await pause(1);
      const due = Math.min(text.length, Math.ceil(performance.now() - began));
      this.send(text.slice(sent, due));
      sent = due;
    }
  }

  /** The exit code. */
  ended(): Promise<number> {
    return this.#ended;
  }

  kill(): void {
    this.#child.kill('SIGKILL');
  }
}

export const pause = (durationMs: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, durationMs);
  });
