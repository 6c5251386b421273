import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CellChange, FileFault, openXlsx } from "../../../src/workbook/file";
import { MAIN, handmade, lots, opened, rowsOf, sheet, SHEET, textOf } from "../handmade";

type Change = Omit<CellChange, "sheet">;
const onLots = (changes: readonly Change[]): CellChange[] => changes.map((change) => ({ sheet: "Lots", ...change }));
/** The rows of the sheet after the changes. */
const patched = (rows: string, ...changes: Change[]): string => rowsOf(lots(rows).patch(onLots(changes)));

describe("a cell that is there", () => {
  const rows = '<row r="1" ht="20"><c r="A1" s="4" t="s"><v>0</v></c><c r="B1" s="2"><f>A1*2</f><v>5</v></c><c r="C1" vm="1" t="e"><v>#VALUE!</v></c></row>';

  it.each<[string, Change, string, string]>([
    ["takes a number and keeps its style", { cell: "A1", value: 12.5 }, '<c r="A1" s="4" t="s"><v>0</v></c>', '<c r="A1" s="4"><v>12.5</v></c>'],
    ["takes a text", { cell: "A1", value: "Lot <7>" }, '<c r="A1" s="4" t="s"><v>0</v></c>', '<c r="A1" s="4" t="inlineStr"><is><t>Lot &lt;7&gt;</t></is></c>'],
    ["takes a truth value", { cell: "A1", value: true }, '<c r="A1" s="4" t="s"><v>0</v></c>', '<c r="A1" s="4" t="b"><v>1</v></c>'],
    ["is emptied and keeps its style", { cell: "A1", value: null }, '<c r="A1" s="4" t="s"><v>0</v></c>', '<c r="A1" s="4"/>'],
    ["takes a formula with its value", { cell: "A1", formula: '=LOT.COPPER(B4,"lb")', value: 3.25 }, '<c r="A1" s="4" t="s"><v>0</v></c>', '<c r="A1" s="4"><f>_xldudf_LOT_COPPER(B4,"lb")</f><v>3.25</v></c>'],
    ["takes a formula whose value is a text", { cell: "A1", formula: "=B1&C1", value: "a" }, '<c r="A1" s="4" t="s"><v>0</v></c>', '<c r="A1" s="4" t="str"><f>B1&amp;C1</f><v>a</v></c>'],
    ["takes a formula whose value is an error", { cell: "A1", formula: "=1/0", value: "#DIV/0!", error: true }, '<c r="A1" s="4" t="s"><v>0</v></c>', '<c r="A1" s="4" t="e"><f>1/0</f><v>#DIV/0!</v></c>'],
    ["stores an error newer than the format as #VALUE!", { cell: "A1", formula: "=B1", value: "#SPILL!", error: true }, '<c r="A1" s="4" t="s"><v>0</v></c>', '<c r="A1" s="4" t="e"><f>B1</f><v>#VALUE!</v></c>'],
    ["takes a new value and keeps its formula", { cell: "B1", value: 6 }, "<f>A1*2</f><v>5</v>", "<f>A1*2</f><v>6</v>"],
    ["loses its formula and keeps the value", { cell: "B1", formula: null, value: 5 }, '<c r="B1" s="2"><f>A1*2</f><v>5</v></c>', '<c r="B1" s="2"><v>5</v></c>'],
    ["loses what marked its old value", { cell: "C1", value: 1 }, '<c r="C1" vm="1" t="e"><v>#VALUE!</v></c>', '<c r="C1"><v>1</v></c>'],
  ])("%s, and nothing else changes", (_, change, before, after) => {
    expect(rows).toContain(before);
    expect(patched(rows, change)).toBe(rows.replace(before, after));
  });

  it("keeps whatever else it holds, and how it is written", () => {
    const odd = "<row r='1'><c  r='A1'\n  s='1' ph='1' t='n' ><v>1</v><extLst><ext uri='x'/></extLst></c ><c r='B1'/></row >";
    expect(patched(odd, { cell: "A1", value: "x" })).toBe(
      "<row r='1'><c  r='A1'\n  s='1' ph='1' t=\"inlineStr\"><is><t>x</t></is><extLst><ext uri='x'/></extLst></c><c r='B1'/></row >",
    );
  });

  it("refuses a number that is none", () => {
    expect(() => patched(rows, { cell: "A1", value: NaN })).toThrow("Cannot write NaN into A1");
    expect(() => patched(rows, { cell: "A1", value: Infinity })).toThrow(FileFault);
  });

  it("refuses a text that no cell can hold", () => {
    expect(() => patched(rows, { cell: "A1", value: "x".repeat(32_768) })).toThrow("a cell holds 32,767 at most");
  });

  it("cannot be changed twice at once", () => {
    expect(() => patched(rows, { cell: "A1", value: 1 }, { cell: "$a$1", value: 2 })).toThrow("Cannot change Lots!A1 in two ways at once: give it one content");
  });

  it("must be on the sheet", () => {
    expect(() => patched(rows, { cell: "XFE1", value: 1 })).toThrow("Cannot change Lots!XFE1: write a cell of the sheet, such as B4");
  });
});

