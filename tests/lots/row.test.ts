import { describe, expect, it } from "vitest";
import { type Correction, corrected } from "../../src/lots/corrections";
import { dayNumber } from "../../src/lots/calendar";
import { findLots } from "../../src/lots/find";
import type { LotInput } from "../../src/lots/given";
import type { ShopTerms } from "../../src/lots/lot-formula";
import { type NewRow, type RowOptions, newRow } from "../../src/lots/row";
import { openXlsx } from "../../src/workbook/file";
import { apply, plan } from "../../src/workbook/plan";
import { addressOf } from "../../src/workbook/xlsx/address";
import { outside } from "../outside";
import { convertedTo } from "../workbook/libreoffice";
import { withoutNativeValues } from "../workbook/without-native-values";
import { type Opened, firstPlace, open, openUgly } from "./readings";
import type { UglyBook } from "./ugly/books";

const day = dayNumber({ year: 2026, month: 3, day: 30 });
const shop: ShopTerms = { copperAllowance: "0.13", barWeight: "2", barUnit: "lb" };

interface Written extends Opened {
  readonly row: NewRow;
  readonly sheetName: string;
}

function rowFor(opened: Opened, given: LotInput, options: RowOptions = {}, corrections: readonly Correction[] = []): NewRow | readonly string[] {
  const { proposal, sheet } = firstPlace(opened);
  return newRow(sheet, corrected(proposal, corrections, sheet), given, options);
}

async function write(name: UglyBook, given: LotInput, options: RowOptions = {}, corrections: readonly Correction[] = []): Promise<Written> {
  const opened = await openUgly(name);
  const row = rowFor(opened, given, options, corrections);
  if (!("cells" in row)) throw new Error(row.join("; "));
  const { port } = opened;
  await apply(port, await plan(port, [...row.cells.map(({ write: cell }) => cell), ...row.notes]), () => false);
  return { ...opened, bytes: port.file.bytes, row, sheetName: firstPlace(opened).proposal.list.sheet };
}

/** The row as the file now holds it: by letter, the formula or the value. */
async function held({ port, row, sheetName }: Written): Promise<Record<string, unknown>> {
  const [cells = []] = await port.read({ sheet: sheetName, range: `A${row.row}:P${row.row}` });
  return Object.fromEntries(cells.flatMap(({ value, formula }, i) => (formula === null && (value === null || value === "") ? [] : [[addressOf({ row: 1, column: i + 1 }).slice(0, -1), formula ?? value]])));
}

async function values({ port, row, sheetName }: Written): Promise<Record<string, unknown>> {
  const [cells = []] = await port.read({ sheet: sheetName, range: `A${row.row}:P${row.row}` });
  return Object.fromEntries(cells.map(({ value }, i) => [addressOf({ row: 1, column: i + 1 }).slice(0, -1), value]));
}

const pounds: LotInput = {
  lot: { value: "L0100" }, date: { value: day }, client: { value: "C-21" }, description: { value: "forks" },
  gross: { value: [4000, 536], unit: "g" }, tare: { value: 1, unit: "lb" }, fineness: { value: "sterling" },
  price: { value: 24.5 }, payable: { value: "95%" }, refiningCharge: { value: 0.5 }, lotCharges: { value: 25 },
};
const french: LotInput = {
  lot: { value: "26-03-04" }, date: { value: "2026-03-30" }, client: { value: "Atelier Est" }, gross: { value: 10, unit: "lb" }, tare: { value: 0.25 },
  fineness: { value: 0.925 }, price: { value: 34 }, payable: { value: 0.96 }, refiningCharge: { value: 0.75 }, lotCharges: { value: 40 }, status: { value: "en cours" },
};
const british: LotInput = {
  lot: { value: 1045 }, date: { value: day }, client: { value: "A/C 15" }, gross: { value: 2.105 }, tare: { value: 0.005 },
  fineness: { value: "925‰" }, price: { value: 19.5, unit: "ozt" }, payable: { value: 0.95 }, treatmentCharge: { value: 12 },
};

