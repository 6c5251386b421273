import { NAMESPACE, catalogue } from "../catalogue/catalogue";

/** What to say of a name that stands under our namespace and is none of our functions. */
export function unknownName(name: string): string {
  const nearest = nearestName(name);
  return nearest
    ? `Cannot find ${name}: did you mean ${nearest}`
    : `Cannot find ${name}: it is none of the ${NAMESPACE} functions: look for the right one in the list of all functions`;
}

function nearestName(name: string): string | undefined {
  const id = name.slice(NAMESPACE.length + 1);
  const closest = catalogue.map((entry) => ({ name: entry.name, away: distance(id, entry.id) })).sort((a, b) => a.away - b.away)[0];
  return closest && closest.away <= Math.max(1, Math.ceil(id.length / 3)) ? closest.name : undefined;
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