describe("a cell that is not there yet", () => {
  it("is put between its neighbours", () => {
    const rows = '<row r="2"><c r="B2"><v>1</v></c><c r="D2"><v>2</v></c></row><row r="5"><c r="A5"><v>3</v></c></row>';
    expect(patched(rows, { cell: "C2", value: 9 }, { cell: "A2", value: 8 }, { cell: "E2", value: 10 })).toBe(
      '<row r="2"><c r="A2"><v>8</v></c><c r="B2"><v>1</v></c><c r="C2"><v>9</v></c><c r="D2"><v>2</v></c><c r="E2"><v>10</v></c></row><row r="5"><c r="A5"><v>3</v></c></row>',
    );
    expect(patched(rows, { cell: "A6", value: 3 }, { cell: "C3", value: 2 }, { cell: "B1", value: 1 }, { cell: "A3", value: 0 })).toBe(
      `<row r="1"><c r="B1"><v>1</v></c></row><row r="2"><c r="B2"><v>1</v></c><c r="D2"><v>2</v></c></row><row r="3"><c r="A3"><v>0</v></c><c r="C3"><v>2</v></c></row>` +
        `<row r="5"><c r="A5"><v>3</v></c></row><row r="6"><c r="A6"><v>3</v></c></row>`,
    );
  });

  it("opens a row that was empty, and a sheet that was", () => {
    expect(patched('<row r="3" ht="20" spans="2:2" />', { cell: "A3", value: 1 })).toBe('<row r="3" ht="20" spans="1:2" ><c r="A3"><v>1</v></c></row>');
    const bytes = opened({ sheets: { Lots: `<worksheet xmlns="${MAIN}"><sheetData/><pageMargins left="1"/></worksheet>` } }).patch(onLots([{ cell: "B2", value: 1 }]));
    expect(textOf(bytes, SHEET)).toBe(`<worksheet xmlns="${MAIN}"><sheetData><row r="2"><c r="B2"><v>1</v></c></row></sheetData><pageMargins left="1"/></worksheet>`);
  });

  it("takes the style of its row, else of its column", () => {
    const file = lots('<row r="1" s="5" customFormat="1"/><row r="2" s="6"><c r="A2"/></row>', '<cols><col min="2" max="3" width="9" style="7"/></cols>');
    const bytes = file.patch(onLots(["B1", "B2", "C3", "D3"].map((cell) => ({ cell, value: 1 }))));
    expect([...openXlsx(bytes).cells("Lots")].map(({ address, style }) => [address, style])).toEqual([
      ["B1", 5],
      ["B2", 7],
      ["C3", 7],
      ["D3", 0],
    ]);
  });

  it("widens the range that the sheet says it uses, and the columns that a row says it uses", () => {
    const bytes = lots('<row r="2" spans="2:3"><c r="B2"/></row>', '<dimension ref="B2:C3"/>').patch(onLots([{ cell: "E2", value: 1 }, { cell: "A9", value: 1 }]));
    expect(textOf(bytes, SHEET)).toContain('<dimension ref="A2:E9"/>');
    expect(rowsOf(bytes)).toContain('<row r="2" spans="2:5">');
  });

  it("is not made when there is nothing to put in it", () => {
    const file = lots('<row r="2"><c r="B2"/></row>', '<dimension ref="B2"/>');
    const before = textOf(file.patch([]), SHEET);
    expect(textOf(file.patch(onLots([{ cell: "A1", value: null }, { cell: "C2", value: "" }])), SHEET)).toBe(before);
  });

  it("is put in the last corner of a sheet", () => {
    expect(patched("", { cell: "XFD1048576", value: 1 })).toBe('<row r="1048576"><c r="XFD1048576"><v>1</v></c></row>');
  });

  it("is written with the prefix that the sheet uses", () => {
    const file = opened({ sheets: { Lots: `<x:worksheet xmlns:x="${MAIN}"><x:sheetData/></x:worksheet>` } });
    expect(textOf(file.patch(onLots([{ cell: "A1", formula: "=B1", value: "a" }, { cell: "B1", value: "b" }])), SHEET)).toBe(
      `<x:worksheet xmlns:x="${MAIN}"><x:sheetData><x:row r="1"><x:c r="A1" t="str"><x:f>B1</x:f><x:v>a</x:v></x:c><x:c r="B1" t="inlineStr"><x:is><x:t>b</x:t></x:is></x:c></x:row></x:sheetData></x:worksheet>`,
    );
  });
});

