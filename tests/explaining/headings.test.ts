import { describe, expect, it } from "vitest";
import { nameOf } from "../../src/explaining/headings";
import type { CellContent } from "../../src/workbook/port";
import { addressOf, readAddress, readArea } from "../../src/workbook/xlsx/address";
import { MemoryPort } from "../pane/memory-port";

/** The rows of a sheet, from A1. */
function sheet(...rows: readonly (readonly CellContent[])[]): MemoryPort {
  return new MemoryPort(Object.fromEntries(rows.flatMap((row, r) => row.map((content, c) => [addressOf({ row: r + 1, column: c + 1 }), content]))));
}

async function name(port: MemoryPort, range: string, from = "Z99"): Promise<string | null> {
  const [area, spot] = [readArea(range), readAddress(from)];
  if (!area || !spot) throw new Error(`${range} or ${from} is no place`);
  return nameOf({ sheet: "Sheet1", area }, { sheet: "Sheet1", spot }, port);
}

describe("a cell that a formula names", () => {
  const list = sheet(
    ["Lots of this year"],
    [],
    ["Lot", "Client", "Gross (g)", "Net (g)", "Fineness"],
    ["L-104", "Ash", 1250, 1240.5, 925],
    ["L-105", "Birch", null, 310, "sterling"],
  );
  it("is called by the heading above it and by its row", async () => {
    expect(await name(list, "D4")).toBe("Net (g) · L-104");
    expect(await name(list, "D5")).toBe("Net (g) · L-105");
  });
  it("needs no row where that is the formula's own", async () => {
    expect(await name(list, "D5", "F5")).toBe("Net (g)");
  });
  it("is found where it holds a text among numbers, or the column a gap", async () => {
    expect(await name(list, "E5", "F5")).toBe("Fineness");
    expect(await name(list, "B5", "F5")).toBe("Client");
    expect(await name(list, "C5", "F5")).toBe("Gross (g)");
  });
  it("is called by its columns where it is a range", async () => {
    expect(await name(list, "D4:D5")).toBe("Net (g)");
    expect(await name(list, "C4:D5")).toBe("Gross (g) to Net (g)");
  });
  it("is called by both rows of a heading in two rows, also where the upper one is merged", async () => {
    const port = sheet(["Lots"], [null, "Weight", null, null, "Assay", null], ["Lot", "Gross", "Tare", "Net", "‰", "± ‰"], [101, 1250, 9.5, 1240.5, 925, 1], [102, 310, 1, 309, 800, 1]);
    expect(await name(port, "D5", "G5")).toBe("Weight Net");
    expect(await name(port, "F4")).toBe("Assay ± ‰ · 101");
    expect(await name(port, "A4", "G4")).toBe("Lot");
  });
  it("is called by its label in a sheet of labels and values", async () => {
    const port = sheet(["Cost of a drop"], [], ["Client", "Ash"], ["Unit", "lb"], ["Copper price", 9.5, "$/lb"], ["Silver price", 24.5], ["Acid", null, null, 12]);
    expect(await name(port, "B6")).toBe("Silver price");
    expect(await name(port, "B4")).toBe("Unit");
    expect(await name(port, "D7")).toBe("Acid");
  });
  it("is called by item and column in a sheet of items", async () => {
    const port = sheet(["Item", "Price", "Unit", "Note"], ["Copper", 9.5, "lb", null], ["Acid", 3.2, "L", "67 %"]);
    expect(await name(port, "B3")).toBe("Price · Acid");
    expect(await name(port, "C2")).toBe("Unit · Copper");
  });
  it("is found far below its heading", async () => {
    const rows = Array.from({ length: 300 }, (_, i) => [i + 1, i * 2, 925]);
    expect(await name(sheet(["Lot", "Net (g)", "Fineness"], ...rows), "B250")).toBe("Net (g) · 249");
  });
  it("takes a lone heading directly above, and no name where the sheet has none", async () => {
    expect(await name(sheet(["Weights"], [12], [14]), "A3")).toBe("Weights");
    expect(await name(sheet([12], [14]), "A2")).toBeNull();
  });
  it("is not mistaken for the figures of another block at its side", async () => {
    const port = sheet(["Lot", "Net (g)", "Fineness", null, 1, 2], ["L-1", 12, 925, null, "Total", 7]);
    expect(await name(port, "B2")).toBe("Net (g) · L-1");
  });
  it("has a name on one line and not too long", async () => {
    const port = sheet(["Lot", "Net\nweight", "x".repeat(100)], ["L-1", 12, 925]);
    expect(await name(port, "B2")).toBe("Net weight · L-1");
    expect((await name(port, "C2"))?.length).toBeLessThan(75);
  });
});
