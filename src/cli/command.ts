/** A command, as its help tells it and as it runs. */
export interface Command {
  /** What is written after its name. */
  readonly takes: string;
  /** One line for the list of commands. */
  readonly does: string;
  /** Lines that work as they stand in the folder of the product. */
  readonly examples: readonly string[];
  readonly more: string;
  /** When it ends with 1; null for a command that ends with 0 or 2 alone. */
  readonly endsWithOne: string | null;
  /** The words after the command; the exit code. */
  readonly run: (words: readonly string[]) => number | Promise<number>;
}
