import { Misuse } from "./misuse";

/** The file that a command reads, the one that it writes, and the flags between them. */
export function inputAndOutput(words: readonly string[], known: readonly string[]): { readonly input: string; readonly output: string; readonly flags: ReadonlySet<string> } {
  const flags = new Set(words.filter((word) => word.startsWith("--")));
  const [input, output, ...more] = words.filter((word) => !word.startsWith("--"));
  const stranger = [...flags].find((flag) => !known.includes(flag));
  if (stranger !== undefined) throw new Misuse(`There is no "${stranger}" here: ${known.join(" and ")} can be given`);
  if (input === undefined || output === undefined) throw new Misuse("Give the workbook to read and the name of the one to write");
  if (more.length > 0) throw new Misuse(`Give two names: "${more.join(" ")}" came after them`);
  return { input, output, flags };
}