describe("the row of a new lot", () => {
  it("holds what was given in the column's own unit, and the formulas of the column", async () => {
    const written = await write("pounds and short headings", pounds);
    expect(await held(written)).toEqual({
      A: "L0100", B: day, C: "C-21", D: "forks", E: 10.000168212706047, F: 1, G: "=E8-F8", H: 92.5, I: "=G8*175/12*H8/100",
      J: 24.5, K: 95, L: 0.5, M: 25, N: "=ROUND(I8*(J8*K8/100-L8)-M8,2)",
    });
    expect(written.row.notes.map(({ cell, note }) => [cell, note])).toEqual([["E8", "Readings: 4000 + 536 g"], ["H8", "Given: sterling"]]);
    expect(await written.port.note({ sheet: "jobs 26", cell: "E8" })).toBe("Readings: 4000 + 536 g");
  });

  it("looks like the row above", async () => {
    const { port } = await write("pounds and short headings", pounds);
    const [cells] = await port.read({ sheet: "jobs 26", range: "A8:N8" });
    expect(cells?.map(({ numberFormat }) => numberFormat ?? "")).toEqual(["", "m/d/yyyy", "", "", "0.00", "0.00", "0.00", "", "#,##0.000", "", "", "", "", "$#,##0.00"]);
  });

  it("follows a list in kilograms, with the decimal and date formats of French Canada", async () => {
    const written = await write("French Canada", french);
    expect(await held(written)).toMatchObject({ B: day, E: 4.5359237, G: "=E8-F8", H: 925, I: "=G8*H8/1000", K: 0.96, N: "=ROUND(I8/0.0311034768*(J8*K8-L8)-M8,2)", P: "en cours" });
    const [cells] = await written.port.read({ sheet: "Réception", range: "B8:N8" });
    expect([cells?.[0]?.numberFormat, cells?.[3]?.numberFormat, cells?.[12]?.numberFormat]).toEqual(["[$-C0C]d mmm yyyy;@", "#,##0.000", '#,##0.00 "$"']);
  });

  it("computes with a formula of Lotwright where the column is typed, and waits for what is still to come", async () => {
    const written = await write("United Kingdom", british);
    expect(await held(written)).toMatchObject({ B: 1045, I: "925‰", J: '=LOT.FINEWEIGHT(H8,"kg",I8,"kg")', L: 0.95, P: '=IF(O8="","",LOT.RECOVERY(O8,J8))', N: "=ROUND(J8*K8*L8-H8*M8,2)" });
    const shown = await values(written);
    expect(shown["J"]).toBeCloseTo(2.1 * 0.925, 12);
    expect(shown["K"]).toBeCloseTo(19.5 * (1000 / 31.1034768), 9);
    expect(shown["P"]).toBe("");
    expect(written.row.notes.map(({ note }) => note)).toEqual(["Given: 19.5 per ozt"]);
  });

  it("writes names that look like formulas, and texts in several lines, as texts", async () => {
    const clients = ["=1+1", "+48 shop", "-none-", "@bench", "two\nlines"];
    for (const client of clients) {
      const written = await write("hidden and filtered", { lot: { value: "B-13" }, client: { value: client }, gross: { value: 3, unit: "lb" }, tare: { value: 8, unit: "ozav" }, fineness: { value: 900 } });
      expect((await values(written))["B"]).toBe(client);
      expect((await held(written))["B"]).toBe(client);
    }
  });

  it("writes every weight of the row in one unit, spelled as the unit column spells it", async () => {
    const written = await write("hidden and filtered", { lot: { value: "B-13" }, gross: { value: 3, unit: "lb" }, tare: { value: 8, unit: "ozav" }, fineness: { value: 900 } });
    expect(await held(written)).toMatchObject({ D: 3, E: 0.5, G: "lbs" });
    expect(written.row.row).toBe(11);
  });

  it("goes into the empty last row of a table", async () => {
    const written = await write("table", { lot: { value: "T-11" }, date: { value: day }, client: { value: "C-03" }, net: { value: 1, unit: "ozt" }, fineness: { value: 0.8 } });
    expect(written.row).toMatchObject({ row: 6, tableRange: null });
    expect(await held(written)).toMatchObject({ B: "T-11", F: 31.1034768, G: 800, H: "=F6*G6/1000" });
  });

  it("asks for a row of the table when it is full, unless the host can grow it", async () => {
    const opened = await openUgly("table");
    await opened.port.write([{ sheet: "Intake", cell: "B6", content: "T-11" }, { sheet: "Intake", cell: "F6", content: 20 }]);
    const full = await open(opened.port.file.bytes);
    expect(rowFor(full, { net: { value: 2 } })).toEqual(["Table ‘Lots’ ends with its last lot: select the last cell of that row and press Tab, so that the table gains an empty row, then look again"]);
    expect(rowFor(full, { net: { value: 2 } }, { canGrowTables: true })).toMatchObject({ row: 7, tableRange: "B3:H7" });
  });

  it("says that a row must be inserted when the total stands right below the last lot", async () => {
    expect(rowFor(await openUgly("total below"), { lot: { value: "26-03-05" } })).toEqual([
      "Row 7 right below the last lot holds the total: insert a row above it (right-click the row number 7, Insert), then look again; the sums of the total are then offered widened to take the new row in",
    ]);
  });

  it("offers the sums of a total widened, when there is a free row above it that they leave out", async () => {
    const opened = await openUgly("total below");
    const april = findLots(opened.sheets).proposals.find(({ list }) => list.sheet === "April");
    const sheet = opened.sheets.find(({ info }) => info.name === "April");
    if (!april || !sheet) throw new Error("April is missing");
    const row = newRow(sheet, april, { lot: { value: "26-04-03" }, gross: { value: 100 }, tare: { value: 1 }, fineness: { value: 925 } });
    expect(row).toMatchObject({ row: 5, widened: [{ cell: "F6", content: "=SUM(F3:F5)" }, { cell: "H6", content: "=SUM(H3:H5)" }], remarks: [expect.stringContaining("end above row 5")] });
  });

  it("fills five thousand and one", async () => {
    const opened = await openUgly("five thousand");
    const row = rowFor(opened, { lot: { value: "L05001" }, net: { value: 100 }, fineness: { value: 925 } });
    expect(row).toMatchObject({ row: 5002, cells: expect.arrayContaining([expect.objectContaining({ field: "fineWeight", write: expect.objectContaining({ cell: "F5002", content: "=D5002*E5002/1000", like: "F5001" }) })]) });
  });

  it("never writes over a filled cell unless that was ticked", async () => {
    const opened = await openUgly("pounds and short headings");
    await opened.port.write([{ sheet: "jobs 26", cell: "A8", content: "L0100", asText: true }]);
    const prepared = await open(opened.port.file.bytes);
    const cells = (row: NewRow | readonly string[]): string[] => ("cells" in row ? row.cells.map(({ write: { cell } }) => cell) : [...row]);
    // The number is there already, as shops prepare their rows.
    expect(cells(rowFor(prepared, pounds))).not.toContain("A8");
    const other = rowFor(prepared, { ...pounds, lot: { value: "L0777" } });
    expect(cells(other)).not.toContain("A8");
    expect(other).toMatchObject({ remarks: expect.arrayContaining(["A8 (Job #) is filled and stays as it is: tick it to write over it"]) });
    const ticked = rowFor(prepared, { ...pounds, lot: { value: "L0777" } }, { overwrite: new Set(["lot"]) });
    expect(ticked).toMatchObject({ cells: expect.arrayContaining([expect.objectContaining({ overwrites: true, write: expect.objectContaining({ cell: "A8", content: "L0777" }) })]) });
  });

  it("takes a price from a cell of the workbook", async () => {
    const row = rowFor(await openUgly("United Kingdom"), { ...british, price: { sheet: "Today's prices", cell: "B3", unit: "ozt" } });
    expect(row).toMatchObject({ cells: expect.arrayContaining([expect.objectContaining({ field: "price", write: expect.objectContaining({ content: "=LOT.PRICE('Today''s prices'!$B$3,\"ozt\",\"kg\")" }) })]) });
  });

  it("writes formulas into columns that were just added, in cells or in the names of the table's columns", async () => {
    const added: Correction[] = [{ kind: "add", field: "copper", unit: "lb" }, { kind: "add", field: "copperBars" }];
    const written = await write("two-row headings", { lot: { value: "2026-015" }, gross: { value: 1000 }, tare: { value: 0 }, fineness: { value: 925 }, price: { value: 24 }, payable: { value: 0.95 } }, { shop }, added);
    expect(await held(written)).toMatchObject({ L: '=LOT.COPPER(H11,"ozt",0.13,0,"lb")', M: '=LOT.COPPERBARS(L11,"lb",2,"lb")' });
    expect((await values(written))["M"]).toBe(1);
    const opened = await openUgly("table");
    const { proposal, sheet } = firstPlace(opened);
    const match = corrected(proposal, [{ kind: "add", field: "copper", unit: "g" }], sheet, true);
    const row = newRow(sheet, match, { net: { value: 5 }, fineness: { value: 925 } }, { tableReferences: true });
    expect(row).toMatchObject({ cells: expect.arrayContaining([expect.objectContaining({ field: "copper", write: expect.objectContaining({ content: '=LOT.COPPER(Lots[[#This Row],[Fine (g)]],"g")' }) })]) });
  });

  it("refuses in sentences what cannot be written", async () => {
    const bare = await openUgly("bare ounces");
    expect(rowFor(bare, { net: { value: 5, unit: "lb" } })).toEqual([expect.stringContaining("Say the unit of net"), expect.stringContaining("Say the unit of column E ‘Fine oz’")]);
    const told: Correction[] = [{ kind: "unit", field: "net", symbol: "ozt" }, { kind: "unit", field: "fineWeight", symbol: "ozt" }, { kind: "unit", field: "fineness", symbol: "%" }];
    expect(rowFor(bare, { net: { value: 5, unit: "ozt" }, fineness: { value: "92.5%" } }, {}, told)).toMatchObject({
      cells: expect.arrayContaining([expect.objectContaining({ field: "fineWeight", write: expect.objectContaining({ content: '=LOT.FINEWEIGHT(C5,"ozt",D5/100)' }) })]),
    });
    expect(rowFor(await openUgly("French Canada"), { fineness: { value: 92.5 }, payable: { value: 98 }, gross: { value: 5, unit: "oz" } })).toEqual([
      expect.stringContaining("an ounce can be troy or avoirdupois"),
      expect.stringContaining("could be %, karat or ‰"),
      'Cannot use what was given for payable: it must be a share from 0 to 1, or a text such as "98%"',
    ]);
  });
});

