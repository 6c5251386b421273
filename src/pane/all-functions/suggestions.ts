const BEFORE = /^(?:a column or one value, each |a range, each cell )?(?:one of |[^:",]+: )?/;
/** A unit or a name of up to three words. */
const CHOICE = /^(?!an? )[\p{L}\p{N}%/]+(?: [\p{L}\p{N}]+){0,2}$/u;

/** The texts that an argument knows, from the words of its range. */
export function choices(wants: string): readonly string[] {
  const listed = wants.replace(BEFORE, "").split(", ");
  return listed.length > 1 && listed.every((choice) => CHOICE.test(choice)) ? listed : [];
}

/** What a field proposes: the texts that its argument knows, else the examples in the words of its range. */
export function suggestions(wants: string): readonly string[] {
  const known = choices(wants);
  return known.length > 0 ? known : [...wants.matchAll(/"([^"]+)"/g)].map(([, example = ""]) => example);
}
