import { refuseBySheets, sortedChanges } from "./changes";
import { beforeChanging, change, changeBack, placesOf } from "./office/changing";
import { readNote } from "./office/notes";
import { READ, readings } from "./office/reading";
import { run } from "./office/run";
import { areaOf } from "./office/shape";
import { areaIn, namedPlaces, sheetInfos } from "./office/sheets";
import type { BookPort, CellReading, Place } from "./port";
import { grownTables } from "./table-growth";
import { type Area, areaText } from "./xlsx/address";

/** The port over Excel. */
export function officePort(): BookPort {
  return { selection, onSelection, sheets, names, read, note, write, select, recalculate };
}

const selection: BookPort["selection"] = () =>
  run("tell which cell is selected", async (context) => {
    const range = context.workbook.getSelectedRange();
    range.load(["rowIndex", "columnIndex", "rowCount", "columnCount"]);
    range.worksheet.load("name");
    await context.sync();
    return { sheet: range.worksheet.name, range: areaText(areaIn(range)) };
  });

const onSelection: BookPort["onSelection"] = (listener) => {
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

const read: BookPort["read"] = (place) => {
  const area = areaOf(place);
  return run(`read ${named(place)}`, (context) => readPlace(context, place, area));
};

async function readPlace(context: Excel.RequestContext, { sheet, range: text }: Place, area: Area): Promise<CellReading[][]> {
  const range = context.workbook.worksheets.getItem(sheet).getRange(text).load(READ);
  await context.sync();
  return readings(range, area);
}

const sheets: BookPort["sheets"] = () => run("look through the sheets", sheetInfos);

const names: BookPort["names"] = () => run("look through the names", namedPlaces);

const note: BookPort["note"] = ({ sheet, cell }) => run(`read the note beside ${sheet}!${cell}`, (context) => readNote(context, sheet, cell));

const write: BookPort["write"] = async (asked) => {
  const changes = sortedChanges(asked);
  const [first, ...more] = placesOf(changes);
  if (first === undefined) return { undo: async () => undefined };
  const all = changes.cells.length === more.length + 1 ? "cells" : "changes";
  const what = more.length === 0 ? first : `all of the ${more.length + 1} ${all}`;
  const changed = await run(`write ${what}`, async (context) => {
    const known = await sheetInfos(context);
    refuseBySheets(changes, known);
    const tables = await grownTables(changes, known, (place) => readPlace(context, place, areaOf(place)));
    const changing = await beforeChanging(context, changes, tables);
    try {
      await change(context, changing);
    } catch (error) {
      // Excel has done what came before the fault.
      await changeBack(context, changing);
      throw error;
    }
    return changing;
  });
  return {
    undo: () =>
      run(`take back ${what}`, async (context) => {
        const missing = await changeBack(context, changed);
        if (missing.length > 0) throw new Error(`Cannot find the sheet ${missing.join(", ")} to take it away: it is gone or has another name: look for it in Excel`);
      }),
  };
};

const select: BookPort["select"] = (place) => {
  areaOf(place);
  return run(`select ${named(place)}`, async (context) => {
    const sheet = context.workbook.worksheets.getItem(place.sheet);
    sheet.activate();
    sheet.getRange(place.range).select();
    await context.sync();
  });
};

const recalculate: BookPort["recalculate"] = () =>
  run("have the workbook computed again", async (context) => {
    context.workbook.application.calculate(Excel.CalculationType.full);
    await context.sync();
  });

const named = ({ sheet, range }: Place): string => `${sheet}!${range}`;
