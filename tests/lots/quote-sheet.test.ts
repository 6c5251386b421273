import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strToU8, unzipSync, zipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import { workbookOf } from "../../src/engine/book";
import type { OutcomeCell } from "../../src/engine/outcome";
import type { QuoteInput } from "../../src/lots/quote";
import { OfferFault, quoteFigures } from "../../src/lots/quote-figures";
import { quoteSheet } from "../../src/lots/quote-sheet";
import { share } from "../../src/sharing/share";
import { openXlsx } from "../../src/workbook/file";
import { readAddress } from "../../src/workbook/xlsx/address";
import { outside } from "../outside";
import { convertedTo, shownBy } from "../workbook/libreoffice";
import { fullQuote, plainQuote, SHEET, type WrittenQuote, written } from "./quotes";

const MOVED = "Payout, if the price moves";
const down = "With the price down";
const asQuoted = "With the price as quoted";
const up = "With the price up";

describe("a quote's sheet", () => {
  let quote: WrittenQuote;
  beforeAll(async () => {
    quote = await written(plainQuote);
  });

  it("pays what LOT.QUOTE says, at every fineness and price", async () => {
    const rows = workbookOf([{ name: "Sheet1", cells: [] }], []).evaluate('=LOT.QUOTE(1240.5,"g","91.5%",925,"22.3k",24,"98%",0.5,25,"5%")') as readonly (readonly OutcomeCell[])[];
    expect(rows[4]?.[2]).toBe(824.62);
    expect(await quote.three(down, MOVED)).toEqual(rows[3]?.slice(1));
    expect(await quote.three(asQuoted, MOVED)).toEqual(rows[4]?.slice(1));
    expect(await quote.three(up, MOVED)).toEqual(rows[5]?.slice(1));
    expect(await quote.three("Payout")).toEqual(rows[4]?.slice(1));
    expect(await quote.three("Fine weight, ozt")).toEqual(rows[2]?.slice(1));
  });

  it("has lines that add up to the cent", async () => {
    const [value, charges, payout] = [await quote.three("Its value"), await quote.three("Charges"), await quote.three("Payout")];
    value.forEach((worth, i) => expect(Math.round((Number(worth) - Number(charges[i]) - Number(payout[i])) * 100)).toBe(0));
    expect(charges.map((charge) => Number(charge) > 25)).toEqual([true, true, true]);
  });

  it("computes each figure in a cell of its own, and nothing shows an error", async () => {
    const cells = (await quote.cells()).flat();
    expect(cells.filter(({ error }) => error)).toEqual([]);
    expect(cells.filter(({ formula }) => formula?.includes("LOT.")).length).toBeGreaterThan(25);
  });

  it("holds until its date and its days", async () => {
    const rows = await quote.cells();
    const until = rows.find((row) => row[3]?.value === "Valid until")?.[4];
    expect(until?.value).toBe(plainQuote.date + 14);
    expect(until?.formula).toBe("=E3+E4");
    expect(until?.numberFormat).toBe("yyyy-mm-dd");
  });

  it("says that melt and assay decide", async () => {
    const texts = (await quote.cells()).map(([first]) => first?.value);
    expect(texts).toContain("Melt and assay decide");
    expect(texts.some((text) => String(text).includes("melting and sampling find"))).toBe(true);
  });

  it("follows its inputs when one of them is changed later", async () => {
    const { port, three } = await written(plainQuote);
    const rows = await port.read({ sheet: SHEET, range: "A1:A60" });
    const price = rows.findIndex(([first]) => first?.value === "Price") + 1;
    await port.write([{ sheet: SHEET, cell: `B${price}`, content: 30 }]);
    const figures = quoteFigures({ ...plainQuote, terms: { ...plainQuote.terms, price: { value: 30, unit: "ozt" } } });
    expect(await three("Payout")).toEqual(figures.quoted.payouts);
    expect(await three(up, MOVED)).toEqual(figures.up.payouts);
  });

  it("says it when the fineness is put out of order later", async () => {
    const { port, cells } = await written(plainQuote);
    const row = (await cells()).findIndex(([first]) => first?.value === "Fineness") + 1;
    await port.write([{ sheet: SHEET, cell: `C${row}`, content: 950 }]);
    expect((await cells()).map(([first]) => first?.value)).toContain("The low, the likely and the high fineness are not in that order: mend them.");
  });

  it("shows money with the shop's sign, a share as percent and a fineness as it was written", async () => {
    const rows = await quote.cells();
    const of = (label: string, column: number) => rows.find(([first]) => first?.value === label)?.[column];
    expect(of("Payout", 2)?.numberFormat).toBe('"$"#,##0.00');
    expect([of("Payable", 1)?.value, of("Payable", 1)?.numberFormat]).toEqual([0.98, "0%"]);
    expect([2, 3, 4].map((column) => of("Fineness", column)?.value)).toEqual(["91.5%", 925, "22.3k"]);
    expect(of("Net weight", 1)?.numberFormat).toBe("#,##0.0");
  });
});

