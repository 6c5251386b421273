import { sortedChanges } from "./changes";
import { READ, readings } from "./office/reading";
import { run } from "./office/run";
import { areaOf } from "./office/shape";
import { putBack, remember, set } from "./office/writing";
import type { Place, WorkbookPort } from "./port";
import { areaText } from "./xlsx/address";

/** The port over Excel. */
export function officePort(): WorkbookPort {
  return { selection, onSelection, read, write, select };
}

const selection: WorkbookPort["selection"] = () =>
  run("tell which cell is selected", async (context) => {
    const range = context.workbook.getSelectedRange();
    range.load(["rowIndex", "columnIndex", "rowCount", "columnCount"]);
    range.worksheet.load("name");
    await context.sync();
    const { rowIndex, columnIndex, rowCount, columnCount, worksheet } = range;
    // Not from the range's address: that is A:A for a whole column.
    const area = { top: rowIndex + 1, left: columnIndex + 1, bottom: rowIndex + rowCount, right: columnIndex + columnCount };
    return { sheet: worksheet.name, range: areaText(area) };
  });

const onSelection: WorkbookPort["onSelection"] = (listener) => {
  let wanted = true;
  const tell = async (): Promise<void> => {
    const place = await selection().catch(() => null);
    // A chart or several ranges may be selected: then the last cell stays the selected one.
    if (place && wanted) listener(place);
  };
  const registered = run("follow the selection", async (context) => {
    const registration = context.workbook.onSelectionChanged.add(tell);
    await context.sync();
    return registration;
  });
  return () => {
    wanted = false;
    void registered.then((registration) =>
      Excel.run(registration.context, async (context) => {
        registration.remove();
        await context.sync();
      }),
    );
  };
};

const read: WorkbookPort["read"] = (place) => {
  const area = areaOf(place);
  return run(`read ${named(place)}`, async (context) => {
    const range = context.workbook.worksheets.getItem(place.sheet).getRange(place.range);
    range.load(READ);
    await context.sync();
    return readings(range, area);
  });
};

const write: WorkbookPort["write"] = async (changes) => {
  const { cells: writes } = sortedChanges(changes);
  if (writes.length < changes.length) throw new Error("Cannot add a sheet, a note or a picture in Excel yet: write into cells");
  const [first] = writes;
  if (!first) return { undo: async () => undefined };
  const what = writes.length === 1 ? named({ sheet: first.sheet, range: first.cell }) : `all of the ${writes.length} cells`;
  const written = await run(`write ${what}`, async (context) => {
    const cells = await remember(context, writes);
    try {
      cells.forEach((cell) => set(context, cell));
      await context.sync();
    } catch (error) {
      // Excel has done what came before the fault.
      await putBack(context, cells);
      throw error;
    }
    return cells;
  });
  return { undo: () => run(`take back ${what}`, (context) => putBack(context, written)) };
};

const select: WorkbookPort["select"] = (place) => {
  areaOf(place);
  return run(`select ${named(place)}`, async (context) => {
    const sheet = context.workbook.worksheets.getItem(place.sheet);
    sheet.activate();
    sheet.getRange(place.range).select();
    await context.sync();
  });
};

const named = ({ sheet, range }: Place): string => `${sheet}!${range}`;
