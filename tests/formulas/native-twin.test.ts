import { describe, expect, it } from "vitest";
import { find } from "../../src/catalogue/catalogue";
import type { Entry } from "../../src/catalogue/entry";
import { type Twin, NoTwin, nativeTwin } from "../../src/formulas/native-twin";
import { Reference } from "../../src/functions/reference";

const twin = (formula: string): Twin =>
  nativeTwin(formula, ({ name }) => find(name) as Entry, (text) => (/^\d/.test(text) ? Number(text) : /^"/.test(text) ? text.slice(1, -1) : new Reference(text)));

describe("one cell of a spill, picked by INDEX", () => {
  const rows = twin("=LOT.BALANCE(B5,B6,B7,B8,C5,C6,C7,C8)");
  const cell = (row: number, column: number): string => (typeof rows === "string" ? "" : (rows[row]?.[column] ?? ""));
  it("has the twin of that cell alone", () => {
    expect(twin("=INDEX(LOT.BALANCE(B5,B6,B7,B8,C5,C6,C7,C8),5,2)")).toBe(cell(4, 1));
    expect(twin("=INDEX( LOT.BALANCE(B5,B6,B7,B8,C5,C6,C7,C8) , 8 , 2 )")).toBe(cell(7, 1));
  });
  it("counts columns from the first where none is named", () => {
    expect(twin("=INDEX(LOT.BALANCE(B5,B6,B7,B8,C5,C6,C7,C8),1)")).toBe(cell(0, 0));
  });
  it("stands inside a formula, and twice in one", () => {
    expect(twin("=1+INDEX(LOT.BALANCE(B5,B6,B7,B8,C5,C6,C7,C8),5,2)-INDEX(LOT.BALANCE(B5,B6,B7,B8,C5,C6,C7,C8),1,2)")).toBe(`=1+(${cell(4, 1).slice(1)})-(${cell(0, 1).slice(1)})`);
  });
  it.each([
    ["beyond its rows", "=INDEX(LOT.BALANCE(B5,B6,B7,B8,C5,C6,C7,C8),19,2)"],
    ["by a cell that says which", "=INDEX(LOT.BALANCE(B5,B6,B7,B8,C5,C6,C7,C8),A1,2)"],
    ["as a whole row", "=SUM(LOT.BALANCE(B5,B6,B7,B8,C5,C6,C7,C8))"],
  ])("has none %s", (_, formula) => {
    expect(() => twin(formula)).toThrow(NoTwin);
  });
});
