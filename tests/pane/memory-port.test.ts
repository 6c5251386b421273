import { expect, it } from "vitest";
import type { Change } from "../../src/workbook/port";
import { MemoryPort } from "./memory-port";

const CHANGES: readonly Change[] = [
  { newSheet: "Quote 1", isHidden: true, cells: [{ cell: "A1", content: "Quote", merge: "A1:B1" }], pictures: [{ sheet: "Quote 1", at: "A3", png: new Uint8Array([0x89, 0x50, 0x4e, 0x47]), width: 1, height: 1, alt: "A dot" }] },
  { sheet: "Lots", table: "All", tableRange: "A1:B3" },
  { sheet: "Lots", cell: "A3", content: "L-2", numberFormat: "@" },
  { sheet: "Lots", cell: "B3", note: "Weighed twice" },
];

it("the workbook in memory takes what a real one takes, and gives all of it back", async () => {
  const port = new MemoryPort({ "Lots!A1": "Lot", "Lots!B1": "Gross", "Lots!A2": "L-1" }, { sheet: "Lots", range: "A1" });
  port.tables = { Lots: [{ name: "All", range: "A1:B2", hasTotals: false }] };
  const before = await port.sheets();
  const { undo } = await port.write(CHANGES);
  expect(await port.sheets()).toMatchObject([
    { name: "Lots", used: "A1:B3", tables: [{ name: "All", range: "A1:B3" }] },
    { name: "Quote 1", isVisible: false, used: "A1", merged: ["A1:B1"] },
  ]);
  expect(port.at("Lots!A3")).toMatchObject({ value: "L-2", numberFormat: "@" });
  expect(port.pictures).toHaveLength(1);
  await expect(port.write([{ newSheet: "quote 1", cells: [] }])).rejects.toThrow("the workbook has a sheet of that name");
  await undo();
  expect(await port.sheets()).toEqual(before);
  expect(port.pictures).toEqual([]);
  expect(await port.note({ sheet: "Lots", cell: "B3" })).toBeNull();
});
