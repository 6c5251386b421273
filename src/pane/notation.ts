/** How numbers and lists are written in a formula. */
export interface Notation {
  readonly decimal: "." | ",";
  /** Between arguments. */
  readonly separator: "," | ";";
  /** Between the columns of a list in braces; its rows are always parted by a semicolon. */
  readonly column: "," | "\\";
}

/** What a workbook's port takes. */
export const portNotation: Notation = { decimal: ".", separator: ",", column: "," };

export const userNotation = ({ decimal, separator }: Pick<Notation, "decimal" | "separator">): Notation => ({
  decimal,
  separator,
  column: decimal === "," || separator === ";" ? "\\" : ",",
});

export const writtenNumber = (value: number, { decimal }: Pick<Notation, "decimal">): string => String(value).replace(".", decimal).replace("e", "E");

export const writtenText = (text: string): string => `"${text.replaceAll('"', '""')}"`;
