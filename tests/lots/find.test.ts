import { describe, expect, it } from "vitest";
import { findLots } from "../../src/lots/find";
import { SheetReading } from "../../src/lots/sheet-reading";
import type { UglyBook } from "./ugly/books";
import { MANY } from "./ugly/books";
import { firstPlace, openUgly, sheetOf, shortly } from "./readings";

const expected: Partial<Record<UglyBook, readonly string[]>> = {
  "pounds and short headings": ["lot A", "date B", "client C", "description D", "gross E lb", "tare F lb", "net G lb", "fineness H %", "fineWeight I ozt", "price J ozt", "payable K %", "refiningCharge L ozt", "lotCharges M", "payout N"],
  "two-row headings": ["lot A", "date B", "client C", "gross D g", "tare E g", "net F g", "fineness G ppt", "fineWeight H ozt", "price I ozt", "payable J fraction", "payout K"],
  "French Canada": ["lot A", "date B", "client C", "description D", "gross E kg", "tare F kg", "net G kg", "fineness H ppt", "fineWeight I kg", "price J ozt", "payable K fraction", "refiningCharge L ozt", "lotCharges M", "payout N", "outturn O kg", "status P"],
  "United Kingdom": ["lot B", "date C", "client D", "description E", "gross F kg", "tare G kg", "net H kg", "fineness I as written", "fineWeight J kg", "price K kg", "payable L fraction", "treatmentCharge M kg", "payout N", "outturn O kg", "recovery P fraction"],
  "five thousand": ["lot A", "date B", "client C", "net D g", "fineness E ppt", "fineWeight F g", "outturn G g"],
  "total below": ["lot A", "date C", "client B", "gross D g", "tare E g", "net F g", "fineness G ppt", "fineWeight H ozt"],
  "hidden and filtered": ["lot A", "date C", "client B", "gross D by unit column", "tare E by unit column", "net F by unit column", "unit G", "fineness H ppt", "finenessBasis I", "fineWeight J ozt", "status K"],
  table: ["lot B", "date C", "client D", "description E", "net F g", "fineness G ppt", "fineWeight H g"],
  "bare ounces": ["lot A", "client B", "net C ?", "fineness D ?", "fineWeight E ?"],
};