describe("a formula that other cells share", () => {
  const rows =
    '<row r="1"><c r="A1"><v>1</v></c><c r="B1"><f t="shared" ref="B1:B4" si="0">A1*$A$1</f><v>1</v></c></row>' +
    '<row r="2"><c r="A2"><v>2</v></c><c r="B2"><f t="shared" si="0"/><v>2</v></c></row>' +
    '<row r="3"><c r="A3"><v>3</v></c><c r="B3"><f t="shared" si="0"/><v>3</v></c></row>' +
    '<row r="4"><c r="B4"><f t="shared" si="0"/><v>0</v></c></row>';
  const formulasAfter = (...changes: Change[]): Record<string, unknown> =>
    Object.fromEntries([...openXlsx(lots(rows).patch(onLots(changes))).cells("Lots")].filter(({ formula }) => formula).map(({ address, formula }) => [address, formula]));

  it("moves to the next of them when its first cell changes", () => {
    expect(patched(rows, { cell: "B1", formula: null, value: 7 })).toBe(
      rows.replace('<f t="shared" ref="B1:B4" si="0">A1*$A$1</f><v>1</v>', "<v>7</v>").replace('<f t="shared" si="0"/>', '<f t="shared" ref="B2:B4" si="0">A2*$A$1</f>'),
    );
  });

  it("moves past cells that change with it", () => {
    expect(formulasAfter({ cell: "B1", formula: "=5", value: 5 }, { cell: "B2", formula: null, value: 6 })).toEqual({ B1: "=5", B3: "=A3*$A$1", B4: "=A4*$A$1" });
  });

  it("takes the new value of the cell that it moves to", () => {
    const bytes = lots(rows).patch(onLots([{ cell: "B1", formula: null, value: 7 }, { cell: "B2", value: 20 }]));
    expect([...openXlsx(bytes).cells("Lots")].find(({ address }) => address === "B2")).toMatchObject({ formula: "=A2*$A$1", value: 20 });
  });

  it("stays for the others when one in the middle changes", () => {
    expect(patched(rows, { cell: "B3", formula: "=1", value: 1 })).toBe(rows.replace('<c r="B3"><f t="shared" si="0"/><v>3</v></c>', '<c r="B3"><f>1</f><v>1</v></c>'));
  });

  it("stays when only values change", () => {
    expect(patched(rows, { cell: "B1", value: 10 }, { cell: "B3", value: 30 })).toBe(rows.replace("<v>1</v></c></row>", "<v>10</v></c></row>").replace('<f t="shared" si="0"/><v>3</v>', '<f t="shared" si="0"/><v>30</v>'));
  });

  it("reads the same for every cell that did not change, whichever did", () => {
    fc.assert(
      fc.property(fc.subarray(["B1", "B2", "B3", "B4"]), (cells) => {
        const before = formulasAfter();
        const after = formulasAfter(...cells.map((cell) => ({ cell, formula: null, value: 0 })));
        expect(after).toEqual(Object.fromEntries(Object.entries(before).filter(([address]) => !cells.includes(address))));
      }),
    );
  });
});

