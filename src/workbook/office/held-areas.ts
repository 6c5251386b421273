import type { CellReading } from "../port";
import { type Area, addressOf, areaText } from "../xlsx/address";
import { READ, readings } from "./reading";
import { rowsOf } from "./shape";
import { contentBefore, give, isSame } from "./writing";

interface Place {
  readonly sheet: string;
  readonly area: Area;
}

/** What a rectangle of cells holds. */
export interface HeldArea extends Place {
  readonly cells: readonly (readonly CellReading[])[];
  readonly formats: readonly (readonly string[])[];
}

export async function holdAreas(context: Excel.RequestContext, places: readonly Place[]): Promise<readonly HeldArea[]> {
  const ranges = places.map(({ sheet, area }) => context.workbook.worksheets.getItem(sheet).getRange(areaText(area)).load(READ));
  if (ranges.length > 0) await context.sync();
  return places.map((place, i) => {
    const range = ranges[i] as Excel.Range;
    return { ...place, cells: readings(range, place.area), formats: rowsOf<unknown>(range.numberFormat, place.area).map((row) => row.map(String)) };
  });
}

/** Gives those cells their old contents that hold something else now. */
export async function putAreasBack(context: Excel.RequestContext, held: readonly HeldArea[]): Promise<void> {
  const now = await holdAreas(context, held);
  held.forEach(({ sheet, area, cells, formats }, i) =>
    cells.forEach((row, r) =>
      row.forEach((before, c) => {
        const format = formats[r]?.[c] ?? "General";
        const is = { before: now[i]?.cells[r]?.[c] ?? before, format: now[i]?.formats[r]?.[c] ?? format };
        if (isSame({ before, format }, is)) return;
        give(context.workbook.worksheets.getItem(sheet).getRange(addressOf({ row: area.top + r, column: area.left + c })), contentBefore(before), format);
      }),
    ),
  );
}
