import { type GrownTable, newAreas } from "../table-growth";
import { areaText, readArea } from "../xlsx/address";
import { type HeldArea, holdAreas, putAreasBack } from "./held-areas";
import { areaIn } from "./sheets";
import { knows } from "./versions";

/** A table on its way to a larger range, and what the cells hold until then that it takes up. */
export interface WrittenTable {
  readonly growth: GrownTable;
  readonly held: readonly HeldArea[];
}

export async function rememberTables(context: Excel.RequestContext, tables: readonly GrownTable[]): Promise<readonly WrittenTable[]> {
  const written: WrittenTable[] = [];
  for (const growth of tables) {
    if (!knows("1.13"))
      throw new Error(`Cannot enlarge the table ${growth.table}: this Excel does not let an add-in do so: select its last cell and press Tab for another row, or type a heading right beside it for another column, then try again`);
    const [before, after] = [readArea(growth.before), readArea(growth.tableRange)];
    const areas = before && after ? newAreas(before, after) : [];
    written.push({ growth, held: await holdAreas(context, areas.map((area) => ({ sheet: growth.sheet, area }))) });
  }
  return written;
}

/** Excel then fills calculated columns and names those without a heading, so cells are written after it. */
export const grow = (context: Excel.RequestContext, { growth }: WrittenTable): void => resize(context, growth, growth.tableRange);

/** Gives tables their old ranges, and the cells that they had taken up their old contents. */
export async function putTablesBack(context: Excel.RequestContext, tables: readonly WrittenTable[]): Promise<void> {
  if (tables.length === 0) return;
  const now = tables.map(({ growth }) => context.workbook.tables.getItem(growth.table).getRange().load(["rowIndex", "columnIndex", "rowCount", "columnCount"]));
  await context.sync();
  tables.forEach(({ growth }, i) => {
    if (areaText(areaIn(now[i] as Excel.Range)) !== growth.before) resize(context, growth, growth.before);
  });
  await putAreasBack(context, tables.flatMap(({ held }) => held));
}

const resize = (context: Excel.RequestContext, { sheet, table }: GrownTable, range: string): void =>
  context.workbook.tables.getItem(table).resize(context.workbook.worksheets.getItem(sheet).getRange(range));
