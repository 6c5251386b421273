/** The median time in milliseconds of several functions, run in turn so that whatever else the machine does meets all of them. */
export function medians<K extends string>(works: Readonly<Record<K, () => unknown>>, { rounds = 15, warm = 5 } = {}): Record<K, number> {
  const names = Object.keys(works) as K[];
  const times = new Map<K, number[]>(names.map((name) => [name, []]));
  for (let round = -warm; round < rounds; round++)
    for (const name of names) {
      const start = performance.now();
      kept = works[name]();
      if (round >= 0) times.get(name)?.push(performance.now() - start);
    }
  return Object.fromEntries(names.map((name) => [name, median(times.get(name) ?? [])])) as Record<K, number>;
}

/** Holds the last result, so that no work can be left out as useless. */
export let kept: unknown;

export const median = (numbers: readonly number[]): number => {
  const sorted = [...numbers].sort((a, b) => a - b);
  return ((sorted[(sorted.length - 1) >> 1] as number) + (sorted[sorted.length >> 1] as number)) / 2;
};
