import { readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import type { LotInput } from "../../src/lots/given";
import { type ListedLot, listedLots } from "../../src/lots/listed-lot";
import { isSettled } from "../../src/lots/settled";
import { settledRow, settledWord } from "../../src/lots/settled-row";
import { statementSheet } from "../../src/lots/statement-sheet";
import { apply, plan } from "../../src/workbook/plan";
import type { CellContent } from "../../src/workbook/port";
import { type Opened, type Place, firstPlace, open, openUgly, sheetOf } from "./readings";
import { settling } from "./settlements";
import type { UglyBook } from "./ugly/books";

const NAME = "Statement S-2026-007";
const statement = { sheet: NAME, payout: "$B$40" };
const told: LotInput = { outturn: { value: 2.5, unit: "kg" }, fineness: { value: 880.5 }, finenessBasis: { value: "agreed" }, status: { value: "settled" } };

const lotsOf = ({ sheet, proposal }: Place): readonly ListedLot[] => listedLots(sheet, proposal);
function lastLot(place: Place): ListedLot {
  const lot = lotsOf(place).at(-1);
  if (!lot) throw new Error("The list has no lot");
  return lot;
}
const written = (place: Place, input: LotInput = told, lot = lastLot(place)): Record<string, CellContent> => Object.fromEntries(settledRow(place.sheet, place.proposal, lot, input, statement).cells.map(({ write }) => [write.cell, write.content]));
const costSheet = async (): Promise<Opened> => open(new Uint8Array(await readFile(new URL("../../sample-workbooks/cost-sheet.xlsx", import.meta.url))));

/** In each workbook, what the row of its last lot takes. */
const landings: Readonly<Record<Exclude<UglyBook, "protected" | "no list" | "bare ounces">, Readonly<Record<string, CellContent>>>> = {
  "pounds and short headings": { H7: 88.05 },
  "two-row headings": { G10: 880.5 },
  "French Canada": { H7: 880.5, O7: 2.5, P7: "settled" },
  "United Kingdom": { I7: 880.5, J7: '=LOT.FINEWEIGHT(H7,"kg",I7,"kg")', O7: 2.5, P7: "=LOT.RECOVERY(O7,J7)" },
  "five thousand": { E5001: 880.5, G5001: 2500 },
  "total below": { G6: 880.5 },
  "hidden and filtered": { H10: 880.5, I10: "agreed", K10: "settled" },
  table: { G5: 880.5 },
};

describe("what settling writes into the lot's row", () => {
  for (const [name, cells] of Object.entries(landings))
    it(`lands in the columns that the list has, with the statement, and is taken back byte for byte: ${name}`, async () => {
      const opened = await openUgly(name as UglyBook);
      const place = firstPlace(opened);
      const row = settledRow(place.sheet, place.proposal, lastLot(place), told, statement);
      expect(Object.fromEntries(row.cells.map(({ write }) => [write.cell, write.content]))).toEqual(cells);
      const planned = await plan(opened.port, [statementSheet(settling, NAME).sheet, ...row.cells.map(({ write }) => write)]);
      const filled = new Set([...opened.port.file.cells(place.proposal.list.sheet)].filter(({ value }) => value !== null).map(({ address }) => address));
      expect(planned.cells.filter(({ overwrites }) => overwrites).map(({ write }) => write.cell).sort()).toEqual(Object.keys(cells).filter((cell) => filled.has(cell)).sort());
      const undo = await apply(opened.port, planned, () => true);
      for (const [cell, content] of Object.entries(cells)) {
        const [[held] = []] = await opened.port.read({ sheet: place.proposal.list.sheet, range: cell });
        expect([cell, held?.formula ?? held?.value]).toEqual([cell, content]);
      }
      await undo.undo();
      expect(Buffer.compare(Buffer.from(opened.port.file.bytes), Buffer.from(opened.bytes))).toBe(0);
    });

  it("leaves the formulas of the row to follow by themselves, and offers the statement's payout in place of theirs", async () => {
    const place = firstPlace(await costSheet());
    const lot = lotsOf(place).find((one) => one.value("lot") === "26-03-07");
    if (!lot) throw new Error("The sample has no lot 26-03-07");
    const row = settledRow(place.sheet, place.proposal, lot, told, statement);
    expect(row.cells.map(({ write }) => [write.cell, write.content])).toEqual([["M11", 2500 / 31.1034768], ["I11", 880.5]]);
    expect(row.payoutInstead?.write).toMatchObject({ sheet: "Lots", cell: "Q11", content: `='${NAME}'!$B$40` });
  });

  it("writes the payout of the statement where the column has no formula, and says what has no column", async () => {
    const sheet = sheetOf([["Lot", "A-1", "A-2"], ["Net (g)", 100, 200], ["Payout ($)", 80.5]]);
    const place = firstPlace({ sheets: [sheet] } as unknown as Opened);
    expect(written(place)).toEqual({ D5: `='${NAME}'!$B$40` });
    expect(settledRow(sheet, place.proposal, lastLot(place), told, statement).remarks).toEqual(["Outturn has no column in the list: it stands on the statement alone", "Fineness has no column in the list: it stands on the statement alone"]);
  });

  it("takes the formula of the cells above where the column computes", () => {
    const sheet = sheetOf([["Lot", "A-1", "A-2", "A-3"], ["Net (g)", 100, 200, 300], ["Fineness", 925, 925, 925], ["Fine (g)", "=C4*D4/1000", "=C5*D5/1000", "=C6*D6/1000"], ["Outturn (g)", 92, 184], ["Recovery", "=F4/E4", "=F5/E5"]]);
    const place = firstPlace({ sheets: [sheet] } as unknown as Opened);
    expect(written(place, { outturn: { value: 264, unit: "g" } })).toEqual({ F6: 264, G6: "=F6/E6" });
  });

  it("does not write again what the row holds already", () => {
    const sheet = sheetOf([["Lot", "A-1"], ["Net (g)", 100], ["Fineness", 925], ["Outturn (g)", 92]]);
    const place = firstPlace({ sheets: [sheet] } as unknown as Opened);
    expect(written(place, { outturn: { value: 92, unit: "g" }, fineness: { value: 925 } })).toEqual({});
  });
});

describe("whether a lot is settled", () => {
  const lots = (...states: readonly (readonly [status: string, outturn: number | string])[]): readonly ListedLot[] => {
    const place = firstPlace({ sheets: [sheetOf([["Lot", ...states.map((_, i) => `A-${i + 1}`)], ["Net (g)", ...states.map(() => 100)], ["Outturn (g)", ...states.map(([, outturn]) => outturn)], ["Status", ...states.map(([status]) => status)]])] } as unknown as Opened);
    return lotsOf(place);
  };

  it("is said by its outturn, or by a status that says so", () => {
    const states = ["settled", "Paid 12 March", "réglé", "closed", "not paid", "unsettled", "to be settled", "à payer", "in work"] as const;
    expect(lots(...states.map((status) => [status, ""] as const)).map(isSettled)).toEqual([true, true, true, true, false, false, false, false, false]);
    expect(lots(["in work", 92]).map(isSettled)).toEqual([true]);
  });

  it("is written in the word that the list uses", () => {
    expect(settledWord(lots(["closed", 92], ["closed", 90], ["paid", 91], ["open", ""]))).toBe("closed");
    expect(settledWord(lots(["open", ""]))).toBe("settled");
  });
});
