export interface Command {
  readonly help: string;
  /** The words after the command; the exit code. */
  readonly run: (words: readonly string[]) => number | Promise<number>;
}
