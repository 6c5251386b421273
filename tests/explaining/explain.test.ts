import { describe, expect, it } from "vitest";
import { evaluate as computedBy } from "../../src/engine/evaluate";
import { type Explanation, explain } from "../../src/explaining/explain";
import { explanationText } from "../../src/explaining/explanation-text";
import { findFormula } from "../../src/pane/explain-a-cell/find-formula";
import { remarkOn } from "../../src/explaining/remark";
import { withNumbers } from "../../src/pane/explain-a-cell/with-numbers";
import { localFormula } from "../../src/pane/local-formula";
import { portNotation, userNotation } from "../../src/pane/notation";
import type { CellContent, CellReading } from "../../src/workbook/port";
import { readAddress } from "../../src/workbook/xlsx/address";
import { MemoryPort } from "../pane/memory-port";

type Cells = Readonly<Record<string, CellContent | CellReading>>;

const formula = (text: string, value: CellContent, error = false): CellReading => ({ formula: text, value, error });
const spotOf = (cell: string) => readAddress(cell) ?? { row: 1, column: 1 };

const LOTS: Cells = {
  A1: "Lot", B1: "Gross (g)", C1: "Tare (g)", D1: "Net (g)", E1: "Fineness", F1: "Fine (g)",
  A2: "L-104", B2: 1250, C2: 9.5, D2: 1240.5, E2: 925,
  A3: "L-105", B3: 310, C3: 1, D3: 309, E3: "sterling",
  A4: "L-106", B4: null, C4: null, D4: null, E4: 925,
};
const FINE = '=LOT.FINEWEIGHT(D2,"g",E2,"g")';

async function explainedAt(port: MemoryPort, cell: string): Promise<Explanation> {
  const found = await findFormula({ sheet: "Sheet1", spot: spotOf(cell) }, port);
  if (!("on" in found)) throw new Error(`${cell} has nothing to explain`);
  return explain(found.on, found.shows, port);
}
const explained = (text: string, value: CellContent = null, cells: Cells = {}): Promise<Explanation> =>
  explainedAt(new MemoryPort({ ...LOTS, ...cells, F2: formula(text, value, String(value).startsWith("#")) }), "F2");

const only = (of: Explanation) => {
  const [call, ...more] = of.calls;
  if (!call || more.length > 0) throw new Error(`${of.calls.length} calls`);
  return call;
};
const lines = (of: Explanation): string[] => of.calls.flatMap(({ outcome }) => (outcome.kind === "worked" ? outcome.working.lines.map(({ text }) => text) : []));
const blamed = (of: Explanation): string[] => only(of).inputs.filter(({ isBlamed }) => isBlamed).map(({ parameter }) => parameter);

