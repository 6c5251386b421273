import { describe, expect, it } from "vitest";
import { apply, plan } from "../../src/workbook/plan";
import type { CellContent, CellReading, Change, NewSheet, BookPort } from "../../src/workbook/port";
import { readSettings, settingsChanges } from "../../src/workbook/settings";

/** A port over the contract's workbook. */
export interface Bench {
  readonly port: BookPort;
  /** All that the workbook holds, so that nothing that was left behind can hide. */
  state(): Promise<unknown>;
  /** Lets the host fail at the n-th thing that it is asked to do from now on, 0 being the first; null lets it work again. */
  failAt?(n: number | null): Promise<void>;
}

/** A formula that this host refuses. */
interface Ways {
  readonly refused: string;
  /** False where nobody computes: the stub of Excel keeps formulas and gives each of them 0. */
  readonly computes: boolean;
}

const PNG = Uint8Array.from(atob("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mP8z8BQDwAEhQGAhKmMIQAAAABJRU5ErkJggg=="), (letter) => letter.charCodeAt(0));

export const QUOTE: NewSheet = {
  newSheet: "Quote Q-001",
  columnWidths: [24, 12],
  print: { area: "A1:B5", orientation: "portrait", fitsOnePage: true, paper: "letter" },
  cells: [
    { cell: "A1", content: "Quote", look: "title", merge: "A1:B1" },
    { cell: "A2", content: "Fine, g", look: "label" },
    { cell: "B2", content: "=Lots!D2", numberFormat: "0.000", look: "total" },
    { cell: "A3", content: "=not a formula", asText: true, look: "input", wraps: true },
    { cell: "B3", content: 12.5, numberFormat: "0.0%", align: "right" },
    { cell: "A5", content: "Melt and assay decide: what is said here holds for the metal as it was offered", look: "caution", merge: "A5:B5", wraps: true },
  ],
  pictures: [{ sheet: "Quote Q-001", at: "A7", png: PNG, width: 40, height: 20, alt: "The range of the payout" }],
  charts: [{ kind: "lines", title: "Fine & share", at: "D2", width: 300, height: 200, categories: "A2:A3", series: [{ name: "Fine", values: "B2:B3" }, { name: "Again", values: "B2:B3" }], numberFormat: "0.0" }],
};

const inStock = (cell: string, content: CellContent): Change => ({ sheet: "Stock", cell, content });
const growing = (table: string, tableRange: string, sheet = "Stock"): Change => ({ sheet, table, tableRange });
/** A row below the table, and a column beside it that has a heading of its own. */
const NEW_BAR: readonly Change[] = [growing("Bars", "A1:D4"), inStock("A4", "S-3"), inStock("B4", 250), inStock("C4", "=B4*0.9995"), inStock("D1", "Poured")];

const bound = (port: BookPort): BookPort => ({
  selection: () => port.selection(),
  onSelection: (listener) => port.onSelection(listener),
  read: (place) => port.read(place),
  write: (changes) => port.write(changes),
  select: (place) => port.select(place),
  sheets: () => port.sheets(),
  names: () => port.names(),
  note: (at) => port.note(at),
  recalculate: () => port.recalculate(),
});

