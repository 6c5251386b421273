import { unzipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import { OpenBook } from "../../src/host/open-book";
import { openXlsx } from "../../src/workbook/file";
import { FilePort } from "../../src/workbook/file-port";
import type { Change } from "../../src/workbook/port";
import { outside } from "../outside";
import { QUOTE } from "./contract";
import { convertedTo, shownBy } from "./libreoffice";
import { shopBook } from "./written-by-excelts";

const QUOTED: Change = { ...QUOTE, cells: QUOTE.cells.map((cell) => (cell.cell === "B2" ? { ...cell, content: "=Lots!E2*2" } : cell)) };
const CHANGES: readonly Change[] = [
  { sheet: "Lots", cell: "A5", content: "L-004", like: "A4" },
  { sheet: "Lots", cell: "C5", content: 12.5, like: "C2" },
  { sheet: "Lots", cell: "D5", content: 0.5, numberFormat: "0.0%" },
  QUOTED,
  { sheet: "Prices", table: "Assumed", tableRange: "A1:C4" },
  { sheet: "Prices", cell: "C1", content: "Since" },
  { sheet: "Prices", cell: "A4", content: "tin" },
  { sheet: "Prices", cell: "B4", content: 0.03, like: "B3" },
  { sheet: "Prices", cell: "C4", content: "May" },
  { sheet: "Lots", cell: "B3", note: "=A1 & <weighed>\nthree times" },
  { sheet: "Lots", at: "K2", png: (QUOTE.pictures?.[0]?.png ?? new Uint8Array()), width: 40, height: 40, alt: 'A "dot"' },
];

const text = (parts: Record<string, Uint8Array>, part: string): string => new TextDecoder().decode(parts[part]);

let shop: Uint8Array;
let written: Uint8Array;
let saved: Uint8Array;

beforeAll(async () => {
  shop = new Uint8Array(await shopBook());
  const port = new FilePort(openXlsx(shop));
  await port.write(CHANGES);
  written = port.file.bytes;
  const book = new OpenBook("shop.xlsx", shop);
  await book.port.write(CHANGES);
  saved = book.patched();
});

describe.each([
  ["the file port wrote", () => written],
  ["the local workbook saved", () => saved],
])("a sheet, a note, a picture and a larger table that %s", (_, bytes) => {
  it("stand beside what was there, and the parts of other sheets keep their bytes", () => {
    const [before, after] = [unzipSync(shop), unzipSync(bytes())];
    const kept = ["xl/charts/chart1.xml", "xl/worksheets/sheet3.xml", "xl/theme/theme1.xml", "docProps/app.xml", "xl/media/image1.png"];
    for (const part of kept) expect(after[part], part).toEqual(before[part]);
    const drawing = text(after, "xl/drawings/drawing1.xml");
    expect(drawing).toContain(text(before, "xl/drawings/drawing1.xml").slice(0, -"</xdr:wsDr>".length));
    expect(drawing).toContain('descr="A &quot;dot&quot;"');
    expect(openXlsx(bytes()).sheets.map(({ name }) => name)).toEqual(["Lots", "Prices", "Notes", "Quote Q-001"]);
    expect([...openXlsx(bytes()).notes("Lots")]).toEqual([["A2", "Weighed twice"], ["B3", "=A1 & <weighed>\nthree times"]]);
    expect(openXlsx(bytes()).definedNames).toContainEqual({ name: "_xlnm.Print_Area", formula: "='Quote Q-001'!$A$1:$B$5", sheet: "Quote Q-001", hidden: false });
  });

  it("stand with a chart of its own on the sheet that was added", () => {
    const chart = text(unzipSync(bytes()), "xl/charts/chart2.xml");
    expect(chart.match(/<c:f>[^<]*<\/c:f>/g)).toEqual(["A", "B", "A", "B"].map((column) => `<c:f>'Quote Q-001'!$${column}$2:$${column}$3</c:f>`));
    expect(chart).toContain("<a:t>Fine &amp; share</a:t>");
    expect(chart).toContain('<c:pt idx="1"><c:v>12.5</c:v></c:pt>');
  });

  it("print as was asked, each row as high as what wraps in it", () => {
    const sheet = text(unzipSync(bytes()), "xl/worksheets/sheet4.xml");
    expect(sheet).toContain('<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>');
    expect(sheet).toContain('<pageSetup paperSize="1" orientation="portrait" fitToWidth="1" fitToHeight="1"/>');
    expect(sheet).toContain('<row r="5" ht="45" customHeight="1">');
    expect(sheet).toContain('<mergeCells count="2"><mergeCell ref="A1:B1"/><mergeCell ref="A5:B5"/></mergeCells>');
    expect(sheet).toContain('<col min="1" max="1" width="24.7109375" customWidth="1"/>');
  });

  it("leave every style of the file in its place", () => {
    const before = openXlsx(shop);
    const after = openXlsx(bytes());
    for (const sheet of ["Lots", "Prices"]) {
      const styles = new Map([...after.cells(sheet)].map(({ address, style }) => [address, style]));
      for (const { address, style } of before.cells(sheet)) expect(styles.get(address), `${sheet}!${address}`).toBe(style);
    }
    const [c2, c5] = ["C2", "C5"].map((cell) => after.styles("Lots", [cell])(cell));
    expect(c5).toBe(c2);
    expect(after.numberFormat(after.styles("Lots", ["D5"])("D5"))).toBe("0.0%");
  });

  it("are taken away again byte for byte", async () => {
    const port = new FilePort(openXlsx(shop));
    await (await port.write(CHANGES)).undo();
    expect(Buffer.compare(port.file.bytes, shop)).toBe(0);
    const book = new OpenBook("shop.xlsx", shop);
    const { undo } = await book.port.write(CHANGES);
    book.saved(book.patched());
    expect(Buffer.compare(book.patched(), shop)).not.toBe(0);
    await undo();
    expect(Buffer.compare(book.patched(), shop)).toBe(0);
    expect(book.changes().leftBehind).toEqual([]);
    await book.port.write(CHANGES);
    book.model.dispatch("REQUEST_UNDO");
    expect(Buffer.compare(book.patched(), shop)).toBe(0);
    book.model.dispatch("REQUEST_REDO");
    expect(openXlsx(book.patched()).sheets).toHaveLength(4);
  });
});

outside("soffice", "what was added, opened by LibreOffice", (soffice) => {
  it.each([
    ["the file port", () => written],
    ["the local workbook", () => saved],
  ])("shows the values, the note and the picture that %s wrote", (_, bytes) => {
    const shown = shownBy(soffice, bytes());
    expect(shown.get("Quote Q-001")?.slice(0, 3)).toEqual([["Quote", ""], ["Fine, g", "2313.425"], ["=not a formula", "1250%"]]);
    expect(shown.get("Lots")?.[4]?.slice(0, 4)).toEqual(["L-004", "", "12.5", "50%"]);
    const again = unzipSync(convertedTo(soffice, "book.xlsx", bytes(), "xlsx"));
    const all = Object.keys(again);
    const comments = all.filter((part) => part.startsWith("xl/comments")).map((part) => text(again, part)).join("");
    expect(comments).toContain("three times");
    expect(comments).toContain("Weighed twice");
    const anchors = all.filter((part) => /^xl\/drawings\/drawing\d+\.xml$/.test(part)).map((part) => text(again, part).match(/<xdr:pic>/g)?.length ?? 0);
    expect(anchors.sort()).toEqual([1, 2]);
    expect(all.filter((part) => /^xl\/charts\/chart\d+\.xml$/.test(part))).toHaveLength(2);
    expect(shown.get("Quote Q-001")?.[4]?.[0]).toMatch(/^Melt and assay decide/);
    expect(shown.get("Prices")?.slice(0, 4)).toEqual([["Metal", "Price", "Since"], ["silver", "24.5", ""], ["copper", "0.009", ""], ["tin", "0.03", "May"]]);
    const sheet = Object.keys(again).filter((part) => /sheet4\.xml$/.test(part)).map((part) => text(again, part)).join("");
    expect(sheet).toContain('fitToPage="true"');
    expect(sheet).toContain('<mergeCell ref="A1:B1"/>');
    expect(sheet).toMatch(/<pageSetup paperSize="1"[^>]* orientation="portrait"/);
    expect(sheet).toMatch(/<row r="5"[^>]* ht="45"/);
  });
});