describe("an array formula over several cells", () => {
  const rows =
    '<row r="1"><c r="A1"><f t="array" ref="A1:A2">_xldudf_LOT_X(C1:C2)</f><v>1</v></c></row><row r="2"><c r="A2"><v>2</v></c></row><row r="3"><c r="A3"><v>3</v></c></row>';

  it("is not changed in part", () => {
    for (const cell of ["A1", "A2"])
      expect(() => patched(rows, { cell, formula: null, value: 9 })).toThrow("Cannot change a part of the array formula that fills Lots!A1:A2: change all of these cells at once");
  });

  it("is changed whole", () => {
    expect(patched(rows, { cell: "A1", formula: null, value: 8 }, { cell: "A2", formula: null, value: 9 })).toBe(
      '<row r="1"><c r="A1"><v>8</v></c></row><row r="2"><c r="A2"><v>9</v></c></row><row r="3"><c r="A3"><v>3</v></c></row>',
    );
  });

  it("takes new values, one by one or all together", () => {
    const after = rows.replace("<v>1</v>", "<v>8</v>").replace('<c r="A2"><v>2</v>', '<c r="A2" t="str"><v>nine</v>');
    expect(patched(rows, { cell: "A1", value: 8 }, { cell: "A2", value: "nine" })).toBe(after);
    expect(patched(rows, { cell: "A1", value: 8, spill: [[{ value: 8 }], [{ value: "nine" }]] })).toBe(after);
  });

  it("shows of a result what its range has room for, and #N/A where the result does not reach", () => {
    const result = (...results: (readonly number[])[]) => ({ cell: "A1", value: results[0]?.[0] ?? 0, spill: results.map((cells) => cells.map((value) => ({ value }))) });
    const wide = '<row r="1"><c r="A1"><f t="array" ref="A1:B3">X1:Y9</f><v>1</v></c></row>';
    const showing = (...results: (readonly number[])[]) => [...openXlsx(lots(wide).patch(onLots([result(...results)]))).cells("Lots")].map(({ value }) => value);
    expect(showing([1, 2, 3], [4, 5, 6], [7, 8, 9], [10, 11, 12])).toEqual([1, 2, 4, 5, 7, 8]);
    expect(showing([1, 2], [3, 4])).toEqual([1, 2, 3, 4, "#N/A", "#N/A"]);
    expect(showing([1, 2])).toEqual([1, 2, 1, 2, 1, 2]);
    expect(showing([1], [2])).toEqual([1, 1, 2, 2, "#N/A", "#N/A"]);
    expect(patched(rows, result([8]))).toBe(rows.replace("<v>1</v>", "<v>8</v>").replace("<v>2</v>", "<v>8</v>"));
  });

  it("of one cell is changed like any other", () => {
    expect(patched('<row r="1"><c r="A1"><f t="array" ref="A1">SUM(B1*C1)</f><v>1</v></c></row>', { cell: "A1", formula: "=2", value: 2 })).toBe('<row r="1"><c r="A1"><f>2</f><v>2</v></c></row>');
  });

  it("leaves a what-if table to Excel", () => {
    const table = '<row r="1"><c r="A1"><f t="dataTable" ref="A1:A2" dt2D="0" dtr="0" r1="B1"/><v>1</v></c></row><row r="2"><c r="A2"><v>2</v></c></row>';
    expect(() => patched(table, { cell: "A2", formula: null, value: 9 })).toThrow("Cannot change a part of the what-if table Lots!A1:A2: change it in Excel");
    expect(patched(table, { cell: "A2", value: 9 })).toBe(table.replace("<v>2</v>", "<v>9</v>"));
  });
});

