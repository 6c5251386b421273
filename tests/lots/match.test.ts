import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { corrected } from "../../src/lots/corrections";
import { findLots } from "../../src/lots/find";
import { readStored, remembered, stored } from "../../src/lots/remembered";
import type { SheetReading } from "../../src/lots/sheet-reading";
import { type Column, firstPlace, openUgly, sheetOf, shortly } from "./readings";

const columns: readonly Column[] = [
  ["Lot no.", "L-1", "L-2", "L-3"],
  ["Customer", "C-07", "C-12", "C-07"],
  ["Goods", "forks", "trays", "wire"],
  ["Gross (g)", 510, 120, 75.5],
  ["Tare (g)", 10, 20, 0.5],
  ["Net (g)", 500, 100, 75],
  ["Fineness ‰", 925, 800, 999],
  ["Fine (ozt)", 14.87, 2.572, 2.409],
  ["Payable %", 95, 96, 95],
  ["Price $/ozt", 24, 24.5, 24.1],
  ["Payout $", 339.04, 60.5, 55.15],
  ["Remarks of the shop", "none", "soldered", "none"],
];

/** Field and heading of each match, whatever its place. */
const byHeading = (sheet: SheetReading): string[] => (findLots([sheet]).proposals[0]?.matches ?? []).map(({ field, column, unit }) => `${field}: ${column.heading.toLowerCase()} ${unit?.symbol ?? ""}`);

const lotSheet = sheetOf(columns);
const [proposal] = findLots([lotSheet]).proposals;
if (!proposal) throw new Error("No list in the sheet");

describe("the match of columns", () => {
  it("finds eleven of the twelve columns", () => {
    expect(shortly(proposal)).toEqual(["lot B", "client C", "description D", "gross E g", "tare F g", "net G g", "fineness H ppt", "fineWeight I ozt", "price K ozt", "payable J %", "payout L"]);
  });

  it("does not change when the columns stand in another order", () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([...columns], { minLength: columns.length, maxLength: columns.length }), (shuffled) => {
        expect(byHeading(sheetOf(shuffled))).toEqual(byHeading(lotSheet));
      }),
    );
  });

  it("does not change with small or capital letters, nor with blanks around the words", () => {
    fc.assert(
      fc.property(fc.infiniteStream(fc.constantFrom("upper", "lower", "as it is")), fc.infiniteStream(fc.nat(2)), (cases, blanks) => {
        const written = columns.map(([heading, ...cells]): Column => {
          const how = cases.next().value;
          const pad = " ".repeat(blanks.next().value ?? 0);
          return [pad + (how === "upper" ? heading.toUpperCase() : how === "lower" ? heading.toLowerCase() : heading) + pad, ...cells];
        });
        expect(byHeading(sheetOf(written))).toEqual(byHeading(lotSheet));
      }),
    );
  });

  it("can be changed, left out and told its unit", () => {
    const { matches, refusals } = corrected(proposal, [{ kind: "column", field: "description", column: "M" }, { kind: "leave out", field: "payout" }, { kind: "unit", field: "net", symbol: "kg" }], lotSheet);
    expect(refusals).toEqual([]);
    expect(matches.find(({ field }) => field === "description")).toMatchObject({ column: { letter: "M" }, reason: "you chose column M ‘Remarks of the shop’; cells hold texts", doubt: null });
    expect(matches.find(({ field }) => field === "net")?.unit).toEqual({ symbol: "kg", from: "told" });
    expect(matches.map(({ field }) => field)).not.toContain("payout");
  });

  it("gives a column to one field only", () => {
    const { matches } = corrected(proposal, [{ kind: "column", field: "outturn", column: "I" }], lotSheet);
    expect(matches.find(({ field }) => field === "outturn")).toMatchObject({ column: { letter: "I" }, unit: { symbol: "ozt", from: "heading" } });
    expect(matches.map(({ field }) => field)).not.toContain("fineWeight");
  });

  it("says what speaks against the user's choice", () => {
    const { matches } = corrected(proposal, [{ kind: "column", field: "date", column: "D" }], lotSheet);
    expect(matches.find(({ field }) => field === "date")?.doubt?.sentence).toBe("Its cells hold texts such as ‘forks’, not dates");
  });

  it("adds missing columns at the right, in the look of the headings", () => {
    const { writes, matches, list } = corrected(proposal, [{ kind: "add", field: "copper", unit: "lb" }, { kind: "add", field: "status" }], lotSheet);
    expect(writes).toEqual([
      { sheet: "Lots", cell: "N3", content: "Copper (lb)", asText: true, like: "M3" },
      { sheet: "Lots", cell: "O3", content: "Status", asText: true, like: "N3" },
    ]);
    expect(list.columns.at(-1)).toMatchObject({ letter: "O", heading: "Status" });
    expect(matches.find(({ field }) => field === "copper")?.unit).toEqual({ symbol: "lb", from: "told" });
  });

  it("adds none where something stands beside the list, and none to a table that cannot grow", async () => {
    const beside = sheetOf([...columns, ["", "", "Today 24.50"]]);
    const [place] = findLots([beside]).proposals;
    expect(place && corrected(place, [{ kind: "add", field: "status" }], beside).refusals).toEqual(["Column N beside the list is not free (N5 holds something): insert a column there (right-click the letter N, Insert), then look again"]);
    const table = firstPlace(await openUgly("table"));
    expect(corrected(table.proposal, [{ kind: "add", field: "status" }], table.sheet)).toMatchObject({ writes: [], refusals: ["Table ‘Lots’ must take the column up: type ‘Status’ into I3 right beside its headings, so that the table grows, then look again"] });
    expect(corrected(table.proposal, [{ kind: "add", field: "status" }], table.sheet, true)).toMatchObject({ tableRange: "B3:I5", writes: [{ cell: "I3" }] });
  });
});

