import { describe, expect, it } from "vitest";
import { type StoredCell, workbookOf } from "../../src/engine/book";
import { findLots } from "../../src/lots/find";
import type { LotInput } from "../../src/lots/given";
import { type RowOptions, newRow } from "../../src/lots/row";
import { random } from "../random";
import { type Column, sheetOf } from "./readings";

const headings = (...all: readonly string[]): Column[] => all.map((heading): Column => [heading]);

/** The formulas and values of a first row under these headings, by heading. */
function rowUnder(columns: readonly Column[], given: LotInput, options: RowOptions = {}) {
  const sheet = sheetOf(columns);
  const [proposal] = findLots([sheet]).proposals;
  if (!proposal) throw new Error("No list under these headings");
  const row = newRow(sheet, proposal, given, options);
  if (!("cells" in row)) throw new Error(row.join("; "));
  const written = row.cells.map(({ write: { cell, content, asText } }): StoredCell => {
    const formula = typeof content === "string" && content.startsWith("=") && !asText ? content : null;
    return { address: cell, formula, fills: null, value: formula === null ? content : null, error: false };
  });
  const book = workbookOf([{ name: "Lots", cells: written }]);
  return {
    remarks: row.remarks,
    formula: (heading: string): unknown => row.cells.find((cell) => cell.heading === heading)?.write.content,
    value: (heading: string): unknown => {
      const cell = row.cells.find((one) => one.heading === heading);
      return cell && book.read("Lots", cell.write.cell).value;
    },
    evaluate: (formula: string): unknown => book.evaluate(formula),
  };
}