describe("a formula that fills several cells", () => {
  const spilled = (...values: (number | string | null)[]) => values.map((value) => [{ value }]);

  it("is stored as a dynamic array with the value of every cell", () => {
    expect(patched('<row r="2"><c r="B2" s="1"/></row>', { cell: "A1", formula: "=LOT.COPPERBARS(D1:D3)", value: 1, spill: [[{ value: 1 }, { value: "two" }], [{ value: "#N/A", error: true }, { value: null }]] })).toBe(
      '<row r="1"><c r="A1" cm="1"><f t="array" ref="A1:B2">_xldudf_LOT_COPPERBARS(D1:D3)</f><v>1</v></c><c r="B1" t="str"><v>two</v></c></row>' +
        '<row r="2"><c r="A2" t="e"><v>#N/A</v></c><c r="B2" s="1" t="str"><v></v></c></row>',
    );
  });

  const three = '<row r="1"><c r="A1" cm="1"><f t="array" ref="A1:A3">_xldudf_LOT_X(C:C)</f><v>1</v></c></row><row r="2"><c r="A2"><v>2</v></c></row><row r="3"><c r="A3" s="2"><v>3</v></c><c r="B3"><v>5</v></c></row>';

  it("grows and shrinks with its result, and keeps its text", () => {
    expect(patched(three, { cell: "A1", value: 7, spill: spilled(7, 8) })).toBe(
      '<row r="1"><c r="A1" cm="1"><f t="array" ref="A1:A2">_xldudf_LOT_X(C:C)</f><v>7</v></c></row><row r="2"><c r="A2"><v>8</v></c></row><row r="3"><c r="A3" s="2"/><c r="B3"><v>5</v></c></row>',
    );
    expect(patched(three, { cell: "A1", value: 1, spill: spilled(1, 2, 3, 4) })).toBe(three.replace("A1:A3", "A1:A4") + '<row r="4"><c r="A4"><v>4</v></c></row>');
  });

  it("takes its values with it when it goes", () => {
    const without = '<row r="2"><c r="A2"/></row><row r="3"><c r="A3" s="2"/><c r="B3"><v>5</v></c></row>';
    expect(patched(three, { cell: "A1", formula: null, value: "gone" })).toBe(`<row r="1"><c r="A1" t="inlineStr"><is><t>gone</t></is></c></row>${without}`);
    expect(patched(three, { cell: "A1", formula: "=1", value: 1 })).toBe(`<row r="1"><c r="A1"><f>1</f><v>1</v></c></row>${without}`);
  });

  it("leaves its values where they are written as plain ones", () => {
    const frozen = ["A1", "A2", "A3"].map((cell, i) => ({ cell, formula: null, value: i + 1 }));
    expect(patched(three, ...frozen)).toBe(three.replace(' cm="1"><f t="array" ref="A1:A3">_xldudf_LOT_X(C:C)</f>', ">"));
  });

  it("does not overwrite what is there", () => {
    expect(() => patched(three, { cell: "B1", formula: "=LOT.X(1)", value: 1, spill: spilled(1, 2, 3) })).toThrow("Cannot fill B3: it already holds something: empty it, or put the formula elsewhere");
    expect(patched(three, { cell: "B1", formula: "=LOT.X(1)", value: 1, spill: spilled(1, 2, 3) }, { cell: "B3", formula: null, value: null })).toContain('<c r="B3"><v>3</v></c>');
  });

  it("is changed where it stands, not in the cells it fills", () => {
    expect(() => patched(three, { cell: "A2", formula: null, value: 9 })).toThrow("Cannot change a part of the result that fills Lots!A1:A3: change its formula in A1");
    expect(patched(three, { cell: "A2", value: "n" })).toBe(three.replace('<c r="A2"><v>2</v>', '<c r="A2" t="str"><v>n</v>'));
  });

  it("stays on the sheet and in one shape", () => {
    const formula = "=LOT.X(1)";
    expect(() => patched("", { cell: "A1048576", formula, value: 1, spill: spilled(1, 2) })).toThrow("the result reaches over the edge of the sheet");
    expect(() => patched("", { cell: "A1", formula, value: 1, spill: [[{ value: 1 }], []] })).toThrow("its rows are empty or differ in length");
    expect(() => patched("", { cell: "A1", formula: null, value: 1, spill: spilled(1, 2) })).toThrow("Cannot fill cells from Lots!A1 without a formula");
    expect(() => patched("", { cell: "A1", value: 1, spill: spilled(1, 2) })).toThrow("Cannot fill cells from A1: it has no formula");
    expect(() => patched("", { cell: "A1", formula, value: 1, spill: spilled(1, 2) }, { cell: "A2", value: 5 })).toThrow("Cannot change Lots!A2 in two ways at once");
  });

  it("does not hang on a range as large as the sheet, or one elsewhere", () => {
    const filling = (ref: string) => `<row r="1"><c r="A1" cm="1"><f t="array" ref="${ref}">_xldudf_LOT_X(C:C)</f><v>1</v></c></row><row r="2"><c r="A2"><v>2</v></c></row>`;
    expect(() => patched(filling("A1:XFD1048576"), { cell: "A1", formula: null, value: 1 })).toThrow("the formula in A1 fills millions of cells");
    expect(() => patched(filling("B1:B2"), { cell: "A1", formula: null, value: 1 })).toThrow("the formula in A1 fills an unreadable range");
    expect(patched(filling("A1:A1048576"), { cell: "A1", formula: null, value: 1 })).toBe('<row r="1"><c r="A1"><v>1</v></c></row><row r="2"><c r="A2"/></row>');
  });
});