describe("a match that the workbook keeps", () => {
  const kept = (): ReturnType<typeof readStored> => readStored(JSON.parse(JSON.stringify(stored(corrected(proposal, [{ kind: "unit", field: "net", symbol: "kg" }, { kind: "column", field: "description", column: "M" }], lotSheet)))));
  const again = (...sheets: readonly SheetReading[]) => {
    const match = kept();
    if (!match) throw new Error("It was not read back");
    return remembered(match, sheets);
  };

  it("is the same the next time, the user's own choices too", () => {
    const found = again(lotSheet);
    expect(found).toMatchObject({ changes: [] });
    if (typeof found === "string") throw new Error(found);
    expect(shortly(found)).toEqual(["lot B", "client C", "description M", "gross E g", "tare F g", "net G kg", "fineness H ppt", "fineWeight I ozt", "price K ozt", "payable J %", "payout L"]);
  });

  it("follows its headings when a column was inserted, and says so", () => {
    const found = again(sheetOf([...columns.slice(0, 6), ["Bench", "a", "b", "c"], ...columns.slice(6)]));
    if (typeof found === "string") throw new Error(found);
    expect(shortly(found)).toContain("fineness I ppt");
    expect(found.changes).toContain("‘Fineness ‰’ moved from column H to I");
    expect(found.changes).toHaveLength(6);
  });

  it("says what is gone", () => {
    const found = again(sheetOf(columns.filter(([heading]) => heading !== "Payout $")));
    if (typeof found === "string") throw new Error(found);
    expect(found.changes).toContain("The column ‘Payout $’ (payout) is gone: choose another, or leave it out");
    expect(found.matches.map(({ field }) => field)).not.toContain("payout");
  });

  it("asks whether a column that was renamed is still the same", () => {
    const found = again(sheetOf(columns.map(([heading, ...cells]): Column => [heading === "Customer" ? "Brought by" : heading, ...cells])));
    if (typeof found === "string") throw new Error(found);
    expect(found.matches.find(({ field }) => field === "client")).toMatchObject({ column: { letter: "C" }, doubt: { sentence: "The heading of column C was ‘Customer’ and is now ‘Brought by’: is it still client?" } });
  });

  it("finds its list on a sheet that was renamed, and says when it is gone", () => {
    const found = again(sheetOf(columns, "Lots 2026"));
    expect(found).toMatchObject({ changes: ["The list of lots is now on sheet ‘Lots 2026’ (it was on ‘Lots’)"] });
    expect(again(sheetOf([["Day", "Monday"], ["Hours", 8]], "Time"))).toBe("Sheet ‘Lots’, on which lots were listed, is gone: set up where lots live again");
  });

  it("stays with each heading in whatever order the columns come back", () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([...columns], { minLength: columns.length, maxLength: columns.length }), (shuffled) => {
        const found = again(sheetOf(shuffled));
        if (typeof found === "string") throw new Error(found);
        const before = kept();
        for (const { field, column } of found.matches) expect(column.heading).toBe(before?.columns.find((one) => one.field === field)?.heading);
      }),
    );
  });

  it("is not read from what is no match", () => {
    for (const value of [null, 5, "x", {}, { sheet: "Lots", columns: [{ field: "gold" }] }, { sheet: "Lots", columns: "all" }]) expect(readStored(value)).toBeNull();
  });
});
