import { describe, expect, it } from "vitest";
import { find } from "../../src/catalogue/catalogue";
import type { Entry } from "../../src/catalogue/entry";
import { readArgument } from "../../src/pane/argument";
import { type Computed, compute } from "../../src/pane/all-functions/compute";
import { portNotation } from "../../src/pane/notation";
import { choices } from "../../src/pane/all-functions/suggestions";
import { MemoryPort } from "./memory-port";

const cells = {
  B4: 10,
  B5: "lb",
  B6: null,
  D1: 100, D2: 200,
  E1: 925, E2: "sterling",
  F1: { value: "#DIV/0!", formula: "=1/0", error: true, message: "Cannot divide by zero" },
  F2: { value: "#REF!", formula: "=X1", error: true },
  "Prices!B4": 24,
};

function wanted(name: string): Entry {
  const entry = find(name);
  if (!entry) throw new Error(`No function ${name}`);
  return entry;
}

async function computed(name: string, ...texts: readonly string[]): Promise<Computed> {
  const entry = wanted(name);
  const given = entry.parameters.map(({ wants }, i) => readArgument(texts[i] ?? "", portNotation, choices(wants)));
  return compute(entry, given, "Sheet1", new MemoryPort(cells));
}

describe("the result beside the form", () => {
  it("is computed from the cells that the fields name, with its name and unit", async () => {
    const { outcome, notes } = await computed("COPPER", "B4", "B5");
    expect(outcome).toMatchObject({ kind: "result", of: "copper", unit: "lb" });
    expect(outcome.kind === "result" && outcome.rows[0]?.[0]).toBeCloseTo(2.9455390930784, 12);
    expect(notes).toEqual([
      { parameter: "fine", sentence: "B4 holds 10", isFault: false },
      { parameter: "unit", sentence: "B5 holds “lb”", isFault: false },
    ]);
  });
  it("reads a cell of another sheet", async () => {
    const { outcome } = await computed("PAYOUT", "100", "ozt", "Prices!B4");
    expect(outcome).toMatchObject({ kind: "result", rows: [[2400]] });
  });
  it("names the cells in its working", async () => {
    const { outcome } = await computed("COPPER", "B4", "lb");
    const lines = outcome.kind === "result" ? (outcome.working?.lines ?? []) : [];
    expect(lines.map(({ text }) => text)).toContain("silver = B4 = 10 lb = 4535.9237 g");
  });
  it("reads ranges row by row", async () => {
    const { outcome, notes } = await computed("MELTFINENESS", "D1:D2", "E1:E2");
    expect(outcome).toMatchObject({ kind: "result", rows: [[925]] });
    expect(notes[0]?.sentence).toBe("D1:D2 has 2 filled of 2 cells");
  });
  it("waits for what is needed, and tells before that what is wrong already", async () => {
    expect(await computed("COPPER")).toEqual({ notes: [], outcome: { kind: "waiting", needs: ["fine", "unit"] } });
    const { outcome, notes } = await computed("FINEWEIGHT", "10", "oz");
    expect(outcome).toEqual({ kind: "waiting", needs: ["fineness"] });
    expect(notes).toEqual([{ parameter: "unit", sentence: expect.stringContaining('write "ozt"'), isFault: true }]);
  });
  it("puts a fault beside the argument that it names", async () => {
    const { outcome, notes } = await computed("FINEWEIGHT", "100", "ozt", "92.5");
    expect(outcome).toMatchObject({ kind: "fault", code: "#VALUE!", parameters: ["fineness"], canWait: false });
    expect(notes).toEqual([{ parameter: "fineness", sentence: expect.stringContaining('write "92.5%" or 925'), isFault: true }]);
  });
  it("names the argument though the fault is in a row of its range", async () => {
    const { notes } = await computed("MELTFINENESS", "{1;2}", "{925;92.5}");
    expect(notes).toEqual([{ parameter: "finenesses", sentence: expect.stringContaining("row 2"), isFault: true }]);
  });
  it("tells an empty cell, which may still be filled", async () => {
    const { outcome, notes } = await computed("COPPER", "B6", "lb");
    expect(outcome).toMatchObject({ kind: "fault", canWait: true, parameters: ["fine"] });
    expect(notes).toContainEqual({ parameter: "fine", sentence: "B6 is empty", isFault: false });
  });
  it("passes on the error that a cell shows, and why", async () => {
    const { outcome, notes } = await computed("COPPER", "F1", "lb");
    expect(outcome).toMatchObject({ kind: "fault", code: "#DIV/0!", canWait: true });
    expect(notes[0]?.sentence).toBe("F1 shows #DIV/0!: Cannot divide by zero");
    expect((await computed("UNACCOUNTED", "F1:F2", "1", "1", "1")).notes[0]?.sentence).toMatch(/^A cell of F1:F2 shows #DIV\/0!/);
    expect((await computed("COPPER", "F2", "lb")).notes[0]?.sentence).toBe("F2 shows #REF!: mend that cell first");
  });
  it("refuses a range or a list where one value is asked for", async () => {
    const { outcome } = await computed("COPPER", "D1:D2", "lb");
    expect(outcome).toMatchObject({ kind: "fault", canWait: false, sentence: expect.stringContaining("one cell") });
    expect((await computed("COPPER", "{1;2}", "lb")).outcome).toMatchObject({ kind: "fault", sentence: expect.stringContaining("one value") });
  });
  it("shows a column's rows though one of them has a fault", async () => {
    const { outcome } = await computed("FINEWEIGHTS", "{100;100}", "ozt", "{92.5;925}");
    expect(outcome).toMatchObject({ kind: "result", rows: [[{ fault: { kind: "ambiguous" } }], [92.5]] });
  });
  it("owns up to a fault of our own", async () => {
    const broken = { ...wanted("VERSION"), call: () => { throw new TypeError("x is undefined"); } };
    const { outcome } = await compute(broken, [], "Sheet1", new MemoryPort());
    expect(outcome).toMatchObject({ kind: "fault", sentence: expect.stringContaining("the fault is in Lotwright") });
  });
  it("says in a sentence that the workbook cannot be read", async () => {
    const entry = wanted("COPPER");
    const port = new MemoryPort(cells);
    port.fault = "the sheet is protected";
    const { notes } = await compute(entry, [readArgument("B4", portNotation), readArgument("lb", portNotation)], "Sheet1", port);
    expect(notes).toEqual([{ parameter: "fine", sentence: "Cannot read B4: the sheet is protected", isFault: true }]);
  });
});
