/** The words of a call that cannot be carried out: told on stderr, with exit code 2. */
export class UsageError extends Error {
  readonly help: string | undefined;

  constructor(message: string, help?: string) {
    super(message);
    this.help = help;
  }
}
