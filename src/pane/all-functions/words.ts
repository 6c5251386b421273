/** The words of a text, in small letters and without accents, each with its place. */
export interface Word {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

export const wordsIn = (text: string): Word[] =>
  [...text.matchAll(/[\p{L}\p{N}%‰]+/gu)].map(({ 0: word, index }) => ({ text: folded(word), start: index, end: index + word.length }));

const folded = (word: string): string => word.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();

/** Whether one letter added, left out, changed or swapped with its neighbour makes one word the other. */
export function isNearly(a: string, b: string): boolean {
  if (Math.abs(a.length - b.length) > 1) return false;
  let start = 0;
  while (start < a.length && a[start] === b[start]) start++;
  const [restA, restB] = [a.slice(start), b.slice(start)];
  const swapped = restA.length > 1 && restA[0] === restB[1] && restA[1] === restB[0] && restA.slice(2) === restB.slice(2);
  return swapped || restA.slice(1) === restB.slice(1) || restA.slice(1) === restB || restA === restB.slice(1);
}
