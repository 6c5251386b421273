import type { CellContent, CellWrite } from "../../workbook/port";
import { type Area, addressOf } from "../../workbook/xlsx/address";

export interface FirstLot {
  readonly weight: number | string;
  readonly unit: string;
  readonly fineness: number | string;
  readonly price: number | string;
  /** What of it is the invented example and not the user's own. */
  readonly isInvented: { readonly lot: boolean; readonly price: boolean };
}

export const BLOCK = { rows: 7, columns: 2 } as const;

interface Line {
  readonly label: string;
  readonly content: CellContent;
  readonly numberFormat?: string;
}

/** A cell of the block, and what it is for. */
export interface BlockCell extends CellWrite {
  readonly label: string;
}

/** A small block of labels, numbers and the formulas over them. */
export function lotBlock({ weight, unit, fineness, price, isInvented }: FirstLot, sheet: string, { top, left }: Area): readonly BlockCell[] {
  const at = (line: number): string => addressOf({ row: top + line, column: left + 1 });
  const lines: readonly Line[] = [
    { label: isInvented.lot ? "A lot (invented)" : "A lot", content: null },
    { label: "Weight", content: weight },
    { label: "Unit", content: unit },
    { label: "Fineness", content: fineness },
    { label: isInvented.price ? "Price per ozt (invented)" : "Price per ozt", content: price, numberFormat: "0.00" },
    { label: "Fine weight, ozt", content: `=LOT.FINEWEIGHT(${at(1)},${at(2)},${at(3)})`, numberFormat: "0.000" },
    { label: "Worth at that price", content: `=LOT.PAYOUT(${at(5)},"ozt",${at(4)})`, numberFormat: "0.00" },
  ];
  return lines.flatMap(({ label, content, numberFormat }, line): BlockCell[] => [
    { sheet, cell: addressOf({ row: top + line, column: left }), content: label, label: "Label" },
    ...(content === null ? [] : [{ sheet, cell: at(line), content, label, ...(typeof content === "string" && !content.startsWith("=") ? { asText: true } : {}), ...(numberFormat === undefined ? {} : { numberFormat }) }]),
  ]);
}
