/** One input that ended as nothing may, made as small as it still does. */
export interface Failure {
  readonly what: string;
  readonly input: string;
  readonly broken: string;
}

/** How many cases of each kind ended how. */
export class Tally {
  readonly failures: Failure[] = [];
  readonly #counts = new Map<string, Map<string, number>>();

  count(what: string, ending: string): void {
    const endings = this.#counts.get(what) ?? new Map<string, number>();
    this.#counts.set(what, endings);
    endings.set(ending, (endings.get(ending) ?? 0) + 1);
  }

  fail(failure: Failure): void {
    this.count(failure.what, FAILED);
    // One of a kind is enough to mend it.
    if (!this.failures.some(({ what, broken }) => what === failure.what && broken === failure.broken)) this.failures.push(failure);
  }

  get cases(): number {
    return [...this.#counts.values()].flatMap((endings) => [...endings.values()]).reduce((a, b) => a + b, 0);
  }

  /** What, how many cases, how many of each ending. */
  table(): string {
    return [...this.#counts]
      .map(([what, endings]) => {
        const sorted = [...endings].sort((a, b) => b[1] - a[1]);
        const cases = sorted.reduce((sum, [, many]) => sum + many, 0);
        return `${what.padEnd(28)}${String(cases).padStart(9)}   ${sorted.map(([ending, many]) => `${ending} ${many}`).join(", ")}`;
      })
      .join("\n");
  }
}

const FAILED = "FAILED";
