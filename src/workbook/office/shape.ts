import { type Area, readArea } from "../xlsx/address";
import type { Place } from "../port";

/** A place's rectangle. Excel would also take A:A or a name, whose cells nobody has counted. */
export function areaOf({ sheet, range }: Place): Area {
  const area = readArea(range);
  if (!area) throw new Error(`Cannot use ${sheet}!${range}: it must be a cell or a range, such as B4 or B4:C9`);
  return area;
}

/** What Excel gives for a place must be as many rows and columns as the place. */
export function rowsOf<T>(given: T[][], area: Area): T[][] {
  const rows = area.bottom - area.top + 1;
  const columns = area.right - area.left + 1;
  if (given.length !== rows || given.some((row) => row.length !== columns))
    throw new Error(`Excel gave ${given.length} × ${given[0]?.length ?? 0} cells where ${rows} × ${columns} were asked for`);
  return given;
}
