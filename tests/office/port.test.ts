import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { CellReading, CellWrite, Place } from "../../src/workbook/port";
import { type PortPage, openPortPage } from "./port-page";
import type { StubBook, StubCell, StubRequest } from "./stub-excel";

let opened: PortPage;
let page: Page;

beforeAll(async () => {
  opened = await openPortPage();
  ({ page } = opened);
});
afterAll(() => opened?.close());

/** The port in Excel's page, over a book of the test's own. */
async function excel(sheets: StubBook["sheets"], selected: StubBook["selected"] = ["Costs", "B4"]) {
  await page.evaluate((book) => window.stub.open(book), { sheets, selected });
  const fault = async (of: Promise<unknown>): Promise<string> =>
    of.then(
      () => "no fault",
      (error: Error) => /Error: (.*)/.exec(error.message)?.[1] ?? error.message,
    );
  return {
    read: (sheet: string, range: string): Promise<CellReading[][]> => page.evaluate((place) => window.port.read(place) as Promise<CellReading[][]>, { sheet, range }),
    write: (...writes: CellWrite[]): Promise<void> => page.evaluate(async (all) => void (await window.port.write(all)), writes),
    select: (place: Place): Promise<void> => page.evaluate((to) => window.port.select(to), place),
    selection: (): Promise<Place> => page.evaluate(() => window.port.selection()),
    cell: (sheet: string, cell: string): Promise<StubCell | undefined> => page.evaluate(([s, c]) => window.stub.cells[s]?.[c], [sheet, cell] as const),
    /** What was asked of cells and sheets. */
    requests: (): Promise<StubRequest[]> => page.evaluate(() => window.stub.requests.filter((request) => request.some(([path]) => /^(?:range|sheet):/.test(path)))),
    fault,
  };
}

/** The one request that changed something. */
const written = async (requests: () => Promise<StubRequest[]>): Promise<StubRequest> => {
  const changing = (await requests()).filter((request) => request.some(([, action]) => action.startsWith("set ")));
  expect(changing).toHaveLength(1);
  return changing[0] ?? [];
};

const at = (cell: string, content: CellWrite["content"], more: Partial<CellWrite> = {}): CellWrite => ({ sheet: "Costs", cell, content, ...more });

describe("reading from Excel", () => {
  it("tells numbers, texts, truth values, errors, formulas and empty cells apart", async () => {
    const { read } = await excel({
      Costs: { A1: { value: 2.5, formula: '=LOT.COPPER(B4,"lb")' }, B1: { value: "sterling" }, C1: { value: true }, A2: { value: "#VALUE!", formula: "=LOT.WEIGHT(1)", error: true }, C2: { value: 7 } },
    });
    expect(await read("Costs", "A1:C2")).toEqual([
      [
        { value: 2.5, formula: '=LOT.COPPER(B4,"lb")', error: false },
        { value: "sterling", formula: null, error: false },
        { value: true, formula: null, error: false },
      ],
      [
        { value: "#VALUE!", formula: "=LOT.WEIGHT(1)", error: true },
        { value: null, formula: null, error: false },
        { value: 7, formula: null, error: false },
      ],
    ]);
  });

  it("takes a text that looks like a formula for the text that it is", async () => {
    const { read } = await excel({ Costs: { A1: { value: "=B4*2" } } });
    expect(await read("Costs", "A1")).toEqual([[{ value: "=B4*2", formula: null, error: false }]]);
  });

  it.each(["A:A", "4:4", "Prices", "B4:C9,D1", "Costs!B4", "B0", "XFE1", ""])('refuses the range "%s" before anything is sent', async (range) => {
    const { read, fault, requests } = await excel({ Costs: {} });
    expect(await fault(read("Costs", range))).toBe(`Cannot use Costs!${range}: it must be a cell or a range, such as B4 or B4:C9`);
    expect(await requests()).toEqual([]);
  });

  it("says which sheet is missing", async () => {
    const { read, fault } = await excel({ Costs: {} });
    expect(await fault(read("Cost", "B4"))).toBe("Cannot read Cost!B4: this workbook has no sheet of that name");
  });
});

