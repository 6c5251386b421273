/** Tries ever smaller inputs as long as they fail as the given one does; `smaller` gives the next ones to try. */
export async function smallest<T>(input: T, smaller: (input: T) => readonly T[], fails: (input: T) => boolean | Promise<boolean>, tries = 400): Promise<T> {
  let least = input;
  let left = tries;
  for (let found = true; found && left > 0; ) {
    found = false;
    for (const next of smaller(least)) {
      if (left-- <= 0) break;
      if (!(await fails(next))) continue;
      least = next;
      found = true;
      break;
    }
  }
  return least;
}

/** A text without one of its halves, quarters, eighths, … */
export function smallerTexts(text: string): readonly string[] {
  const shorter: string[] = [];
  for (let size = Math.ceil(text.length / 2); size >= 1; size = size === 1 ? 0 : Math.ceil(size / 2))
    for (let at = 0; at < text.length && shorter.length < 200; at += size) shorter.push(text.slice(0, at) + text.slice(at + size));
  return shorter;
}
