import { beforeEach, describe, expect, it } from "vitest";
import type { Model } from "@odoo/o-spreadsheet";
import { modelOf } from "../../src/engine/model";
import { sheetData } from "../../src/engine/book";
import { gridPort } from "../../src/workbook/grid";
import { apply, plan } from "../../src/workbook/plan";
import type { BookPort, Place } from "../../src/workbook/port";

let model: Model;
let port: BookPort;

beforeEach(() => {
  model = modelOf({
    sheets: [
      sheetData("s1", "Costs", { A1: "Silver", B1: "10", B2: '=LOT.COPPER(B1,"lb")', B3: '=LOT.COPPER(B1,"oz")' }),
      sheetData("s2", "Notes", { A1: "=Costs!B1*2" }),
    ],
  });
  port = gridPort(model);
});

const shown = async (sheet: string, range: string): Promise<unknown[][]> =>
  (await port.read({ sheet, range })).map((row) => row.map(({ value }) => value));

describe("the port over the grid", () => {
  it("reads a place as rows of exactly its shape", async () => {
    const rows = await port.read({ sheet: "Costs", range: "A1:C3" });
    expect(rows.map((row) => row.length)).toEqual([3, 3, 3]);
    expect(rows[0]?.[0]).toEqual({ value: "Silver", formula: null, error: false });
    expect(rows[1]?.[1]).toMatchObject({ formula: '=LOT.COPPER(B1,"lb")', error: false });
    expect(rows[2]?.[1]).toMatchObject({ value: "#VALUE!", error: true, message: expect.stringContaining('write "ozt"') });
    expect(rows[2]?.[2]).toEqual({ value: null, formula: null, error: false });
    expect(await shown("Costs", "$B$1")).toEqual([[10]]);
  });

  it("knows the cells that a name stands for", async () => {
    const named = modelOf({ sheets: [sheetData("s1", "Costs", { A1: "1" })], namedRanges: { Price: "Costs!$A$1", Weights: "Costs!A1:B3" } });
    expect(await gridPort(named).names()).toEqual([
      { name: "Price", place: { sheet: "Costs", range: "A1" } },
      { name: "Weights", place: { sheet: "Costs", range: "A1:B3" } },
    ]);
  });

  it("writes numbers, texts, truth values and formulas as what they are", async () => {
    await port.write([
      { sheet: "Costs", cell: "D1", content: 1.5 },
      { sheet: "Costs", cell: "D2", content: "007", asText: true },
      { sheet: "Costs", cell: "D3", content: true },
      { sheet: "Costs", cell: "D4", content: "=D1*2" },
      { sheet: "Costs", cell: "D5", content: "=D1*2", asText: true },
      { sheet: "Costs", cell: "D6", content: "13%" },
      { sheet: "Notes", cell: "A1", content: null },
    ]);
    expect(await shown("Costs", "D1:D6")).toEqual([[1.5], ["007"], [true], [3], ["=D1*2"], ["13%"]]);
    expect(await shown("Notes", "A1")).toEqual([[null]]);
  });

  it("writes many cells as one step of undo", async () => {
    await port.write([
      { sheet: "Costs", cell: "A1", content: "Fine silver" },
      { sheet: "Costs", cell: "B1", content: 20 },
      { sheet: "Notes", cell: "C3", content: 1 },
    ]);
    expect(await shown("Notes", "A1")).toEqual([[40]]);
    model.dispatch("REQUEST_UNDO");
    expect(await shown("Costs", "A1:B1")).toEqual([["Silver", 10]]);
    expect(await shown("Notes", "C3")).toEqual([[null]]);
    model.dispatch("REQUEST_REDO");
    expect(await shown("Costs", "A1:B1")).toEqual([["Fine silver", 20]]);
  });

  it("writes nothing when one of the cells cannot be written", async () => {
    const good = { sheet: "Costs", cell: "A1", content: "changed" };
    await expect(port.write([good, { sheet: "Gone", cell: "A1", content: 1 }])).rejects.toThrow("Cannot write Gone!A1: this workbook has no sheet of that name");
    await expect(port.write([good, { sheet: "Costs", cell: "A2", content: "=1+" }])).rejects.toThrow("cannot be read as a formula");
    await expect(port.write([good, { sheet: "Costs", cell: "A0", content: 1 }])).rejects.toThrow("a write goes to one cell, such as B4");
    model.dispatch("LOCK_SHEET", { sheetId: "s2" });
    await expect(port.write([good, { sheet: "Notes", cell: "A2", content: 1 }])).rejects.toThrow("the sheet Notes is protected: take the protection off first");
    expect(await shown("Costs", "A1")).toEqual([["Silver"]]);
  });

  it("writes what a cell holds already without complaint", async () => {
    await port.write([{ sheet: "Costs", cell: "B1", content: 10 }]);
    expect(await shown("Costs", "B1")).toEqual([[10]]);
  });

  it("makes room for a cell beyond the edge of the grid", async () => {
    await port.write([{ sheet: "Costs", cell: "AC500", content: 5 }]);
    expect(await shown("Costs", "AC500")).toEqual([[5]]);
    expect(await shown("Costs", "AD501")).toEqual([[null]]);
    model.dispatch("REQUEST_UNDO");
    expect(await shown("Costs", "AC500")).toEqual([[null]]);
  });

  it("selects a place on another sheet and tells of it once", async () => {
    const heard: Place[] = [];
    const stop = port.onSelection((place) => heard.push(place));
    await port.select({ sheet: "Notes", range: "B2:C3" });
    expect(await port.selection()).toEqual({ sheet: "Notes", range: "B2:C3" });
    expect(heard.at(-1)).toEqual({ sheet: "Notes", range: "B2:C3" });
    stop();
    const count = heard.length;
    await port.select({ sheet: "Costs", range: "A1" });
    expect(heard).toHaveLength(count);
    expect(await port.selection()).toEqual({ sheet: "Costs", range: "A1" });
  });

  it("carries a planned change through and takes it back", async () => {
    const change = await plan(port, [{ sheet: "Costs", cell: "B4", content: '=LOT.FINEWEIGHT(B1,"lb",925,"lb")' }]);
    const undo = await apply(port, change, () => false);
    expect(await shown("Costs", "B4")).toEqual([[9.25]]);
    await undo.undo();
    expect(await shown("Costs", "B4")).toEqual([[null]]);
  });

  it("shows the nearest name when an unknown one is written", async () => {
    await port.write([{ sheet: "Costs", cell: "E1", content: "=LOT.COPER(1)" }]);
    expect((await port.read({ sheet: "Costs", range: "E1" }))[0]?.[0]).toMatchObject({ value: "#NAME?", message: expect.stringContaining("LOT.COPPER") });
  });
});
