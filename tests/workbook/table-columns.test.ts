import { describe, expect, it } from "vitest";
import { placedTable, tableColumns } from "../../src/workbook/table-columns";
import { areaText, readAddress } from "../../src/workbook/xlsx/address";

const table = placedTable("Lots", { name: "Lots", range: "B3:E9", hasTotals: true }, ["Lot", "Net (g)", "Odd ]'#", "Fine"]);
const cells = (text: string, cell = "G5", sheet = "Lots"): string | null => {
  const spot = readAddress(cell);
  const found = spot && table && tableColumns(text, { sheet, spot }, [table]);
  return found ? `${found.sheet}!${areaText(found.area)}` : null;
};

describe("columns of a table in a formula", () => {
  it.each([
    ["Lots[Net (g)]", "Lots!C4:C8"],
    ["lots[net (g)]", "Lots!C4:C8"],
    ["Lots[@Fine]", "Lots!E5"],
    ["Lots[@[Net (g)]]", "Lots!C5"],
    ["Lots[[#This Row],[Net (g)]]", "Lots!C5"],
    ["Lots[[Lot]:[Fine]]", "Lots!B4:E8"],
    ["Lots[[#Data],[Fine]]", "Lots!E4:E8"],
    ["Lots[]", "Lots!B4:E8"],
    ["Lots[Odd ']'''#]", "Lots!D4:D8"],
  ])("%s are %s", (text, expected) => {
    expect(cells(text)).toBe(expected);
  });
  it("without a name are those of the table in which the formula stands", () => {
    expect(cells("[@[Net (g)]]", "E6")).toBe("Lots!C6");
    expect(cells("[Fine]", "E6")).toBe("Lots!E4:E8");
    expect(cells("[@[Net (g)]]", "G6")).toBeNull();
  });
  it("are told from another sheet, but have no row there", () => {
    expect(cells("Lots[Fine]", "G5", "Other")).toBe("Lots!E4:E8");
    expect(cells("Lots[@Fine]", "G5", "Other")).toBeNull();
    expect(cells("Lots[@Fine]", "G9")).toBeNull();
  });
  it("are left alone where they mean more than the rows of the table, or nothing", () => {
    for (const text of ["Lots[#All]", "Lots[[#Totals],[Fine]]", "Lots[[#Headers],[Fine]]", "Lots[Gone]", "Other[Fine]"]) expect(cells(text), text).toBeNull();
  });
});