describe("any changes to any sheet", () => {
  const spot = fc.record({ row: fc.integer({ min: 1, max: 6 }), column: fc.constantFrom("A", "B", "C", "D", "AA") });
  const content = fc.oneof(fc.integer(), fc.double({ noNaN: true, noDefaultInfinity: true }), fc.boolean(), fc.string(), fc.constant(null));
  const key = ({ row, column }: { row: number; column: string }) => `${column}${row}`;
  const cells = (maxLength: number) => fc.uniqueArray(fc.record({ spot, value: content, formula: fc.constantFrom(null, "=A1+1") }), { selector: (one) => key(one.spot), maxLength });

  it("leave a sheet that reads as if each had been typed in turn", () => {
    fc.assert(
      fc.property(cells(12), cells(12), (before, changes) => {
        const change = (all: typeof before): CellChange[] => all.map(({ spot: at, value, formula }) => ({ sheet: "Lots", cell: key(at), value, formula }));
        const bytes = openXlsx(lots("", '<dimension ref="B2"/>').patch(change(before))).patch(change(changes));
        const expected = new Map([...before, ...changes].map(({ spot: at, value, formula }) => [key(at), { formula, value }]));
        const found = new Map([...openXlsx(bytes).cells("Lots")].map(({ address, formula, value }) => [address, { formula, value }]));
        for (const [address, { formula, value }] of expected) {
          const kept = typeof value === "number" ? value + 0 : value;
          const isNothing = formula === null && (kept === null || kept === "");
          expect(found.get(address)).toEqual(isNothing ? undefined : { formula, value: formula ? (kept ?? "") : kept });
        }
        expect([...found.keys()].every((address) => expected.has(address))).toBe(true);
      }),
    );
  });

  it("give back the very same parts when there are none", () => {
    const bytes = handmade({ sheets: { Lots: sheet('<row r="1"><c r="A1"><v>1</v></c></row>') } });
    expect(textOf(openXlsx(bytes).patch([]), SHEET)).toBe(textOf(bytes, SHEET));
  });
});