describe("the selection in Excel", () => {
  it("is a range of a sheet", async () => {
    const { selection } = await excel({ "Lots 'A'": {} }, ["Lots 'A'", "B4:C9"]);
    expect(await selection()).toEqual({ sheet: "Lots 'A'", range: "B4:C9" });
  });

  it("of a whole column has its first cell and its last", async () => {
    const { selection } = await excel({ Costs: {} }, ["Costs", "C:C"]);
    expect(await selection()).toEqual({ sheet: "Costs", range: "C1:C1048576" });
  });

  it("says that a cell must be selected when a chart is", async () => {
    const { selection, fault } = await excel({ Costs: {} }, ["Costs", ""]);
    expect(await fault(selection())).toBe("Cannot tell which cell is selected: something other than one range of cells is selected: select a cell");
  });

  it("is followed until it is wanted no more", async () => {
    await excel({ Costs: {}, Lots: {} });
    const stop = await page.evaluateHandle(() => window.follow());
    await page.waitForTimeout(200);
    await page.evaluate(() => window.stub.select("Lots", "D2"));
    await expect.poll(() => page.evaluate(() => window.told)).toEqual([{ sheet: "Lots", range: "D2" }]);
    await stop.evaluate((end) => end());
    await page.evaluate(() => window.stub.select("Lots", "D3"));
    await page.waitForTimeout(200);
    expect(await page.evaluate(() => window.told.length)).toBe(1);
  });

  it("goes where it is sent", async () => {
    const { select, selection, requests } = await excel({ Costs: {}, Lots: {} });
    await select({ sheet: "Lots", range: "B2:C3" });
    expect(await selection()).toEqual({ sheet: "Lots", range: "B2:C3" });
    expect((await requests())[0]?.map(([path, action]) => [path, action])).toEqual([
      ["sheet:Lots", "do Activate"],
      ["range:Lots!B2:C3", "do Select"],
    ]);
  });
});

describe("computing again in Excel", () => {
  it("asks Excel's application for a full calculation, and for nothing else", async () => {
    await excel({ Costs: { A1: { value: 1, formula: '=LOT.COPPER(1,"lb")' } } });
    const asked = await page.evaluate(async () => {
      await window.port.recalculate();
      return window.stub.requests;
    });
    expect(asked.flat().filter(([, action]) => action.startsWith("do ") || action.startsWith("set "))).toEqual([["workbook.Application", "do Calculate", ["Full"]]]);
  });
});