describe("where lots live", () => {
  for (const [name, matches] of Object.entries(expected) as [UglyBook, readonly string[]][])
    it(`is found, with every column and unit, in the workbook “${name}”`, async () => {
      expect(shortly(firstPlace(await openUgly(name)).proposal)).toEqual(matches);
    });

  it("is told with a reason for each column", async () => {
    const { proposal } = firstPlace(await openUgly("pounds and short headings"));
    expect(proposal.reason).toBe("In sheet ‘jobs 26’ row 3 holds headings for 14 of the fields; 4 lots stand in rows 4 to 7");
    expect(proposal.matches.find(({ field }) => field === "net")?.reason).toBe("heading ‘Nett, lbs’ says net and the unit lb; cells hold numbers");
    expect(proposal.remarks).toEqual(["Left alone, since no field fits: ‘initials’"]);
  });

  it("joins two rows of headings and leaves a merged title out of them", async () => {
    const { list, reason } = firstPlace(await openUgly("two-row headings")).proposal;
    expect(list).toMatchObject({ upperHeadingRow: 5, headingRow: 6, firstRow: 7, lastRow: 10, totalRow: null });
    expect(list.columns.map(({ heading }) => heading)).toContain("Weights (g) Gross");
    expect(reason).toContain("rows 5 and 6 together hold");
  });

  it("leaves a merged title right above the headings out of them", () => {
    const sheet = sheetOf([["Lots and weights (g) of 2026", "Lot", "L-1"], ["", "Date", "2026-03-02"], ["", "Client", "C-07"], ["", "Net (kg)", 5], ["", "Payout $", 100]]);
    const titled = new SheetReading({ ...sheet.info, merged: ["B3:F3"] }, sheet.rows);
    const [proposal] = findLots([titled]).proposals;
    expect(proposal?.list.upperHeadingRow).toBe(4);
    expect(proposal && shortly(proposal)).toEqual(["lot B", "date C", "client D", "net E kg", "payout F"]);
  });

  it("does not take a client called Total Plating for the total", () => {
    const sheet = sheetOf([["Lot", "L-1", "L-2", "Total"], ["Client", "Total Plating", "C-07", ""], ["Net (g)", 5, 7, "=SUM(D4:D5)"], ["Fineness", 925, 800, ""]]);
    expect(findLots([sheet]).proposals[0]?.list).toMatchObject({ rows: [4, 5], totalRow: 6 });
  });

  it("never takes a bare ounce for troy or avoirdupois, nor 92.5 for a percentage: it asks", async () => {
    const { matches } = firstPlace(await openUgly("bare ounces")).proposal;
    const doubt = (field: string) => matches.find((match) => match.field === field)?.doubt;
    for (const field of ["net", "fineWeight"]) expect(doubt(field)).toEqual({ degree: 0.8, sentence: "‘oz’ can be troy or avoirdupois, and they differ by 9.7 %: say ozt (troy) or ozav (avoirdupois)" });
    expect(doubt("fineness")?.sentence).toBe("Its numbers (such as 92.5) could be %, karat or ‰: say which");
  });

  it("has no doubt where heading and cells say it all", async () => {
    const { matches } = firstPlace(await openUgly("French Canada")).proposal;
    expect(matches.filter(({ doubt }) => doubt !== null)).toEqual([]);
  });

  it("refuses a protected sheet and says how to unprotect it", async () => {
    const { proposals, refusals } = findLots((await openUgly("protected")).sheets);
    expect(proposals).toEqual([]);
    expect(refusals).toEqual([{ sheet: "Lots", sentence: "Sheet ‘Lots’ lists lots but is protected, so that nothing can be written there: unprotect it (Review, Unprotect Sheet), then look again" }]);
  });

  it("finds no list among notes, sums and prices, and says what a list needs", async () => {
    const { proposals, refusals } = findLots((await openUgly("no list")).sheets);
    expect(proposals).toEqual([]);
    expect(refusals).toHaveLength(1);
    expect(refusals[0]?.sentence).toMatch(/^No list of lots was found \(looked through ‘Scribbles’, ‘Prices’\): it needs a row of headings such as Lot, Date, Client and Gross \(g\)/);
  });

  it("offers several places, the fullest first, and sees the total under each", async () => {
    const { proposals } = findLots((await openUgly("total below")).sheets);
    expect(proposals.map(({ list }) => [list.sheet, list.rows, list.totalRow])).toEqual([["March", [3, 4, 5, 6], 7], ["April", [3, 4], 6]]);
  });

  it("tells hidden columns and a filter, and leaves a box beside the list alone", async () => {
    const { proposal } = firstPlace(await openUgly("hidden and filtered"));
    expect(proposal.list.columns.map(({ letter }) => letter).join("")).toBe("ABCDEFGHIJK");
    expect(proposal.list.lastRow).toBe(10);
    expect(proposal.remarks[0]).toBe("Hidden columns E ‘Tare’, I ‘Basis’ are read and written like the others");
    expect(proposal.remarks[1]).toContain("hidden, by a filter or by hand");
  });

  it("takes a table as the table it is, without its empty last row", async () => {
    const { list } = firstPlace(await openUgly("table")).proposal;
    expect(list).toMatchObject({ table: "Lots", headingRow: 3, rows: [4, 5] });
  });

  it("reads all of five thousand lots within a few seconds", async () => {
    const opened = await openUgly("five thousand");
    const before = performance.now();
    const { proposal } = firstPlace(opened);
    expect(proposal.list.rows).toHaveLength(MANY);
    expect(performance.now() - before).toBeLessThan(5000);
  });
});