describe("the figures that the pane shows", () => {
  const offers: Readonly<Record<string, QuoteInput>> = {
    "plain terms": plainQuote,
    "a treatment charge, a deduction, and rates in other units": fullQuote,
    "no charges": { ...plainQuote, terms: { price: plainQuote.terms.price, payable: 1, lotCharges: 0 } },
    "charges above the metal": { ...plainQuote, weight: { value: 2, unit: "g" }, metalUnit: "kg" },
  };
  it.each(Object.entries(offers))("are those of the sheet with %s", async (_, input) => {
    const { three } = await written(input);
    const figures = quoteFigures(input);
    const METAL = `Or in metal, ${input.metalUnit} of fine metal`;
    for (const [label, one] of [[down, figures.down], [asQuoted, figures.quoted], [up, figures.up]] as const) {
      expect(await three(label, MOVED)).toEqual(one.payouts);
      expect(await three(label, METAL)).toEqual(one.metal.map((metal) => metal ?? "none"));
    }
  });

  it("give back metal for the payable weight less the charges", () => {
    expect(quoteFigures(plainQuote).quoted.metal[1]).toBeCloseTo(824.62 / 24, 2);
  });

  it("are those of LOT.SETTLEMENT where there is a treatment charge and a deduction", () => {
    const rows = workbookOf([{ name: "Sheet1", cells: [] }], []).evaluate('=LOT.SETTLEMENT(1240.5,"g",925,LOT.PRICE(771.61,"kg","ozt"),0.98,LOT.PRICE(16.25,"kg","ozt"),LOT.PRICE(1.2,"lb","g"),25,5)') as readonly (readonly OutcomeCell[])[];
    expect(rows.at(-1)?.[1]).toBe(quoteFigures(fullQuote).quoted.payouts[1]);
  });
});

describe("what cannot be reckoned with is refused in the words of the functions", () => {
  const { terms } = plainQuote;
  it.each<[string, Partial<QuoteInput>, RegExp, readonly string[]]>([
    ["a fineness that could be three things", { low: 92.5 }, /^Cannot use low = 92\.5: could be %, karat or ‰/, ["low"]],
    ["finenesses out of order", { low: 940, likely: 925, high: 930 }, /not in that order/, ["low", "likely", "high"]],
    ["an ounce that could be two", { weight: { value: 1, unit: "oz" } }, /an ounce can be troy or avoirdupois/, ["weight"]],
    ["a share without its sign", { terms: { ...terms, payable: 98 } }, /write "98%" or 0\.98/, ["payable"]],
    ["a swing without its sign", { terms: { ...terms, swing: 5 } }, /write "5%" or 0\.05/, ["swing"]],
    ["no weight", { weight: { value: 0, unit: "g" } }, /it must be a number above 0/, ["weight"]],
    ["a price below zero per kg", { terms: { ...terms, price: { value: -1, unit: "kg" } } }, /Cannot use price = -1/, ["price"]],
    ["a deduction of nothing known", { terms: { ...terms, deduction: "some" } }, /parts per thousand/, ["deduction"]],
  ])("%s", (_, change, sentence, fields) => {
    const act = (): unknown => quoteSheet({ ...plainQuote, ...change }, SHEET);
    expect(act).toThrow(OfferFault);
    expect(act).toThrow(sentence);
    try {
      act();
    } catch (thrown) {
      expect((thrown as OfferFault).fields).toEqual(fields);
    }
  });
});

describe("odd input", () => {
  it("is a text, whatever it begins with, and stands on lines of its own", async () => {
    const odd = { ...plainQuote, client: '=HYPERLINK("x")\n+Second line\r\n@third', goods: "-1 spoon", lot: "=1+1", basis: "@stamp", shop: { ...plainQuote.shop, name: "=Shop", address: "+1\n-2" } };
    const { cells, port } = await written(odd);
    const texts = (await cells()).flat();
    for (const text of ['=HYPERLINK("x")', "+Second line", "@third", "-1 spoon", "=1+1", "@stamp", "=Shop", "+1", "-2"]) {
      expect(texts.find(({ value }) => value === text), text).toMatchObject({ formula: null });
    }
    expect([...port.file.cells(SHEET)].filter(({ formula }) => formula?.includes("HYPERLINK"))).toEqual([]);
  });

  it("of 300 characters goes on lines that the paper is wide enough for", async () => {
    const { cells } = await written({ ...plainQuote, goods: "CANDLESTICKS AND TRAYS ".repeat(13) });
    const rows = (await cells()).map((row) => String(row[1]?.value ?? "")).filter((text) => text.includes("TRAYS"));
    expect(rows.length).toBeGreaterThan(4);
    expect(Math.max(...rows.map(({ length }) => length))).toBeLessThan(56);
    expect(rows.join(" ")).toBe("CANDLESTICKS AND TRAYS ".repeat(13).trim());
  });

  it("that leaves the client owing says so", async () => {
    const { cells, three } = await written({ ...plainQuote, weight: { value: 2, unit: "g" } });
    expect(Math.max(...(await three("Payout")).map(Number))).toBeLessThan(0);
    expect((await cells()).map(([first]) => first?.value)).toContain("A payout below zero is owed by the client: the charges are more than the metal.");
  });
});

