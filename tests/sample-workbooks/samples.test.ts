import { readFileSync } from "node:fs";
import { strFromU8, unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { quotesBook } from "../../sample-workbooks/quotes";
import { throughput } from "../../sample-workbooks/throughput";
import { freshCells } from "../../src/cli/fresh-cells";
import { share } from "../../src/sharing/share";
import { type Cell, type XlsxFile, openXlsx } from "../../src/workbook/file";
import { FilePort } from "../../src/workbook/file-port";
import { outside } from "../outside";
import { shownBy } from "../workbook/libreoffice";
import { withoutNativeValues } from "../workbook/without-native-values";

const bytesOf = (name: string): Uint8Array => new Uint8Array(readFileSync(new URL(`../../sample-workbooks/${name}.xlsx`, import.meta.url)));
const NAMES = ["quotes", "throughput", "bookkeeper-copy"] as const;
const A_BUSY_MACHINE = 120_000;

describe.each(NAMES)("the sample %s", (name) => {
  it("holds the values that the functions give, and begins with what to try", () => {
    const file = openXlsx(bytesOf(name));
    expect(file.sheets[0]?.name).toBe("Read me");
    const { cells, left } = freshCells(file, () => undefined);
    expect(left).toEqual([]);
    expect(cells.filter(({ differs }) => differs)).toEqual([]);
    if (name !== "bookkeeper-copy") expect(cells.length).toBeGreaterThan(30);
  });
});

it("the samples are what their scripts write (if not: npm run samples)", async () => {
  expect(Buffer.compare(await quotesBook(), bytesOf("quotes"))).toBe(0);
  const year = await throughput();
  expect(Buffer.compare(year, bytesOf("throughput"))).toBe(0);
  expect(Buffer.compare((await share(openXlsx(year))).bytes, bytesOf("bookkeeper-copy"))).toBe(0);
}, A_BUSY_MACHINE);

describe("the year of the sample throughput", () => {
  const file = openXlsx(bytesOf("throughput"));
  const months = file.sheets.filter(({ name }) => /^Month \d{4}-\d{2}$/.test(name)).map(({ name }) => ({ name, at: new Map([...file.cells(name)].map((cell) => [cell.address, cell.value])) }));

  it("has twelve months, each opening with what the one before closed with", () => {
    expect(months).toHaveLength(12);
    for (const [i, { at }] of months.entries()) if (i > 0) expect(at.get("B6")).toBe(months[i - 1]?.at.get("B9"));
  });
  it("misses metal in the one month in which it was gone, and in no other", () => {
    expect(months.filter(({ at }) => at.get("B13") !== "within measurement").map(({ name, at }) => [name, at.get("B13")])).toEqual([["Month 2025-08", "metal missing"]]);
  });
  it("has a month that misses metal too, and no other verdict that turns, once its weigh-in scale is taken to be right", async () => {
    const verdicts = (book: XlsxFile): unknown[] => months.map(({ name }) => [...book.cells(name)].find(({ address }) => address === "B13")?.value);
    expect(months[9]?.name).toBe("Month 2025-10");
    expect(months[9]?.at.get("A21")).toBe("Bias of the scale at weigh-in");
    const port = new FilePort(file);
    await port.write([{ sheet: "Month 2025-10", cell: "B21", content: 0 }]);
    expect(verdicts(port.file)).toEqual(verdicts(file).map((verdict, i) => (i === 9 ? "metal missing" : verdict)));
  });
  it("has three charts in each month, of the months up to it", () => {
    const parts = unzipSync(bytesOf("throughput"));
    const charts = Object.entries(parts).flatMap(([name, part]) => (/^xl\/charts\/chart\d+\.xml$/.test(name) ? [strFromU8(part)] : []));
    for (const [i, { name }] of months.entries()) {
      const own = charts.filter((chart) => chart.includes(`<c:f>'${name}'!`));
      expect(own, name).toHaveLength(3);
      for (const chart of own) expect(/<c:cat>.*?<c:ptCount val="(\d+)"/.exec(chart)?.[1], name).toBe(String(i + 1));
    }
  });
});

outside("soffice", "the samples, opened by LibreOffice", (soffice) => {
  const held = (file: XlsxFile): { sheet: string; cell: Cell }[] => file.sheets.filter(({ kind, state }) => kind === "worksheet" && state === "visible").flatMap(({ name }) => [...file.cells(name)].map((cell) => ({ sheet: name, cell })));
  const numberIn = (shown: string): number => (shown.endsWith("%") ? Number(shown.slice(0, -1)) / 100 : Number(shown.replace(/[^\d.eE+-]/g, "")));
  /** Numbers that are not days; texts as they are. */
  function compare(file: XlsxFile, sheets: ReadonlyMap<string, string[][]>): number {
    let compared = 0;
    for (const { sheet, cell: { row, column, value, formula, address } } of held(file)) {
      // The text that an unknown function gave is the one thing that LibreOffice does not keep.
      if (formula?.includes("LOT.") && typeof value === "string") continue;
      const shown = sheets.get(sheet)?.[row - 1]?.[column - 1] ?? "";
      expect(shown, `${sheet}!${address}`).not.toBe("#NAME?");
      if (formula === null || /^\d{4}-\d{2}-\d{2}$/.test(shown)) continue;
      if (typeof value === "number") expect(Math.abs(numberIn(shown) - value), `${sheet}!${address} shows ${shown} for ${value}`).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(value)));
      else expect(shown, `${sheet}!${address}`).toBe(String(value ?? ""));
      compared++;
    }
    return compared;
  }
  it.each(NAMES)("shows the stored values of %s", (name) => {
    const bytes = bytesOf(name);
    expect(compare(openXlsx(bytes), shownBy(soffice, bytes))).toBeGreaterThan(30);
  }, A_BUSY_MACHINE);

  it("computes the bookkeeper's copy to the same values", () => {
    const bytes = bytesOf("bookkeeper-copy");
    expect(compare(openXlsx(bytes), shownBy(soffice, withoutNativeValues(bytes)))).toBeGreaterThan(2000);
  }, A_BUSY_MACHINE);
});
