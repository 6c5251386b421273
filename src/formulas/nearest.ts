/** The word that someone may have meant, where one is near enough. */
export function nearest(word: string, among: readonly string[]): string | undefined {
  const closest = among.map((known) => ({ known, away: distance(word, known) })).sort((a, b) => a.away - b.away)[0];
  return closest && closest.away <= Math.max(1, Math.ceil(word.length / 3)) ? closest.known : undefined;
}

/** How many letters must be put in, left out, changed or swapped with their neighbour to make one word of the other. */
function distance(from: string, to: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, i) => i);
  for (let i = 1; i <= from.length; i++) {
    const row = [i];
    for (let j = 1; j <= to.length; j++) {
      const changed = (last[j - 1] ?? 0) + (from[i - 1] === to[j - 1] ? 0 : 1);
      const swapped = from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1] ? (beforeLast[j - 2] ?? Infinity) + 1 : Infinity;
      row.push(Math.min(changed, swapped, (last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1));
    }
    [beforeLast, last] = [last, row];
  }
  return last[to.length] ?? 0;
}
