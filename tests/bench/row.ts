/** One line of the table: what was measured, the figure, what it must be, and whether it is. */
export interface Row {
  readonly what: string;
  readonly figure: string;
  readonly goal: string;
  readonly isMet: boolean;
}

export const milliseconds = (ms: number): string =>
  ms < 0.001 ? `${digits(ms * 1e6)} ns` : ms < 1 ? `${digits(ms * 1000)} µs` : ms < 1000 ? `${digits(ms)} ms` : `${digits(ms / 1000)} s`;

/** To three significant digits, in plain notation. */
export const digits = (number: number): string => String(Number(number.toPrecision(3)));

/** How many times as long one takes as another. */
export function atMost(what: string, ours: number, other: number, most: number): Row {
  const ratio = ours / other;
  return { what, figure: `${ratio.toFixed(2)} × (${milliseconds(ours)} against ${milliseconds(other)})`, goal: `at most ${most} ×`, isMet: ratio <= most };
}

/** How many times as fast one is as another. */
export function atLeast(what: string, ours: number, other: number, least: number): Row {
  const ratio = other / ours;
  return { what, figure: `${digits(ratio)} × as fast (${milliseconds(ours)} against ${milliseconds(other)})`, goal: `at least ${least} ×`, isMet: ratio >= least };
}

export const below = (what: string, ms: number, most: number): Row => ({ what, figure: milliseconds(ms), goal: `under ${milliseconds(most)}`, isMet: ms < most });