/** Without the results that are stored beside formulas, so that whoever opens it computes every cell. */
function withoutResults(bytes: Uint8Array): Uint8Array {
  const parts = unzipSync(bytes);
  for (const [name, part] of Object.entries(parts))
    if (/worksheets\/sheet\d+\.xml$/.test(name)) parts[name] = strToU8(new TextDecoder().decode(part).replace(/(<f(?:\s[^>]*)?(?:\/>|>[^<]*<\/f>))<v>[^<]*<\/v>/g, "$1"));
  return zipSync(parts);
}

/** A number as LibreOffice writes it: with the sign of its money, in percent, with thousands apart; a day as its number. */
function valueIn(shown: string): number {
  if (/^\d{4}-\d\d-\d\d$/.test(shown)) return (Date.parse(shown) - Date.UTC(1899, 11, 30)) / 86_400_000;
  const number = Number(shown.replace(/[$,]| ‰/g, "").replace(/%$/, ""));
  return shown.endsWith("%") ? number / 100 : number;
}

outside("soffice", "LibreOffice", (soffice) => {
  it.each([["with plain terms", plainQuote], ["with every kind of term", fullQuote]])("shows the values of a quote %s as they were written", async (_, input) => {
    const { port } = await written(input);
    const shown = shownBy(soffice, port.file.bytes).get(SHEET);
    let compared = 0;
    for (const { address, value, formula } of port.file.cells(SHEET)) {
      const spot = readAddress(address);
      const text = shown?.[(spot?.row ?? 0) - 1]?.[(spot?.column ?? 0) - 1] ?? "";
      if (typeof value !== "number") continue;
      expect([address, Math.abs(valueIn(text) - value) <= 1e-9 * Math.abs(value)], `${address} shows ${text}`).toEqual([address, true]);
      if (formula !== null) compared++;
    }
    expect(compared).toBeGreaterThan(25);
  }, 120_000);

  it.each([["with plain terms", plainQuote], ["with every kind of term", fullQuote], ["whose charges are above the metal", { ...plainQuote, weight: { value: 2, unit: "g" } }]])("computes the bookkeeper's copy of a quote %s to the same values", async (_, input) => {
    const { port } = await written(input);
    const { bytes, cells } = await share(openXlsx(port.file.bytes));
    expect(cells.filter(({ now }) => now === null)).toEqual([]);
    const shown = shownBy(soffice, withoutResults(bytes)).get(SHEET);
    expect(cells.length).toBeGreaterThan(25);
    for (const { cell, value } of cells) {
      const spot = readAddress(cell);
      const text = shown?.[(spot?.row ?? 0) - 1]?.[(spot?.column ?? 0) - 1] ?? "";
      if (typeof value === "number") expect([cell, Math.abs(valueIn(text) - value) <= 1e-9 * Math.abs(value)], `${cell} shows ${text} for ${value}`).toEqual([cell, true]);
      else expect([cell, text]).toEqual([cell, String(value ?? "")]);
    }
  }, 120_000);

  outside("pdfinfo", "prints", (pdfinfo) => {
    const long = { ...fullQuote, client: "Client C-17\n".repeat(5), goods: "A description of goods that goes on for long. ".repeat(12), shop: { ...plainQuote.shop, address: "A line of an address\n".repeat(6) } };
    const papers = [["letter", "612 x 792"], ["A4", "595"]] as const;
    it.each(papers.flatMap(([paper, size]) => [["a usual quote", plainQuote, paper, size], ["a long quote", long, paper, size]] as const))("%s on one page", async (_, input, paper, size) => {
      const { port } = await written({ ...input, shop: { ...input.shop, paper } });
      const folder = mkdtempSync(join(tmpdir(), "lotwright-quote-"));
      try {
        const pdf = join(folder, "quote.pdf");
        writeFileSync(pdf, convertedTo(soffice, "quote.xlsx", port.file.bytes, "pdf"));
        const told = spawnSync(pdfinfo, [pdf], { encoding: "utf8" }).stdout;
        expect(told).toMatch(/^Pages:\s+1$/m);
        expect(told).toMatch(new RegExp(`^Page size:\\s+${size}`, "m"));
      } finally {
        rmSync(folder, { recursive: true, force: true });
      }
    }, 120_000);
  });
});