describe("formulas of Lotwright in a list that has none yet", () => {
  it("weigh, refine and pay over the row's own cells", () => {
    const row = rowUnder(headings("Lot", "Gross (g)", "Tare (g)", "Net (g)", "Fineness", "Fine weight (ozt)", "Price $/ozt", "Payable", "Payout $", "Copper (lb)", "Nitric acid (L)"), {
      gross: { value: 7510 }, tare: { value: 10 }, fineness: { value: 925 }, price: { value: 24.5 }, payable: { value: 0.95 },
    });
    expect(row.formula("Net (g)")).toBe("=C4-D4");
    expect(row.formula("Fine weight (ozt)")).toBe('=LOT.FINEWEIGHT(E4,"g",F4)');
    expect(row.formula("Payout $")).toBe('=LOT.PAYOUT(G4,"ozt",H4,I4)');
    expect(row.formula("Copper (lb)")).toBe('=LOT.COPPER(G4,"ozt",0,0,"lb")');
    expect(row.formula("Nitric acid (L)")).toBe('=LOT.NITRIC(E4,"g",F4,0.68,0,0,"L")');
    expect(row.value("Fine weight (ozt)")).toBeCloseTo(223.045804, 5);
    expect(row.value("Payout $")).toBe(5191.39);
  });

  it("show nothing while fineness and outturn are still to come, rather than an error", () => {
    const row = rowUnder(headings("Lot", "Client", "Net (g)", "Fineness", "Fine weight (ozt)", "Outturn (kg)", "Recovery"), { lot: { value: "L-1" }, net: { value: 500 } });
    expect(row.formula("Fine weight (ozt)")).toBe('=IF(E4="","",LOT.FINEWEIGHT(D4,"g",E4))');
    expect(row.formula("Recovery")).toBe('=IF(OR(G4="",F4=""),"",LOT.RECOVERY(LOT.WEIGHT(G4,"kg","ozt"),F4))');
    expect([row.value("Fine weight (ozt)"), row.value("Recovery")]).toEqual(["", ""]);
  });

  it("take a tare of nothing, and one in another unit", () => {
    const columns = headings("Lot", "Gross (kg)", "Tare (g)", "Net (g)", "Fineness");
    for (const [tare, net] of [[0, 2000], [150, 1850]] as const) expect(rowUnder(columns, { gross: { value: 2 }, tare: { value: tare } }).value("Net (g)")).toBe(net);
    expect(rowUnder(columns, { gross: { value: 2 } }).value("Net (g)")).toBe(2000);
  });

  it("put terms without a column into the formula itself, and refuse those that are not clear", () => {
    const columns = headings("Lot", "Net (g)", "Fine weight (ozt)", "Payout");
    const given: LotInput = { net: { value: 1000 }, fineness: { value: "sterling" }, price: { sheet: "Prices", cell: "B3" }, payable: { value: "95%" }, lotCharges: { value: 25 } };
    expect(rowUnder(columns, given).formula("Payout")).toBe('=LOT.PAYOUT(D4,"ozt",Prices!$B$3,0.95,0,25)');
    expect(rowUnder(columns, given).formula("Fine weight (ozt)")).toBe('=LOT.FINEWEIGHT(C4,"g","sterling")');
    expect(() => rowUnder(columns, { ...given, payable: { value: 95 } })).toThrow('it must be a share from 0 to 1, or a text such as "98%"');
  });

  it("say what they need where something is missing", () => {
    const row = rowUnder(headings("Lot", "Net (g)", "Fineness", "Payout", "Copper bars"), { net: { value: 5 }, fineness: { value: 925 } });
    expect(row.remarks).toEqual(["E4 (Payout) stays empty: it needs a price", "F4 (Copper bars) stays empty: it needs the copper"]);
  });

  it("leave formulas alone that were filled down beforehand", () => {
    const row = rowUnder([["Lot", "L-1"], ["Net (g)", 500], ["Fineness", 925], ["Fine (g)", "=C4*D4/1000", '=IF(C5="","",C5*D5/1000)']], { lot: { value: "L-2" }, net: { value: 100 }, fineness: { value: 800 } });
    expect(row.formula("Fine (g)")).toBeUndefined();
    expect(row.formula("Net (g)")).toBe(100);
  });

  it("fill a column of the user's own down as the cells above it", () => {
    const row = rowUnder([["Lot", "L-1", "L-2"], ["Net (g)", 500, 200], ["Fineness", 925, 800], ["My bonus", "=C4*0.01", "=C5*0.01"]], { lot: { value: "L-3" }, net: { value: 100 } });
    expect(row.formula("My bonus")).toBe("=C6*0.01");
  });

  it("follow the column's way and not one row's exception", () => {
    const row = rowUnder([["Lot", "L-1", "L-2", "L-3"], ["Gross (g)", 510, 210, 90], ["Tare (g)", 10, 10, 0], ["Net (g)", "=C4-D4", "=C5-D5", "=C6"]], { gross: { value: 70 }, tare: { value: 1 } });
    expect(row.formula("Net (g)")).toBe("=C7-D7");
  });

  it("pay to the cent what LOT.SETTLEMENT settles, with every term and in kilograms", () => {
    const { decimal, pick } = random(20260403);
    for (let i = 0; i < 60; i++) {
      const [net, price, payable, refining, treatment, charges, deduction] = [decimal(0.1, 20, 3), decimal(15, 60, 2), pick([95, 96.5, 98]), decimal(0, 1, 2), decimal(0, 15, 2), decimal(0, 60, 2), pick([0, 3, 5])];
      const row = rowUnder(headings("Lot", "Net (kg)", "Assay %", "Fine (kg)", "Fix £/ozt", "Payable %", "Refining charge £/ozt", "Treatment charge £/kg", "Lot charges £", "Deduction ‰", "Payout £"), {
        net: { value: net }, fineness: { value: 925 }, price: { value: price }, payable: { value: `${payable}%` }, refiningCharge: { value: refining }, treatmentCharge: { value: treatment }, lotCharges: { value: charges }, deduction: { value: deduction },
      });
      const lines = row.evaluate(`=LOT.SETTLEMENT(${net},"kg",925,${price},"${payable}%",${refining},${treatment},${charges},${deduction})`);
      const total = Array.isArray(lines) ? (lines.at(-1) as unknown[])[1] : null;
      expect(row.value("Payout £"), `${String(row.formula("Payout £"))} of lot ${i}`).toBe(total);
    }
  });
});