/** What every port does alike. */
export function contract(name: string, open: () => Promise<Bench>, { refused, computes }: Ways): void {
  const at = (cell: string, content: CellContent, more = {}): Change => ({ sheet: "Lots", cell, content, ...more });
  const cell = async (port: BookPort, address: string, sheet = "Lots"): Promise<CellReading | undefined> => (await port.read({ sheet, range: address }))[0]?.[0];
  const everything: readonly Change[] = [
    at("A4", "L-003", { like: "A3" }),
    at("B4", 98.75, { like: "B3" }),
    at("D4", "=B4*C4/1000", { like: "D3" }),
    at("D3", 5),
    at("B2", 1300, { numberFormat: "0.0" }),
    QUOTE,
    { sheet: "Lots", at: "F2", png: PNG, width: 30, height: 30, alt: "A dot" },
    { sheet: "Lots", cell: "A2", note: "Weighed twice" },
    ...NEW_BAR,
  ];

  describe(`the port over ${name}`, () => {
    it("knows the sheets and what is special about them", async () => {
      const { port } = await open();
      const [lots, prices, locked, stock] = await port.sheets();
      expect(lots).toEqual({ name: "Lots", isVisible: true, isProtected: false, used: "A1:D9", tables: [], hiddenColumns: ["C"], hasHiddenRows: false, merged: ["A9:C9"] });
      expect(prices).toMatchObject({ name: "Prices", used: "A1:B3", tables: [{ name: "Assumed", range: "A1:B3", hasTotals: true }] });
      expect(locked).toMatchObject({ name: "Locked", isProtected: true });
      expect(stock).toMatchObject({ merged: ["A6:C6"], tables: [{ name: "Bars", range: "A1:C3", hasTotals: false }, { name: "Spare", range: "F1:G2", hasTotals: false }] });
    });

    it("knows the cells that a name stands for", async () => {
      const { port } = await open();
      const known = [
        { name: "GrossWeights", place: { sheet: "Lots", range: "B2:B3" } },
        { name: "SilverPrice", place: { sheet: "Prices", range: "B2" } },
      ];
      expect(await port.names()).toEqual(known);
      // What a sheet of ours prints is a name in the file, and none that anybody gave.
      await port.write([QUOTE]);
      expect(await port.names()).toEqual(known);
    });

    it("reads values, formulas and number formats, and rows of exactly the shape", async () => {
      const { port } = await open();
      const rows = await port.read({ sheet: "Lots", range: "B2:D4" });
      expect(rows.map((row) => row.length)).toEqual([3, 3, 3]);
      expect(rows[0]?.[0]).toEqual({ value: 1250.5, formula: null, error: false, numberFormat: "#,##0.00" });
      expect(rows[0]?.[1]).toEqual({ value: 925, formula: null, error: false });
      expect(rows[0]?.[2]).toEqual({ value: 1156.7125, formula: "=B2*C2/1000", error: false, numberFormat: "0.000" });
      expect(rows[2]?.[0]).toEqual({ value: null, formula: null, error: false });
    });

    it("reads back what it wrote", async () => {
      const { port } = await open();
      await port.write([at("F1", 1.5), at("F2", "fine silver"), at("F3", true), at("F4", "=F1*2"), at("D2", null)]);
      const column = (await port.read({ sheet: "Lots", range: "F1:F4" })).map(([one]) => one);
      expect(column.map((one) => one?.formula)).toEqual([null, null, null, "=F1*2"]);
      expect(column.slice(0, 3).map((one) => one?.value)).toEqual([1.5, "fine silver", true]);
      if (computes) expect(column[3]?.value).toBe(3);
      expect(await cell(port, "D2")).toMatchObject({ value: null, formula: null });
    });

    it.each(["=B2*2", "+1", "-1 lb", "@home", "007", "1/2", "TRUE", "two\nlines", "'quoted", "=cmd|' /C calc'!A0", "Ag & <Cu>"])("keeps the text %j a text", async (text) => {
      const { port } = await open();
      await port.write([at("F1", text, { asText: true })]);
      expect(await cell(port, "F1")).toEqual({ value: text, formula: null, error: false });
    });

    it("gives a cell the number format that is asked for, or the look of a neighbour", async () => {
      const { port } = await open();
      await port.write([at("B4", 98.75, { like: "B3" }), at("C4", 0.5, { numberFormat: "0.00%" }), at("D4", 1, { like: "D3", numberFormat: "0" })]);
      expect((await cell(port, "B4"))?.numberFormat).toBe("#,##0.00");
      expect((await cell(port, "C4"))?.numberFormat).toBe("0.00%");
      expect((await cell(port, "D4"))?.numberFormat).toBe("0");
    });

    it("adds a sheet after the last one, hidden if asked", async () => {
      const { port } = await open();
      await port.write([QUOTE, { newSheet: "Kept", isHidden: true, cells: [{ cell: "A1", content: "x" }] }]);
      const infos = await port.sheets();
      expect(infos.map(({ name, isVisible }) => [name, isVisible])).toEqual([["Lots", true], ["Prices", true], ["Locked", true], ["Stock", true], ["Quote Q-001", true], ["Kept", false]]);
      expect(infos[4]).toMatchObject({ used: "A1:B5", merged: ["A1:B1", "A5:B5"] });
      expect(await cell(port, "B2", "Quote Q-001")).toMatchObject({ formula: "=Lots!D2", numberFormat: "0.000" });
      if (computes) expect((await cell(port, "B2", "Quote Q-001"))?.value).toBe(1156.7125);
      expect(await cell(port, "A3", "Quote Q-001")).toEqual({ value: "=not a formula", formula: null, error: false });
      expect((await cell(port, "B3", "Quote Q-001"))?.numberFormat).toBe("0.0%");
    });

    it("writes a note beside a cell, another in its place, and takes it away", async () => {
      const { port } = await open();
      expect(await port.note({ sheet: "Lots", cell: "A2" })).toBe(null);
      await port.write([{ sheet: "Lots", cell: "A2", note: "Weighed twice" }]);
      expect(await port.note({ sheet: "Lots", cell: "A2" })).toBe("Weighed twice");
      await port.write([{ sheet: "Lots", cell: "A2", note: "=B2\nthree times" }]);
      expect(await port.note({ sheet: "Lots", cell: "A2" })).toBe("=B2\nthree times");
      await port.write([{ sheet: "Lots", cell: "A2", note: null }]);
      expect(await port.note({ sheet: "Lots", cell: "A2" })).toBe(null);
    });

    it("lets a table take up the row below it, with our formula in the row and not the column's own", async () => {
      const { port, state } = await open();
      const before = await state();
      const { undo } = await port.write([inStock("A4", "S-3"), inStock("B4", 250), inStock("C4", "=B4*0.9995"), growing("Bars", "A1:C4")]);
      expect((await port.sheets())[3]?.tables).toEqual([{ name: "Bars", range: "A1:C4", hasTotals: false }, { name: "Spare", range: "F1:G2", hasTotals: false }]);
      expect(await cell(port, "A4", "Stock")).toMatchObject({ value: "S-3" });
      expect(await cell(port, "C4", "Stock")).toMatchObject({ formula: "=B4*0.9995" });
      await undo();
      expect((await port.sheets())[3]?.tables[0]?.range).toBe("A1:C3");
      expect(await state()).toEqual(before);
    });

    it("lets it take up a column with its heading, and then more", async () => {
      const { port, state } = await open();
      const before = await state();
      const first = await port.write([growing("bars", "A1:D3"), inStock("D1", "Poured")]);
      const second = await port.write([growing("Bars", "A1:E5"), inStock("E1", "Poured by"), inStock("A5", "S-4")]);
      expect((await port.sheets())[3]?.tables[0]?.range).toBe("A1:E5");
      expect((await port.read({ sheet: "Stock", range: "A1:E1" }))[0]?.map(({ value }) => value)).toEqual(["Bar", "Gross, g", "Fine, g", "Poured", "Poured by"]);
      await second.undo();
      expect((await port.sheets())[3]?.tables[0]?.range).toBe("A1:D3");
      await first.undo();
      expect(await state()).toEqual(before);
    });

    it("lets a table with totals take up a column beside them", async () => {
      const { port } = await open();
      await port.write([{ sheet: "Prices", cell: "C1", content: "Since" }, growing("Assumed", "A1:C3", "Prices")]);
      expect((await port.sheets())[1]?.tables).toEqual([{ name: "Assumed", range: "A1:C3", hasTotals: true }]);
    });

    it("leaves a table as large as it was where it is not asked to grow", async () => {
      const { port } = await open();
      await port.write([inStock("A4", "S-3"), inStock("D2", "not of the table")]);
      expect((await port.sheets())[3]?.tables[0]?.range).toBe("A1:C3");
    });

    it.each<readonly [string, readonly Change[], RegExp]>([
      ["to a smaller range", [growing("Bars", "A1:C2")], /^Cannot enlarge the table Bars: it stands in A1:C3 and grows from there, down and to the right: it cannot take up A1:C2/],
      ["from another cell", [growing("Bars", "A2:C4")], /it cannot take up A2:C4/],
      ["to what is no range", [growing("Bars", "A:C")], /^Cannot enlarge the table Bars: it cannot take up A:C/],
      ["that is not there", [growing("Rods", "A1:C4")], /^Cannot enlarge the table Rods: the sheet Stock has no table of that name/],
      ["on a sheet that is not there", [growing("Bars", "A1:C4", "Gone")], /^Cannot enlarge the table Bars: this workbook has no sheet Gone/],
      ["into another table", [growing("Bars", "A1:F3")], /in D1:F3 it would run into the table Spare/],
      ["into merged cells", [growing("Bars", "A1:C6")], /in A4:C6 it would run into the merged cells A6:C6: split them first/],
      ["over its totals", [growing("Assumed", "A1:B4", "Prices")], /its totals stand in its last row: insert a row above them/],
      ["beside totals that are filled", [growing("Assumed", "A1:C3", "Prices"), { sheet: "Prices", cell: "C1", content: "Since" }, { sheet: "Prices", cell: "C3", content: 5 }], /C3 beside its totals is filled: empty it first/],
      ["by a column without a heading", [growing("Bars", "A1:D3")], /D1, the heading of its new column, is empty: write a heading with it/],
      ["by a column whose heading is a number", [growing("Bars", "A1:D3"), inStock("D1", 7)], /D1, the heading of its new column, is not a text/],
      ["by a column whose heading is there", [growing("Bars", "A1:D3"), inStock("D1", "gross, G")], /it has the heading gross, G already: choose another one for D1/],
    ])("refuses to enlarge a table %s", async (_, changes, sentence) => {
      const { port, state } = await open();
      const before = await state();
      await expect(port.write(changes)).rejects.toThrow(sentence);
      await expect(plan(port, changes)).rejects.toThrow(sentence);
      expect(await state()).toEqual(before);
    });

    it("takes all of a write back in one step", async () => {
      const { port, state } = await open();
      const before = await state();
      const { undo } = await port.write(everything);
      expect(await state()).not.toEqual(before);
      expect(await cell(port, "A4")).toMatchObject({ value: "L-003" });
      await undo();
      expect(await state()).toEqual(before);
    });

    it("has all of it computed again, which changes no content and is no writing", async () => {
      const { port, state } = await open();
      const before = await state();
      await port.recalculate();
      expect(await state()).toEqual(before);
      const { undo } = await port.write([at("B2", 1300), at("F1", "=D2*2")]);
      const [formula] = [(await cell(port, "F1"))?.formula];
      await port.recalculate();
      expect(await cell(port, "F1")).toMatchObject({ formula });
      if (computes) expect((await cell(port, "F1"))?.value).toBe(2 * 1300 * 0.925);
      await undo();
      expect(await state()).toEqual(before);
    });

    it("writes nothing when any one of many changes is refused", async () => {
      const { port, state } = await open();
      const before = await state();
      for (let n = 0; n <= everything.length; n++) {
        const changes = [...everything.slice(0, n), at("H1", refused), ...everything.slice(n)];
        await expect(port.write(changes)).rejects.toThrow(/^Cannot write /);
        expect(await state(), `refused as number ${n}`).toEqual(before);
      }
    });

    it("leaves the workbook as it was whatever the host fails at", async ({ skip }) => {
      const { port, state, failAt } = await open();
      if (!failAt) return skip("a file is written whole or not at all");
      const before = await state();
      let fault = "";
      for (let n = 0; n < 300; n++) {
        await failAt(n);
        const written = await port.write(everything).catch((error: Error) => void (fault = error.message));
        await failAt(null);
        if (!written) {
          expect(await state(), `failed at ${n}`).toEqual(before);
          continue;
        }
        expect(n).toBeGreaterThan(5);
        await written.undo();
        return expect(await state()).toEqual(before);
      }
      expect.unreachable(`it never came to its end: ${fault}`);
    });

    it.each<readonly [string, Change, RegExp]>([
      ["a protected sheet", { sheet: "Locked", cell: "A2", content: 1 }, /^Cannot write Locked!A2: the sheet Locked is protected: take the protection off first/],
      ["a note on a protected sheet", { sheet: "Locked", cell: "A2", note: "x" }, /Locked is protected/],
      ["a sheet that is not there", { sheet: "Gone", cell: "A1", content: 1 }, /^Cannot write Gone!A1: this workbook has no sheet of that name/],
      ["a second sheet of one name", { newSheet: "LOTS", cells: [] }, /^Cannot write the sheet LOTS: the workbook has a sheet of that name/],
      ["a chart over columns of other rows", { ...QUOTE, newSheet: "Q2", pictures: [], charts: (QUOTE.charts ?? []).map((chart) => ({ ...chart, categories: "A2:A4" })) }, /^Cannot write the chart Fine & share at Q2!D2: it is drawn over columns of the same rows/],
      ["a name that no sheet can have", { newSheet: "Q/1", cells: [] }, /^Cannot write the sheet Q\/1: a sheet's name has none of/],
      ["a cell inside merged ones", { sheet: "Lots", cell: "B9", content: 1 }, /^Cannot write Lots!B9: it is part of the merged cells A9:C9/],
      ["a range for one cell", { sheet: "Lots", cell: "B4:C9", content: 1 }, /^Cannot write Lots!B4:C9: a write goes to one cell/],
      ["a picture that is none", { sheet: "Lots", at: "B4", png: new Uint8Array([1, 2, 3]), width: 5, height: 5, alt: "" }, /it is not a PNG/],
    ])("refuses %s in a sentence", async (_, change, sentence) => {
      const { port, state } = await open();
      const before = await state();
      await expect(port.write([at("F1", 1), change])).rejects.toThrow(sentence);
      expect(await state()).toEqual(before);
    });

    it("shows a plan's before, applies it, and takes it back", async () => {
      const { port, state } = await open();
      const before = await state();
      const planned = await plan(port, everything);
      expect(planned.cells.map(({ overwrites }) => overwrites)).toEqual([false, false, false, true, true, false, false, false, false]);
      expect(planned.cells[4]?.before).toMatchObject({ value: 1250.5, numberFormat: "#,##0.00" });
      await expect(apply(port, planned, () => false)).rejects.toThrow("Lots!D3 is filled: tick it to overwrite it");
      const { undo } = await apply(port, planned, () => true);
      expect(await cell(port, "B2")).toMatchObject({ value: 1300 });
      await undo();
      expect(await state()).toEqual(before);
    });

    it("notices a cell that changed between the plan and its writing, or before its undoing", async () => {
      const { port } = await open();
      const planned = await plan(port, [at("F1", 1), at("F2", 2)]);
      await port.write([at("F2", "mine")]);
      await expect(apply(port, planned, () => true)).rejects.toThrow("Lots!F2 changed since the review: look at it again before writing");
      expect((await cell(port, "F1"))?.value).toBe(null);
      const { undo } = await apply(port, await plan(port, [at("F1", 1)]), () => false);
      await port.write([at("F1", 9)]);
      await expect(undo()).rejects.toThrow("F1 has changed since");
      expect((await cell(port, "F1"))?.value).toBe(9);
    });

    it.each<readonly [string, readonly Change[], Change, string]>([
      ["a row that is another lot's by now", [at("F3", 1)], at("A3", "L-009"), "Lots!A3"],
      ["the row above, whose look a new one takes", [at("A4", "L-003", { like: "A3" })], at("C3", 835), "Lots!C3"],
      ["a cell that a written formula names", [at("F4", "=Prices!B2*2")], { sheet: "Prices", cell: "B2", content: 30 }, "Prices!B2"],
      ["a cell that a formula knows by its name", [at("F4", "=SilverPrice*2")], { sheet: "Prices", cell: "B2", content: 30 }, "Prices!B2"],
      ["a cell that a formula on a new sheet names", [QUOTE], at("D2", 7), "Lots!D2"],
      ["a note that was not there", [{ sheet: "Lots", cell: "A2", note: "Weighed twice" }], { sheet: "Lots", cell: "A2", note: "mine" }, "The note beside Lots!A2"],
    ])("writes nothing when %s changed since the review, and says what", async (_, changes, meanwhile, what) => {
      const { port, state } = await open();
      const planned = await plan(port, changes);
      await port.write([meanwhile]);
      const before = await state();
      await expect(apply(port, planned, () => true)).rejects.toThrow(`${what} changed since the review: look at it again before writing`);
      expect(await state()).toEqual(before);
    });

    it("takes back what it wrote when that cannot be read again, so that nothing is written that cannot be undone", async () => {
      const { port, state } = await open();
      const before = await state();
      const planned = await plan(port, everything);
      let isWritten = false;
      const deaf: BookPort = {
        ...bound(port),
        write: async (changes) => ((isWritten = true), port.write(changes)),
        read: (place) => (isWritten ? Promise.reject(new Error("The line is dead")) : port.read(place)),
      };
      await expect(apply(deaf, planned, () => true)).rejects.toThrow("The line is dead");
      expect(await state()).toEqual(before);
    });

    it("keeps settings in the workbook, and gives them back as they were", async () => {
      const { port } = await open();
      const shop = { name: "Quai Nord", note: "=1+1", long: "x€😀".repeat(20_000) };
      await port.write(await settingsChanges(port, new Map<string, unknown>([["shop", shop], ["columns", ["A"]]])));
      expect((await port.sheets()).find(({ name }) => name === "Lotwright")).toMatchObject({ isVisible: false });
      const { values, unreadable } = await readSettings(port);
      expect([...values]).toEqual([["shop", shop], ["columns", ["A"]]]);
      expect(unreadable).toEqual([]);
      await port.write(await settingsChanges(port, new Map<string, unknown>([["shop", 5], ["columns", undefined]])));
      expect([...(await readSettings(port)).values]).toEqual([["shop", 5]]);
      expect(await settingsChanges(port, new Map([["shop", 5]]))).toEqual([]);
    });
  });
}
