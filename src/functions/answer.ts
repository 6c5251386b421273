/** What a cell function gives back: one reading of it is the value, others are the working and the native twin. */

export type CellValue = number | string | boolean;

/** A working as data; `page` in working-page.ts sets it as text. */
export interface Working {
  readonly title: string;
  readonly lines: readonly WorkingLine[];
}

export interface WorkingLine {
  readonly part: "rule" | "formula" | "given" | "step" | "constant" | "rounding" | "result" | "caution" | "source";
  readonly text: string;
}

export interface Answer {
  /** One value, or rows of cells for a spill. Throws a FaultError. */
  value(): CellValue | CellValue[][];
  working(): Working;
  /** An ordinary spreadsheet formula with its "=", rows of them for a spill, or null where only the value can stand. */
  native(): string | string[][] | null;
}

/** An argument as a formula gives it: the text that stands for it in a formula and, where known, what it now holds. */
export class Reference {
  constructor(
    readonly text: string,
    readonly value?: unknown,
  ) {}
}
