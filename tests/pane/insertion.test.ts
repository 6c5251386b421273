import { describe, expect, it } from "vitest";
import { type CellRange, cellRange, seenFrom, writtenRange } from "../../src/workbook/cell-range";
import { type Insertion, type Review, insert, review } from "../../src/pane/all-functions/insertion";
import { schemeOf } from "../../src/pane/colours";
import { MemoryPort } from "./memory-port";

const FORMULA = '=LOT.COPPER(B4,"lb")';
const one: Insertion = { sheet: "Sheet1", cell: "B7", formula: FORMULA, rows: 1, columns: 1, reads: [] };
const alone = async () => ({ rows: 1, columns: 1 });

function named(sheet: string | null, range: string): CellRange {
  const cells = cellRange(sheet, range);
  if (!cells) throw new Error(`${range} is no range`);
  return cells;
}

function planned(reviewed: Review) {
  if ("refusal" in reviewed) throw new Error(reviewed.refusal);
  return reviewed.plan;
}

describe("an insertion", () => {
  it("into an empty cell is written and undone whole", async () => {
    const port = new MemoryPort();
    const { undo } = await insert(port, planned(await review(port, one, alone)), false);
    expect(port.at("B7").formula).toBe(FORMULA);
    await undo();
    expect(port.at("B7")).toEqual({ value: null, formula: null, error: false });
  });
  it("into a filled cell is written only when that was asked for, and gives back what stood there", async () => {
    const port = new MemoryPort({ B7: { value: 12, formula: "=A1*2", error: false } });
    const plan = planned(await review(port, one, alone));
    expect(plan.cells[0]).toMatchObject({ overwrites: true, before: { formula: "=A1*2" } });
    await expect(insert(port, plan, false)).rejects.toThrow("B7 is filled");
    expect(port.at("B7").formula).toBe("=A1*2");
    const { undo } = await insert(port, plan, true);
    expect(port.at("B7").formula).toBe(FORMULA);
    await undo();
    expect(port.at("B7").formula).toBe("=A1*2");
  });
  it("is not written when the cell changed after the question", async () => {
    const port = new MemoryPort({ B7: 1 });
    const plan = planned(await review(port, one, alone));
    port.put("B7", 2);
    await expect(insert(port, plan, true)).rejects.toThrow("changed");
    expect(port.at("B7").value).toBe(2);
  });
  it("is not undone over what was typed since", async () => {
    const port = new MemoryPort();
    const { undo } = await insert(port, planned(await review(port, one, alone)), false);
    port.put("B7", "my own note");
    await expect(undo()).rejects.toThrow("B7 has changed since");
    expect(port.at("B7").value).toBe("my own note");
  });
  it("is refused where the formula would read itself", async () => {
    const reading = (range: CellRange): Insertion => ({ ...one, reads: [range] });
    expect(await review(new MemoryPort(), reading(named(null, "B4:B9")), alone)).toEqual({ refusal: "The formula reads B4:B9 and cannot stand in it: choose another cell" });
    expect(await review(new MemoryPort(), reading(named("Prices", "B4:B9")), alone)).toHaveProperty("plan");
    expect(await review(new MemoryPort(), { ...reading(named(null, "C9")), rows: 3, columns: 2 }, alone)).toHaveProperty("refusal");
  });
  it("is refused where the cell holds the formula already", async () => {
    const port = new MemoryPort({ B7: { value: 3, formula: FORMULA, error: false } });
    expect(await review(port, one, alone)).toEqual({ refusal: "B7 holds this formula already" });
  });
});

describe("a result of several cells", () => {
  const spill: Insertion = { ...one, rows: 3, columns: 2 };

  it("needs them free, and names those that are not", async () => {
    expect(await review(new MemoryPort(), spill, alone)).toHaveProperty("plan");
    expect(await review(new MemoryPort({ C9: "note" }), spill, alone)).toEqual({
      refusal: "The result takes 3 rows × 2 columns, B7:C9, but C9 is filled: empty what is in the way or choose another cell",
    });
    const crowded = new MemoryPort({ C7: 1, B8: 1, C8: 1, B9: 1, C9: 1 });
    expect(await review(crowded, spill, alone)).toMatchObject({ refusal: expect.stringContaining("C7, B8, C8 and 2 more are filled") });
  });
  it("takes the cells that the formula which it replaces fills now", async () => {
    const before = { value: "Net weight", formula: '=LOT.SETTLEMENT(1,"g",925,24)', error: false };
    const port = new MemoryPort({ B7: before, C7: 1, B8: "Fineness", C8: 925 });
    expect(await review(port, spill, async () => ({ rows: 2, columns: 2 }))).toHaveProperty("plan");
    port.put("C9", "mine");
    expect(await review(port, spill, async () => ({ rows: 2, columns: 2 }))).toMatchObject({ refusal: expect.stringContaining("C9 is filled") });
  });
  it("is refused where the sheet ends before", async () => {
    expect(await review(new MemoryPort(), { ...spill, cell: "B1048575" }, alone)).toMatchObject({ refusal: expect.stringContaining("the sheet ends before") });
  });
});

describe("a cell that a field names", () => {
  it("stays the same cell when another sheet is selected", () => {
    const away = seenFrom(named(null, "B4"), "Sheet1", "Prices");
    expect(writtenRange(away, "Prices")).toBe("Sheet1!B4");
    expect(writtenRange(seenFrom(away, "Prices", "Sheet1"), "Sheet1")).toBe("B4");
  });
});

describe("the host's colours", () => {
  it("decide between light and dark by which of ground and text is lighter", () => {
    expect(schemeOf({ ground: "#ffffff", text: "#000000" })).toBe("light");
    expect(schemeOf({ ground: "#262626", text: "#f0f0f0" })).toBe("dark");
  });
});
