import type { CellContent } from "../port";

export interface CellValue {
  readonly value: CellContent;
  /** True where the value is an error's code. */
  readonly error?: boolean;
}

export interface CellChange extends CellValue {
  readonly sheet: string;
  /** B4 */
  readonly cell: string;
  /**
   * A formula, in en-US form with LOT.NAME(…); null for a plain value.
   * Left out, a formula that is there stays and only its stored value changes.
   */
  readonly formula?: string | null;
  /** All cells that the formula fills, [row][column]. The first is this cell itself, whose value stands above. */
  readonly spill?: readonly (readonly CellValue[])[];
}
