import type { NewSheet, SheetCell } from "../workbook/port";
import { dayNumber, readDay } from "../lots/calendar";
import { monthText } from "../month/month-of";
import { COLUMNS } from "./csv";
import type { Journal } from "./journal";

const MONEY = "#,##0.00";
const FIRST_ROW = 4;

/** The journal as a sheet of the workbook, under a name that is free. */
export function journalSheet({ month, settlements, remarks }: Journal, taken: readonly string[]): NewSheet {
  const lines = settlements.flat();
  const last = FIRST_ROW + lines.length - 1;
  const heading = COLUMNS.map((title, i): SheetCell => ({ cell: `${letter(i)}${FIRST_ROW - 1}`, content: title, look: "heading", align: title === "Debit" || title === "Credit" ? "right" : "left" }));
  const body = lines.flatMap(({ date, lot, client, account, debit, credit, memo }, i): SheetCell[] => {
    const row = FIRST_ROW + i;
    const day = readDay(date);
    const text = (column: string, content: string): SheetCell[] => (content === "" ? [] : [{ cell: `${column}${row}`, content, asText: true }]);
    const amount = (column: string, value: bigint): SheetCell[] => (value === 0n ? [] : [{ cell: `${column}${row}`, content: Number(value) / 100, numberFormat: MONEY }]);
    return [
      { cell: `A${row}`, content: day ? dayNumber(day) : date, numberFormat: "yyyy-mm-dd", align: "left" },
      ...text("B", lot),
      ...text("C", client),
      ...text("D", account),
      ...amount("E", debit),
      ...amount("F", credit),
      ...text("G", memo),
    ];
  });
  const total = last + 1;
  const sums = lines.length === 0 ? [] : ["E", "F"].map((column): SheetCell => ({ cell: `${column}${total}`, content: `=SUM(${column}${FIRST_ROW}:${column}${last})`, numberFormat: MONEY, look: "total" }));
  return {
    newSheet: freeName(`Journal ${monthText(month)}`, taken),
    columnWidths: [12, 12, 18, 26, 13, 13, 34],
    cells: [
      { cell: "A1", content: `Journal of ${monthText(month)}`, look: "title" },
      ...heading,
      ...body,
      ...(lines.length === 0 ? [] : [{ cell: `D${total}`, content: "Total", look: "total" } as const]),
      ...sums,
      ...remarks.map((remark, i): SheetCell => ({ cell: `A${total + 2 + i}`, content: remark, asText: true, look: "note" })),
    ],
    print: { area: `A1:G${Math.max(total + 1 + remarks.length, FIRST_ROW)}`, orientation: "landscape", fitsOnePage: false },
  };
}

const letter = (i: number): string => String.fromCharCode(65 + i);

function freeName(name: string, taken: readonly string[]): string {
  const isTaken = (one: string): boolean => taken.some((other) => other.toLowerCase() === one.toLowerCase());
  let free = name;
  for (let n = 2; isTaken(free); n++) free = `${name} (${n})`;
  return free;
}
