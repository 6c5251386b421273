import { find } from "../../src/catalogue/catalogue";

/** The caution that belongs to a function's figures, in the words in which every page shows it. */
export function cautionOf(name: string): string {
  const caution = find(name)?.caution;
  if (!caution) throw new Error(`${name} has no caution to show`);
  return caution;
}

/** What computed the workbook. As a text, since not every spreadsheet keeps the text that an unknown function gave. */
export function release(): string {
  const version = find("VERSION");
  if (!version) throw new Error("There is no VERSION");
  return String(version.call().value());
}
