import type { BookPort } from "../../src/workbook/port";
import { addressOf, readArea } from "../../src/workbook/xlsx/address";
import type { StubBook, StubCell, StubFacts } from "../office/stub-excel";

/** A workbook as the stub of Excel holds it. */
export async function stubBook(port: BookPort): Promise<StubBook> {
  const sheets: Record<string, Record<string, StubCell>> = {};
  const facts: Record<string, StubFacts> = {};
  for (const { name, used, hiddenColumns, merged, tables } of await port.sheets()) {
    facts[name] = { hiddenColumns, merged, tables };
    const cells: Record<string, StubCell> = (sheets[name] = {});
    const area = readArea(used ?? "A1");
    if (area)
      (await port.read({ sheet: name, range: used ?? "A1" })).forEach((row, r) =>
        row.forEach(({ value, formula, error, numberFormat }, c) => {
          if (value === null && formula === null && numberFormat === undefined) return;
          cells[addressOf({ row: area.top + r, column: area.left + c })] = { value: value ?? "", ...(formula === null ? {} : { formula }), ...(error ? { error } : {}), ...(numberFormat === undefined ? {} : { format: numberFormat }) };
        }),
      );
  }
  const names = Object.fromEntries((await port.names()).map(({ name, place }) => [name, `${place.sheet}!${place.range}`]));
  const [first = ""] = Object.keys(sheets);
  return { sheets, facts, names, selected: [first, "A1"] };
}