describe("the explanation of a cell", () => {
  it("is the working with the cells that the formula names, and what the sheet calls them", async () => {
    const of = await explained(FINE, 1147.4625);
    expect(lines(of)).toContain("weight = D2 = 1240.5 g");
    expect(lines(of)).toContain("fine weight = 1240.5 × 0.925 = 1147.4625 g");
    expect(only(of).inputs.map(({ parameter, cells }) => [parameter, cells.map(({ text, name }) => `${text} ${name ?? ""}`)])).toEqual([
      ["weight", ["D2 Net (g)"]],
      ["unit", []],
      ["fineness", ["E2 Fineness"]],
      ["to", []],
    ]);
    expect(remarkOn(of)).toBeNull();
  });

  it("computes the arithmetic of references and numbers as the spreadsheet does", async () => {
    for (const argument of ["B2-C2", "(B2 - C2)*2/2", "-(C2-B2)", "B2-C2*100%", "+D2+B4", "Sheet1!$D$2"]) {
      const of = await explained(`=LOT.FINEWEIGHT(${argument},"g",E2,"g")`, 1147.4625);
      expect(remarkOn(of), argument).toBeNull();
      expect(only(of).outcome.kind, argument).toBe("worked");
    }
    const half = await explained('=LOT.FINEWEIGHT((B2-C2)/2,"g",E2)');
    expect(only(half).inputs.map(({ of }) => withNumbers(of, half.references, portNotation))[0]).toBe("(1250 − 9.5) ÷ 2");
  });

  it("agrees with the embedded engine, formula by formula", async () => {
    const typed = Object.fromEntries(Object.entries(LOTS).map(([at, value]) => [at, String(value ?? "")]));
    for (const text of [
      '=LOT.FINEWEIGHT(B2-C2,"g",E2)',
      '=LOT.COPPER(LOT.FINEWEIGHT(D2,"g",E2,"g"),"g","13%")',
      `${FINE}/LOT.WEIGHT(1,"ozt","g")+2*(B3-C3)`,
      "=LOT.MELTFINENESS(D2:D3,E2:E3)",
    ]) {
      const { whole } = await explained(text);
      expect(whole.kind === "known" && whole.holds, text).toBeCloseTo(computedBy(text, typed) as number, 9);
    }
  });

  it("takes the inner functions first, each once", async () => {
    const of = await explained(`=LOT.COPPER(${FINE.slice(1)},"g")+${FINE.slice(1)}`);
    expect(of.calls.map(({ name }) => name)).toEqual(["LOT.FINEWEIGHT", "LOT.COPPER"]);
    expect(lines(of)).toContain(`silver = ${FINE.slice(1)} = 1147.4625 g`);
    expect(of.isWhole).toBe(false);
  });

  it("is whole inside the spreadsheet's own functions, and shows as it stands what they compute", async () => {
    const rounded = await explained(`=ROUND(${FINE.slice(1)},2)`, 1147.46);
    expect(only(rounded).outcome.kind).toBe("worked");
    expect(remarkOn(rounded)).toBeNull();
    const summed = await explained('=LOT.FINEWEIGHT(SUM(D2:D3)-C2,"g",Assay)', 1100);
    expect(only(summed).outcome).toMatchObject({ kind: "open", texts: ["SUM(D2:D3)", "Assay"] });
    expect(only(summed).inputs[0]?.cells.map(({ text, name }) => `${text} ${name ?? ""}`)).toEqual(["D2:D3 Net (g)", "C2 Tare (g)"]);
    expect(explanationText(summed)).toContain("What the spreadsheet alone can tell stands here as it is: SUM(D2:D3) and Assay");
    expect(explanationText(summed)).toContain("Formula    fine weight = ");
  });

  it("reads the cells that a name stands for", async () => {
    const port = new MemoryPort({ ...LOTS, "Prices!A2": "Fineness of sterling", "Prices!B2": 925, F2: formula('=LOT.FINEWEIGHT(D2,"g",sterling,"g")', 1147.4625) });
    port.named = [{ name: "Sterling", place: { sheet: "Prices", range: "B2" } }];
    const of = await explainedAt(port, "F2");
    expect(lines(of)).toContain("fineness = sterling = 925 = 0.925");
    expect(only(of).inputs[2]?.cells.map(({ sheet, name }) => [sheet, name])).toEqual([["Prices", "Fineness of sterling"]]);
  });

  it("reads columns of a table, in its row and whole", async () => {
    const port = new MemoryPort({
      ...LOTS,
      F2: formula('=LOT.FINEWEIGHT(Lots[@[Gross (g)]]-[@[Tare (g)]],"g",Lots[[#This Row],[Fineness]],"g")', 1147.4625),
      H9: formula("=LOT.MELTFINENESS(Lots[Net (g)],Lots[Fineness])", 925),
    });
    port.tables = { Sheet1: [{ name: "Lots", range: "A1:F4", hasTotals: true }] };
    expect(lines(await explainedAt(port, "F2"))).toContain("weight = Lots[@[Gross (g)]]-[@[Tare (g)]] = 1240.5 g");
    const melt = await explainedAt(port, "H9");
    expect(only(melt).inputs[1]?.cells.map(({ area, name }) => [area, name])).toEqual([[{ top: 2, bottom: 3, left: 5, right: 5 }, "Fineness"]]);
    expect(remarkOn(melt)).toBeNull();
  });

  it("says what is still to be filled in, with the rule already", async () => {
    const of = await explained('=LOT.FINEWEIGHT(D4,"g",E4)', "#VALUE!");
    expect(only(of).outcome).toMatchObject({ kind: "waiting", sentence: expect.stringContaining("weight") });
    expect(blamed(of)).toEqual(["weight"]);
    expect(explanationText(of)).toContain("Rule ");
  });

  it("tells an error's sentence and the input to look at", async () => {
    const unit = await explained('=LOT.FINEWEIGHT(D2,"oz",E2)', "#VALUE!");
    expect(only(unit).outcome).toMatchObject({ kind: "stopped", code: "#VALUE!", sentence: expect.stringContaining('write "ozt"') });
    expect(blamed(unit)).toEqual(["unit"]);
    const input = await explained(FINE, "#DIV/0!", { E2: formula("=1/0", "#DIV/0!", true) });
    expect(only(input).outcome).toMatchObject({ kind: "stopped", code: "#DIV/0!", sentence: "E2 shows #DIV/0!: mend that cell first" });
    expect(blamed(input)).toEqual(["fineness"]);
    expect(only(await explained('=LOT.FINEWEIGHT(A2*2,"g",E2)', "#VALUE!")).outcome).toMatchObject({ sentence: expect.stringContaining("“L-104” is a text") });
    expect(only(await explained('=LOT.FINEWEIGTH(D2,"g",E2)', "#NAME?")).outcome).toMatchObject({ sentence: "Cannot find LOT.FINEWEIGTH: did you mean LOT.FINEWEIGHT" });
  });

  it("remarks on a cell that was not computed again, and on an error that is not ours", async () => {
    expect(remarkOn(await explained(FINE, 1000))).toContain("its numbers now give 1147.4625");
    expect(remarkOn(await explained(FINE, "#NAME?"))).toContain("press F2");
    expect(remarkOn(await explained(`${FINE}/VLOOKUP(1,A1:B2,2)`, "#N/A"))).toContain("look at what stands around it");
  });

  it("gives the formula that computes the same without the add-in", async () => {
    expect((await explained('=ROUND(LOT.COPPER(D2,"lb"),2)')).twin).toMatch(/^=ROUND\(\(D2\*/);
    expect((await explained("=LOT.VERSION()")).twin).toBeNull();
    const rows = (await explained('=LOT.BARS(250,"ozt",100,"ozt")')).twin;
    expect(Array.isArray(rows) && rows.length).toBe(2);
  });

  it("as text holds the cell, its formula, the working and the names of the cells", async () => {
    const text = explanationText(await explained('=LOT.FINEWEIGHT(B2-C2,"g",E2,"g")', 1147.4625));
    expect(text.split("\n").slice(0, 5)).toEqual(["Sheet1!F2 = 1147.4625", '=LOT.FINEWEIGHT(B2-C2,"g",E2,"g")', "", "Fine weight", ""]);
    expect(text).toMatch(/\n\nB2: Gross \(g\)\nC2: Tare \(g\)\nE2: Fineness$/);
  });
});

describe("the cell to explain", () => {
  const at = async (port: MemoryPort, cell: string) => findFormula({ sheet: "Sheet1", spot: spotOf(cell) }, port);
  it("is that from which a result spills", async () => {
    const port = new MemoryPort({ B7: formula('=LOT.BARS(250,"ozt",100,"ozt")', "Bars"), C7: 2, D7: "", B8: "Remainder", C8: 50, D8: "ozt", C9: 50, E8: 1 });
    for (const cell of ["C7", "D7", "B8", "C8", "D8"]) expect(await at(port, cell), cell).toMatchObject({ on: { spot: { row: 7, column: 2 } } });
    for (const cell of ["C9", "E8", "B9"]) expect(await at(port, cell), cell).not.toHaveProperty("on");
  });
  it("is found at the head of a long column", async () => {
    const rows = Array.from({ length: 300 }, (_, i): [string, CellContent][] => [[`A${i + 2}`, 10], [`B${i + 2}`, 925], [`C${i + 2}`, 9.25]]).flat();
    const port = new MemoryPort({ ...Object.fromEntries(rows), C2: formula('=LOT.FINEWEIGHTS(A2:A301,"g",B2:B301)', 9.25) });
    expect(await at(port, "C250")).toMatchObject({ on: { spot: { row: 2, column: 3 } } });
    expect(await at(port, "B250")).not.toHaveProperty("on");
  });
  it("is none where the cell is empty, plain or has another formula", async () => {
    const port = new MemoryPort({ A1: 1, A2: formula("=SUM(A1)", 1), A3: formula('="LOT.COPPER(1)"', "LOT.COPPER(1)") });
    for (const cell of ["A1", "A2", "A3", "B1"]) expect(await at(port, cell)).not.toHaveProperty("on");
  });
});

describe("a formula that is shown", () => {
  it("is written as the user's spreadsheet takes it", () => {
    const comma = userNotation({ decimal: ",", separator: ";" });
    expect(localFormula('=LOT.X(1.5,"a,b.c",{1.5,2;3,4},B4)', comma)).toBe('=LOT.X(1,5;"a,b.c";{1,5\\2;3\\4};B4)');
    expect(localFormula('=LOT.X(1.5,"a")', portNotation)).toBe('=LOT.X(1.5,"a")');
  });
});
