import { readFileSync } from "node:fs";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { afterEach, describe, expect, it } from "vitest";
import { costSheet } from "../../sample-workbooks/cost-sheet";
import { bookFile } from "../../sample-workbooks/write/file";
import { workbookOf } from "../../src/engine/book";
import { type Cell, openXlsx } from "../../src/workbook/file";
import { outside } from "../outside";
import { convertedTo } from "../workbook/libreoffice";

const file = new Uint8Array(readFileSync(new URL("../../sample-workbooks/cost-sheet.xlsx", import.meta.url)));
const parts = unzipSync(file);
const xml = (part: string): string => strFromU8(parts[part] ?? new Uint8Array());
const sheetParts = Object.keys(parts).filter((name) => name.startsWith("xl/worksheets/sheet"));

interface Placed extends Cell {
  readonly sheet: string;
}
const cellsOf = (bytes: Uint8Array): Placed[] => {
  const opened = openXlsx(bytes);
  return opened.sheets.flatMap(({ name }) => [...opened.cells(name)].map((cell) => ({ ...cell, sheet: name })));
};
const at = ({ sheet, address }: Placed): string => `${sheet}!${address}`;
const cells = cellsOf(file);
const formulas = cells.filter(({ formula }) => formula !== null);
const usesLot = ({ formula }: Placed): boolean => formula?.includes("LOT.") ?? false;
const valueAt = (place: string): unknown => cells.find((cell) => at(cell) === place)?.value;

describe("the sample cost sheet", () => {
  const { TZ } = process.env;
  afterEach(() => {
    if (TZ === undefined) delete process.env["TZ"];
    else process.env["TZ"] = TZ;
  });

  it("is what its script writes (if not: npx tsx sample-workbooks/build.ts)", () => {
    expect(Buffer.from(bookFile(costSheet)).equals(Buffer.from(file))).toBe(true);
  });

  it("is the same in every time zone", () => {
    for (const zone of ["Pacific/Auckland", "America/Los_Angeles"]) {
      process.env["TZ"] = zone;
      expect(Buffer.from(bookFile(costSheet)).equals(Buffer.from(file))).toBe(true);
    }
  });

  it("opens on its Read me, with ten pounds of silver in B4 and a free cell beside it", () => {
    expect(costSheet.sheets[0]?.name).toBe("Read me");
    expect(xml("xl/workbook.xml")).toContain('activeTab="0"');
    expect(valueAt("Read me!B4")).toBe(10);
    expect(valueAt("Read me!C4")).toBeUndefined();
    const book = workbookOf([{ name: "Read me", cells: cells.filter(({ sheet }) => sheet === "Read me") }]);
    expect(book.evaluate('=LOT.COPPER(B4,"lb")')).toBeCloseTo(2.9455, 4);
    expect(book.evaluate('=LOT.COPPER(B4,"oz")')).toMatchObject({ error: "#VALUE!", message: expect.stringContaining('write "ozt"') });
  });

  it("tells the reader to type formulas that work, but for the one that is wrong on purpose", () => {
    const steps = cells.filter(({ sheet, value }) => sheet === "Read me" && /^\d\. /.test(String(value)));
    expect(steps).toHaveLength(4);
    const book = workbookOf([{ name: "Read me", cells: [...cells.filter(({ sheet }) => sheet === "Read me"), { address: "C4", formula: '=LOT.COPPER(B4,"lb")', fills: null, value: null, error: false }] }]);
    for (const { value } of steps) {
      const formula = /=LOT\.[A-Z]+\([^)]*\)/.exec(String(value))?.[0] ?? "";
      const outcome = book.evaluate(formula);
      if (String(value).includes("on purpose")) expect(outcome, formula).toHaveProperty("message");
      else expect(outcome, formula).toBeTypeOf("number");
    }
  });

  it("has many formulas of ours and native ones around them", () => {
    expect(formulas.filter(usesLot).length).toBeGreaterThan(45);
    expect(formulas.filter((cell) => !usesLot(cell)).length).toBeGreaterThan(80);
  });

  it("stores our formulas as Excel stores them, never by their plain names", () => {
    const stored = sheetParts.flatMap((part) => [...xml(part).matchAll(/<f[^>]*>([^<]*)<\/f>/g)].map(([, text = ""]) => text));
    expect(stored).toHaveLength(formulas.length);
    expect(stored.filter((text) => /\bLOT\./i.test(text))).toEqual([]);
    expect(stored.filter((text) => text.includes("_xldudf_LOT_")).length).toBe(formulas.filter(usesLot).length);
  });

  it("holds a value for every formula, and no error", () => {
    for (const part of sheetParts) expect(xml(part).match(/<\/f><v>/g) ?? []).toHaveLength((xml(part).match(/<f[ >]/g) ?? []).length);
    expect(cells.filter(({ error }) => error).map(at)).toEqual([]);
  });

  it("computes again to what it holds, when it is read back from the file", () => {
    const opened = openXlsx(file);
    const names = opened.definedNames.filter(({ sheet }) => sheet === null).map(({ name, formula }) => ({ name, range: formula.slice(1) }));
    const book = workbookOf(opened.sheets.map(({ name }) => ({ name, cells: opened.cells(name) })), names);
    for (const cell of formulas) expect(book.read(cell.sheet, cell.address).value, at(cell)).toBe(cell.value);
  });

  it("lets the settlement spill, in the way that Excel marks a spill", () => {
    const spill = cells.find(({ formula }) => formula?.startsWith("=LOT.SETTLEMENT("));
    expect(spill).toMatchObject({ sheet: "Settlement", address: "A24", fills: "A24:C34", value: "Net weight" });
    expect(sheetParts.map(xml).join("").match(/ cm="\d+"/g)).toEqual([' cm="1"']);
    expect(xml("xl/metadata.xml")).toMatch(/metadataType name="XLDAPR".*fDynamic="1".*<cellMetadata count="1"><bk><rc t="1" v="0"\/><\/bk><\/cellMetadata>/s);
    expect(xml("xl/_rels/workbook.xml.rels")).toContain('relationships/sheetMetadata" Target="metadata.xml"');
  });

  it("settles the assayed lot to the same cent on both sheets and by hand", () => {
    expect(valueAt("Settlement!B34")).toBe(valueAt("Lots!Q12"));
    expect(valueAt("Settlement!E34")).toBe(valueAt("Lots!Q12"));
  });

  it("adds its columns up to what a reader adds up from what shows", () => {
    const column = (letter: string, from: number, to: number): number =>
      cells.filter(({ sheet, address }) => sheet === "Consumables" && new RegExp(`^${letter}\\d+$`).test(address)).reduce((sum, { row, value }) => (row >= from && row <= to ? sum + Math.round(Number(value) * 100) : sum), 0);
    expect(column("F", 5, 18)).toBe(Math.round(Number(valueAt("Consumables!F19")) * 100));
    expect(column("B", 30, 32)).toBe(Math.round(Number(valueAt("Consumables!B33")) * 100));
  });

  it("shows a caution beside the copper, the acid and the hot metal", () => {
    const said = (sheet: string): string => cells.filter((cell) => cell.sheet === sheet).map(({ value }) => String(value)).join("\n");
    expect(said("Read me")).toMatch(/Silver nitrate and nitric acid burn/);
    expect(said("Lots")).toMatch(/free acid on copper gives off toxic fume/);
    expect(said("Consumables")).toMatch(/Nitric acid.*hot metal burns.*licensed practice decide/s);
  });

  it("does not make a spreadsheet compute everything on opening", () => {
    expect(xml("xl/workbook.xml")).toContain('<calcPr calcId="191029"/>');
  });
});