describe("writing to Excel", () => {
  it("sends one cell as one row of one column, a formula as a formula and a number as a number", async () => {
    const { write, requests, cell } = await excel({ Costs: {} });
    await write(at("B4", '=LOT.COPPER(A4,"lb")', { numberFormat: "0.000" }), at("B5", 24.5), at("B6", true));
    expect(await written(requests)).toEqual([
      ["range:Costs!B4", "set NumberFormat", [[["0.000"]]]],
      ["range:Costs!B4", "set Formulas", [[['=LOT.COPPER(A4,"lb")']]]],
      ["range:Costs!B5", "set Values", [[[24.5]]]],
      ["range:Costs!B6", "set Values", [[[true]]]],
    ]);
    expect(await cell("Costs", "B4")).toEqual({ value: 0, formula: '=LOT.COPPER(A4,"lb")', format: "0.000" });
  });

  it("sends a formula that the cell holds already, so that Excel takes it anew, and frees a cell that is formatted as text", async () => {
    const formula = '=LOT.COPPER(10,"lb")';
    const { write, requests } = await excel({ Costs: { B4: { value: "#NAME?", formula, error: true }, B5: { value: formula, format: "@" } } });
    await write(at("B4", formula), at("B5", formula, { numberFormat: "General" }));
    expect(await written(requests)).toEqual([
      ["range:Costs!B4", "set Formulas", [[[formula]]]],
      ["range:Costs!B5", "set NumberFormat", [[["General"]]]],
      ["range:Costs!B5", "set Formulas", [[[formula]]]],
    ]);
  });

  it.each([
    ["=B4*2", { asText: true }],
    ["007", {}],
    ["1/2", {}],
    ["-", {}],
    ["'quoted", {}],
    ["TRUE", {}],
    ["99.5%", {}],
    ["fine silver", {}],
  ] as const)("keeps the text %s a text", async (text, more) => {
    const { write, cell, read } = await excel({ Costs: {} });
    await write(at("B4", text, more));
    expect(await cell("Costs", "B4")).toMatchObject({ value: text });
    expect((await read("Costs", "B4"))[0]?.[0]).toEqual({ value: text, formula: null, error: false });
  });

  it("spares words the apostrophe that keeps other texts", async () => {
    const { write, requests } = await excel({ Costs: {} });
    await write(at("B4", "Fine silver"), at("B5", "1/2"));
    expect((await written(requests)).map(([, , sent]) => sent)).toEqual([[[["Fine silver"]]], [[["'1/2"]]]]);
  });

  it("empties a cell", async () => {
    const { write, read } = await excel({ Costs: { B4: { value: 3 } } });
    await write(at("B4", null));
    expect((await read("Costs", "B4"))[0]?.[0]?.value).toBe(null);
  });

  it("frees a cell that is formatted as text before a formula or a number goes in", async () => {
    const { write, cell } = await excel({ Costs: { B4: { value: "old", format: "@" }, B5: { value: "", format: "@" }, B6: { value: "", format: "@" } } });
    await write(at("B4", "=A4"), at("B5", 5), at("B6", "007"));
    expect(await cell("Costs", "B4")).toEqual({ value: 0, formula: "=A4", format: "General" });
    expect(await cell("Costs", "B5")).toEqual({ value: 5, format: "General" });
    expect(await cell("Costs", "B6")).toEqual({ value: "007", format: "@" });
  });

  it("puts every cell back when Excel refuses one half-way", async () => {
    const before: Record<string, StubCell> = {
      A1: { value: 3, format: "0.00" },
      A2: { value: 9, formula: "=A1^2", format: "General" },
      A3: { value: "1/2", format: "General" },
      A4: { value: "#N/A", error: true, format: "General" },
      A5: { value: "=x", format: "@" },
    };
    const { write, fault, cell } = await excel({ Costs: before });
    const writes = [at("A1", 4, { numberFormat: "0" }), at("A2", "=A1"), at("A3", 5), at("A4", 6), at("A5", 7), at("A6", "=REFUSED(1)"), at("A7", 8)];
    expect(await fault(write(...writes))).toBe("Cannot write all of the 7 cells: Excel does not take the content: look for a mistake in the formula, or for an array or a merged cell in the way");
    for (const [name, was] of Object.entries(before)) expect(await cell("Costs", name), name).toEqual(was.formula ? { ...was, value: 0 } : was);
    expect((await cell("Costs", "A6"))?.value ?? "").toBe("");
    expect((await cell("Costs", "A7"))?.value ?? "").toBe("");
  });

  it("names the cells to look at when Excel does not let it put them back", async () => {
    const { write, fault } = await excel({ Costs: { A1: { value: 3 } } });
    expect(await fault(write(at("A1", 4), at("A2", "=BREAKS(1)")))).toBe("Excel broke off a change and did not take it back: look at Costs!A1, Costs!A2, and undo it in Excel");
  });

  it("says that a sheet is protected", async () => {
    const { write, fault } = await excel({ Locked: {} });
    expect(await fault(write({ sheet: "Locked", cell: "B4", content: 1 }))).toBe("Cannot write Locked!B4: the sheet Locked is protected: take the protection off first (Review, Unprotect Sheet)");
  });

  it.each<readonly [string, readonly CellWrite[], string]>([
    ["a range for one cell", [at("B4:C9", 1)], "Cannot write Costs!B4:C9: a write goes to one cell, such as B4"],
    ["a column", [at("B", 1)], "Cannot write Costs!B: a write goes to one cell, such as B4"],
    ["a cell twice", [at("B4", 1), at("$b$4", 2)], "Cannot write Costs!$b$4: it is written twice in one go"],
    ["a formula beyond Excel's length", [at("B4", `=${"1+".repeat(4096)}1`)], "Cannot write Costs!B4: the formula has 8194 characters, and Excel takes 8192"],
    ["a text beyond a cell's length", [at("B4", "x".repeat(32_768))], "Cannot write Costs!B4: the text has 32768 characters, and a cell takes 32767"],
    ["what is not a number", [at("B4", Number.POSITIVE_INFINITY)], "Cannot write Costs!B4: Infinity is not a number that a cell can hold"],
  ])("refuses %s before anything is sent", async (_, writes, sentence) => {
    const { write, fault, requests } = await excel({ Costs: {} });
    expect(await fault(write(...writes))).toBe(sentence);
    expect(await requests()).toEqual([]);
  });

  it("writes nothing when there is nothing to write", async () => {
    const { write, requests } = await excel({ Costs: {} });
    await write();
    expect(await requests()).toEqual([]);
  });
});
