import { readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { corrected } from "../../src/lots/corrections";
import { findLots } from "../../src/lots/find";
import type { LotInput } from "../../src/lots/given";
import { type LotChanges, type Site, lotChanges } from "../../src/lots/lot-changes";
import { freeSheetName, ownList } from "../../src/lots/own-list";
import { placeChanges, readWorkbook } from "../../src/lots/where";
import { apply, plan } from "../../src/workbook/plan";
import type { CellContent } from "../../src/workbook/port";
import { type Opened, open, openUgly } from "./readings";
import { type UglyBook, uglyBooks } from "./ugly/books";

const lot: LotInput = {
  lot: { value: "N-77" }, date: { value: "2026-03-30" }, client: { value: "=1+1" }, description: { value: "two\nlines" },
  gross: { value: [10, 5.5], unit: "lb" }, tare: { value: 0.5, unit: "lb" }, fineness: { value: 925 }, payable: { value: "95%" },
};

async function siteIn({ sheets, port }: Opened, name?: string): Promise<Site> {
  const place = findLots(sheets).proposals.find(({ list }) => name === undefined || list.sheet === name);
  const sheet = sheets.find(({ info }) => info.name === place?.list.sheet);
  if (!place || !sheet) throw new Error(findLots(sheets).refusals.map(({ sentence }) => sentence).join("; "));
  return { sheets, names: await port.names(), sheet, match: place, headings: [], tableRange: null, made: null };
}

const changesFor = (site: Site, input: LotInput = lot): LotChanges => {
  const planned = lotChanges(site, { input, shop: {}, ofFineness: [], tableReferences: false });
  if (!("cells" in planned)) throw new Error(planned.join("; "));
  return planned;
};

const cell = async ({ port }: Opened, sheet: string, range: string): Promise<CellContent> => {
  const [[reading] = []] = await port.read({ sheet, range });
  return reading?.formula ?? reading?.value ?? null;
};
const costSheet = async (): Promise<Opened> => open(new Uint8Array(await readFile(new URL("../../sample-workbooks/cost-sheet.xlsx", import.meta.url))));

/** In each workbook: the row of the new lot, and some of its cells. */
const landings: Readonly<Record<Exclude<UglyBook, "protected" | "no list" | "bare ounces">, readonly [sheet: string, row: number, cells: Readonly<Record<string, CellContent>>]>> = {
  "pounds and short headings": ["jobs 26", 8, { A: "N-77", C: "=1+1", E: 15.5, F: 0.5, G: "=E8-F8", H: 92.5, K: 95 }],
  "two-row headings": ["Lots 2026", 11, { A: "N-77", C: "=1+1", F: "=D11-E11", G: 925 }],
  "French Canada": ["Réception", 8, { A: "N-77", D: "two\nlines", E: 7.030681735, K: 0.95 }],
  "United Kingdom": ["Parcels", 8, { B: "N-77", F: 7.030681735, I: 925, L: 0.95 }],
  "five thousand": ["All lots", 5002, { A: "N-77", C: "=1+1", D: 6803.88555, F: "=D5002*E5002/1000" }],
  "total below": ["March", 7, { A: "N-77", B: "=1+1", F: "=D7-E7" }],
  "hidden and filtered": ["Book", 11, { A: "N-77", D: 15.5, E: 0.5, G: "lbs" }],
  table: ["Intake", 6, { B: "N-77", D: "=1+1", F: 6803.88555, G: 925 }],
};

describe("setting up a lot", () => {
  for (const [name, [sheet, row, cells]] of Object.entries(landings))
    it(`lands in its row and is taken back byte for byte: ${name}`, async () => {
      const opened = await openUgly(name as UglyBook);
      const site = await siteIn(opened);
      const planned = changesFor(site);
      expect([planned.sheet, planned.row]).toEqual([sheet, row]);
      const undo = await apply(opened.port, await plan(opened.port, [...planned.changes, ...(await placeChanges(opened.port, site.match))]), () => true);
      for (const [letter, content] of Object.entries(cells)) expect(await cell(opened, sheet, `${letter}${row}`), letter).toEqual(content);
      // The next one is set up in the same place, one row below.
      const { place } = await readWorkbook(opened.port);
      expect(place).toMatchObject({ list: { sheet, lastRow: row }, changes: [] });
      await undo.undo();
      expect(Buffer.from(opened.port.file.bytes).equals(Buffer.from(opened.bytes))).toBe(true);
    });

  it("says why not where a sheet is protected, has no list, or lacks its units", async () => {
    for (const name of ["protected", "no list"] as const) await expect(openUgly(name).then((opened) => siteIn(opened))).rejects.toThrow(/unprotect it|No list of lots was found/);
    const bare = await siteIn(await openUgly("bare ounces"));
    expect(lotChanges(bare, { input: lot, shop: {}, ofFineness: [], tableReferences: false })).toContainEqual(expect.stringContaining("Say the unit of"));
  });

  it("writes the net weight, with what the scale showed beside it, where the list knows no gross", async () => {
    const planned = changesFor(await siteIn(await openUgly("table")));
    expect(planned.changes).toContainEqual({ sheet: "Intake", cell: "F6", note: "Gross 10 + 5.5 lb, tare 0.5 lb" });
  });

  it("puts what is known of the fineness beside it", async () => {
    const site = await siteIn(await openUgly("pounds and short headings"));
    const planned = lotChanges(site, { input: { ...lot, fineness: { value: "sterling" } }, shop: {}, ofFineness: ["Fineness: the stamp"], tableReferences: false });
    expect("cells" in planned && planned.changes).toContainEqual({ sheet: "jobs 26", cell: "H8", note: "Given: sterling\nFineness: the stamp" });
  });

  it("takes what the shop has told into its formulas", async () => {
    const opened = await openUgly("two-row headings");
    const site = await siteIn(opened);
    const added = corrected(site.match, [{ kind: "add", field: "copper", unit: "lb" }, { kind: "add", field: "copperBars" }], site.sheet, true);
    const shop = { copperAllowance: { value: "13%" }, copperBar: { sheet: "Lots 2026", cell: "A1", unit: "lb" } };
    const planned = lotChanges({ ...site, match: added, headings: added.writes }, { input: lot, shop, ofFineness: [], tableReferences: false });
    expect("cells" in planned && planned.changes).toEqual(expect.arrayContaining([
      expect.objectContaining({ cell: "L6", content: "Copper (lb)" }),
      expect.objectContaining({ cell: "L11", content: '=LOT.COPPER(H11,"ozt","13%",0,"lb")' }),
      expect.objectContaining({ cell: "M11", content: '=LOT.COPPERBARS(L11,"lb",$A$1,"lb")' }),
    ]));
  });

  it("has a full table take its row and its new column up", async () => {
    const opened = await openUgly("table");
    await opened.port.write([{ sheet: "Intake", cell: "B6", content: "T-11" }, { sheet: "Intake", cell: "F6", content: 20 }]);
    const site = await siteIn(await open(opened.port.file.bytes));
    const added = corrected(site.match, [{ kind: "add", field: "copper", unit: "g" }], site.sheet, true);
    const planned = changesFor({ ...site, match: added, headings: added.writes, tableRange: added.tableRange });
    expect(planned.changes[0]).toEqual({ sheet: "Intake", table: "Lots", tableRange: "B3:I7" });
  });
});

describe("a total right below the last lot", () => {
  it("moves down with what stands under it, takes the lot into its sums, and is followed by every formula that names it", async () => {
    const opened = await costSheet();
    const before = await opened.port.read({ sheet: "Lots", range: "A18:Q23" });
    const planned = changesFor(await siteIn(opened, "Lots"), { ...lot, fineness: { value: 925 } });
    expect([planned.row, planned.room]).toEqual([13, { from: 13, to: 14 }]);
    await apply(opened.port, await plan(opened.port, planned.changes), () => true);
    const held = async (sheet: string, ...cells: string[]): Promise<CellContent[]> => Promise.all(cells.map((address) => cell(opened, sheet, address)));
    expect(await held("Lots", "A13", "J13", "A14", "J14", "N14", "E20")).toEqual(["N-77", "=LOT.FINEWEIGHT(G13,H13,I13)", "Month", "=SUM(J5:J13)", '=LOT.RECOVERY(M14,SUMIF(M5:M13,">0",J5:J13))', "=J14"]);
    expect(await cell(opened, "Lots", "A15")).toMatch(/^Lot 26-03-07 is still in work/);
    expect(await held("Consumables", "C6", "B30")).toEqual(["=Lots!K14", "=ROUND(Lots!J14*Lots!N14*SilverPrice,2)"]);
    // What stands further down stays where it is, and counts the new lot as received.
    const after = await opened.port.read({ sheet: "Lots", range: "A18:Q23" });
    expect(after.flat().filter(({ value }, i) => value !== before.flat()[i]?.value).length).toBe(2);
    const [[total] = []] = await opened.port.read({ sheet: "Lots", range: "J14" });
    const lots = (await opened.port.read({ sheet: "Lots", range: "J5:J13" })).flat().reduce((sum, { value }) => sum + Number(value), 0);
    expect(Number(total?.value)).toBeCloseTo(lots, 9);
  });

  it("stays where there is a free row above it, and its sums are offered widened, each with its own tick", async () => {
    const opened = await openUgly("total below");
    const planned = changesFor(await siteIn(opened, "April"));
    expect(planned).toMatchObject({ row: 5, room: null });
    const sums = [...planned.cells].filter(([, { part }]) => part === "sum").map(([address]) => address);
    expect(sums).toEqual(["April!F6", "April!H6"]);
    const { cells } = await plan(opened.port, planned.changes);
    expect(cells.filter(({ overwrites }) => overwrites).map(({ write }) => `${write.sheet}!${write.cell}`)).toEqual(sums);
  });

  it("is left for the user to move where a formula could not follow", async () => {
    for (const formula of ['=INDIRECT("F7")', "=SUM(7:7)", "=SUM(G7:K7)"]) {
      const opened = await openUgly("total below");
      await opened.port.write([{ sheet: "April", cell: "K20", content: formula.replace("7:7", "March!7:7").replace("G7", "March!G7") }]);
      const site = await siteIn(await open(opened.port.file.bytes), "March");
      expect(lotChanges(site, { input: lot, shop: {}, ofFineness: [], tableReferences: false }), formula).toEqual([expect.stringContaining("insert a row above it")]);
    }
  });
});

describe("a sheet of our own", () => {
  it("is found and read as it was made, in every unit", () => {
    for (const unit of ["g", "kg", "lb", "ozt"]) {
      const { place, change } = ownList("Lots", unit);
      expect(place.matches.map(({ column }) => column.heading).sort()).toEqual(change.cells.map(({ content }) => content).sort());
      expect(place.matches.filter(({ doubt }) => doubt !== null)).toEqual([]);
      expect(place.matches.find(({ field }) => field === "gross")?.unit?.symbol).toBe(unit);
    }
  });

  it("has a name that no other sheet has", () => {
    expect([freeSheetName(["Prices"]), freeSheetName(["LOTS"]), freeSheetName(["Lots", "lots 2"])]).toEqual(["Lots", "Lots 2", "Lots 3"]);
  });

  it("takes the first lot with the formulas of ours", async () => {
    const opened = await openUgly("no list");
    const { change, sheet, place } = ownList("Lots", "lb");
    const planned = changesFor({ sheets: [...opened.sheets, sheet], names: [], sheet, match: place, headings: [], tableRange: null, made: change });
    await apply(opened.port, await plan(opened.port, [...planned.changes, ...(await placeChanges(opened.port, place))]), () => true);
    expect(await cell(opened, "Lots", "G2")).toBe("=E2-F2");
    const [[fine] = []] = await opened.port.read({ sheet: "Lots", range: "J2" });
    expect(fine?.value).toBeCloseTo(202.34375, 10);
    expect((await readWorkbook(opened.port)).place).toMatchObject({ list: { sheet: "Lots", rows: [2] }, changes: [] });
  });
});

it("has a landing or a reason for every ugly workbook", () => {
  expect([...Object.keys(landings), "protected", "no list", "bare ounces"].sort()).toEqual(Object.keys(uglyBooks).sort());
});
