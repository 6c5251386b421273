/** Random numbers that come again with the same seed, so that a failure can be run again. */
export function random(seed: number) {
  let state = seed >>> 0;
  /** From 0 to below 1 (mulberry32). */
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  const whole = (low: number, high: number): number => low + Math.floor(next() * (high - low + 1));
  return {
    next,
    between: (low: number, high: number): number => low + next() * (high - low),
    /** A whole number, both ends included. */
    whole,
    /** A number with so many decimals, as scales show it. */
    decimal: (low: number, high: number, places: number): number =>
      whole(Math.ceil(low * 10 ** places), Math.floor(high * 10 ** places)) / 10 ** places,
    pick: <T>(choices: readonly T[]): T => choices[whole(0, choices.length - 1)] as T,
    chance: (share: number): boolean => next() < share,
  };
}

export type Random = ReturnType<typeof random>;