/** What a native formula gives must come from the other program, so its stored value is taken out; the spill, which that program cannot compute, is left as values. */
function withoutNativeValues(): Uint8Array {
  const changed = Object.entries(parts).map(([name, bytes]) => {
    if (!sheetParts.includes(name)) return [name, bytes] as const;
    const text = strFromU8(bytes)
      .replace(/ cm="1"><f t="array"[^>]*>[^<]*<\/f>/g, ">")
      .replace(/<c ([^>]*)><f>([^<]*)<\/f><v>[^<]*<\/v><\/c>/g, (cell, attributes: string, formula: string) =>
        formula.includes("_xldudf_") ? cell : `<c ${attributes.replace(' t="str"', "")}><f>${formula}</f></c>`,
      );
    return [name, strToU8(text)] as const;
  });
  return zipSync(Object.fromEntries(changed));
}

outside("soffice", "LibreOffice opens the sample cost sheet", (soffice) => {
  const shown = (bytes: Uint8Array): Map<string, Placed> => new Map(cellsOf(convertedTo(soffice, "cost-sheet.xlsx", bytes, "xlsx")).map((cell) => [at(cell), cell]));

  const expectSame = (cell: Placed, other: Placed | undefined): void => {
    if (typeof cell.value !== "number") expect(other?.value ?? "", at(cell)).toBe(cell.value);
    else expect(Math.abs(Number(other?.value) - cell.value), `${at(cell)}: ${String(other?.value)} for ${cell.value}`).toBeLessThanOrEqual(1e-12 * Math.abs(cell.value));
  };

  it("shows the stored value in every cell of ours but the spill, which it computes itself and cannot", () => {
    const theirs = shown(file);
    for (const cell of formulas.filter(usesLot)) if (cell.fills === null) expectSame(cell, theirs.get(at(cell)));
    expect(theirs.get("Settlement!A24")?.value).toBe("#NAME?");
  });

  it("computes the native formulas around them to the same values", () => {
    const theirs = shown(withoutNativeValues());
    const native = formulas.filter((cell) => !usesLot(cell));
    for (const cell of native) expectSame(cell, theirs.get(at(cell)));
  });

  it("draws the chart and prints five pages", () => {
    const pdf = Buffer.from(convertedTo(soffice, "cost-sheet.xlsx", file, "pdf")).toString("latin1");
    expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(5);
    const again = unzipSync(convertedTo(soffice, "cost-sheet.xlsx", file, "xlsx"));
    const chart = Object.entries(again).find(([name]) => name.startsWith("xl/charts/chart"))?.[1];
    expect(strFromU8(chart ?? new Uint8Array())).toMatch(/Consumables!\$G\$5:\$G\$18/);
  });
});