outside("soffice", "LibreOffice reads the new row as it was written", (soffice) => {
  const given: Partial<Record<UglyBook, LotInput>> = {
    "pounds and short headings": pounds,
    "French Canada": french,
    "United Kingdom": british,
    "two-row headings": { lot: { value: "2026-015" }, date: { value: day }, gross: { value: 31, unit: "ozt" }, tare: { value: 2 }, fineness: { value: "92.5%" }, price: { value: 24 }, payable: { value: 0.95 } },
    "hidden and filtered": { lot: { value: "B-13" }, client: { value: "=1+1" }, gross: { value: 3, unit: "lb" }, tare: { value: 8, unit: "ozav" }, fineness: { value: 900 }, status: { value: "open" } },
    table: { lot: { value: "T-11" }, client: { value: "@bench" }, net: { value: 12.5 }, fineness: { value: 900 } },
  };
  for (const [name, input] of Object.entries(given) as [UglyBook, LotInput][])
    it(`in the workbook “${name}”, and computes its native formulas to the same values`, async () => {
      const written = await write(name, input);
      const theirs = new Map([...openXlsx(convertedTo(soffice, "book.xlsx", withoutNativeValues(written.bytes), "xlsx")).cells(written.sheetName)].map(({ address, value }) => [address, value]));
      expect(written.row.cells.length).toBeGreaterThan(4);
      for (const { write: { sheet, cell } } of written.row.cells) {
        const [[ours] = []] = await written.port.read({ sheet, range: cell });
        const shown = theirs.get(cell) ?? "";
        if (typeof ours?.value !== "number") expect(shown, cell).toBe(ours?.value);
        else expect(Math.abs(Number(shown) - ours.value), `${cell}: ${String(shown)} for ${ours.value}`).toBeLessThanOrEqual(1e-12 * Math.abs(ours.value));
      }
    });
});
