import { describe, expect, it } from "vitest";
import { openXlsx } from "../../src/workbook/file";
import { handmade, sheet } from "./handmade";

describe("a cost sheet of ten thousand formulas", () => {
  const rows = Array.from({ length: 10_000 }, (_, i) => {
    const row = i + 1;
    return `<row r="${row}" spans="1:3"><c r="A${row}" s="1"><v>${row * 1.37}</v></c><c r="B${row}" t="str"><v>Client ${row % 7}</v></c><c r="C${row}" s="2"><f>_xldudf_LOT_COPPER(A${row},"lb")+SUM(A$1:A${row})</f><v>${row}</v></c></row>`;
  });
  const bytes = handmade({ sheets: { Lots: sheet(rows.join("")) } });

  it("is opened and read", () => {
    expect([...openXlsx(bytes).cells("Lots")]).toHaveLength(30_000);
  });

  it("takes a new value in every formula cell", () => {
    const file = openXlsx(bytes);
    const changes = Array.from({ length: 10_000 }, (_, i) => ({ sheet: "Lots", cell: `C${i + 1}`, value: i / 3 }));
    const patched = file.patch(changes);
    expect([...openXlsx(patched).cells("Lots")].filter(({ formula }) => formula).map(({ value }) => value)).toEqual(changes.map(({ value }) => value));
  });

  it("takes three thousand results that spill", () => {
    const file = openXlsx(bytes);
    const changes = Array.from({ length: 3000 }, (_, i) => ({ sheet: "Lots", cell: `D${i + 1}`, formula: "=LOT.X(1)", value: i, spill: [[{ value: i }, { value: -i }]] }));
    const patched = file.patch(changes);
    const again = openXlsx(patched).patch(changes.map(({ sheet: name, cell, value, spill }) => ({ sheet: name, cell, value, spill })));
    expect([...openXlsx(again).cells("Lots")].filter(({ fills }) => fills)).toHaveLength(3000);
  });
});
