import { copyFileSync, existsSync, mkdtempSync, readFileSync, readdirSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { openXlsx } from "../../src/workbook/file";
import { handmade, sheet } from "../workbook/handmade";
import { lotwright } from "./lotwright";

const sample = fileURLToPath(new URL("../../sample-workbooks/cost-sheet.xlsx", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "lotwright-"));
const inFolder = (name: string): string => join(folder, name);

/** The sample with one of our cells holding a stale value. */
function stale(): { path: string; cell: string } {
  const file = openXlsx(readFileSync(sample));
  const found = [...file.cells("Lots")].find(({ formula, value }) => formula?.startsWith("=LOT.FINEWEIGHT(") && typeof value === "number");
  if (!found) throw new Error("The sample has no fine weight");
  const path = inFolder("stale.xlsx");
  writeFileSync(path, file.patch([{ sheet: "Lots", cell: found.address, value: 12345.678 }]));
  return { path, cell: found.address };
}

describe("recalc", () => {
  it("finds nothing to say about a fresh workbook", () => {
    const { out, code } = lotwright("recalc", sample);
    expect(out).toMatch(/^\d{3,} cells computed, 0 differ from what was stored$/);
    expect(code).toBe(0);
  });

  it("lists a stale value with its cell, and what hangs on it", () => {
    const { path, cell } = stale();
    const { out, code } = lotwright("recalc", path);
    expect(out).toContain(`Lots!${cell}\tstored 12345.678\tfresh `);
    expect(code).toBe(1);
  });

  it("writes fresh values into a copy, which then has nothing stale, and leaves the file alone", () => {
    const { path } = stale();
    const before = readFileSync(path);
    const copy = inFolder("fresh.xlsx");
    expect(lotwright("recalc", path, "--write", copy).code).toBe(1);
    expect(lotwright("recalc", copy).code).toBe(0);
    expect(readFileSync(path).equals(before)).toBe(true);
    expect(lotwright("recalc", path, "--write", copy)).toMatchObject({ code: 2, error: expect.stringContaining("is there already") });
    expect(lotwright("recalc", path, "--write", path)).toMatchObject({ code: 2, error: expect.stringContaining("needs a name of its own") });
  });

  it.each<[string, Uint8Array | null, RegExp]>([
    ["missing.xlsx", null, /there is no such file/],
    ["text.xlsx", new TextEncoder().encode("lot,weight\n1,2\n"), /not an \.xlsx workbook/],
    ["empty.xlsx", new Uint8Array(), /empty|not an \.xlsx/],
    ["cut.xlsx", readFileSync(sample).subarray(0, 9000), /damaged/],
    ["locked.xlsx", new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, ...new Uint8Array(600)]), /password|older|encrypted|\.xls/],
  ])("gives one clear line for %s, ends with 2, and writes nothing", (name, bytes, says) => {
    if (bytes) writeFileSync(inFolder(name), bytes);
    const out = inFolder(`out-of-${name}`);
    const result = lotwright("recalc", inFolder(name), "--write", out);
    expect(result.error).toMatch(says);
    expect(result.error.split("\n")).toHaveLength(1);
    expect(result.code).toBe(2);
    expect(existsSync(out)).toBe(false);
    expect(readdirSync(folder).filter((file) => file.endsWith(".part"))).toEqual([]);
  });

  it("leaves what it cannot compute as it is, and says so", () => {
    const file = openXlsx(readFileSync(sample));
    const path = inFolder("beyond.xlsx");
    copyFileSync(sample, path);
    writeFileSync(path, file.patch([{ sheet: "Lots", cell: "Z90", formula: '=BAHTTEXT(LOT.WEIGHT(1,"lb","g"))', value: "as stored" }]));
    const { out, code } = lotwright("recalc", path);
    expect(out).toContain("Lots!Z90\tleft as it is");
    expect(code).toBe(0);
  });

  it("keeps the stored value of a formula nested deeper than it manages", () => {
    const path = inFolder("nested.xlsx");
    writeFileSync(path, handmade({ sheets: { Lots: sheet(`<row r="1"><c r="B1"><f>${"(".repeat(4000)}_xldudf_LOT_WEIGHT(1,"lb","g")${")".repeat(4000)}</f><v>453.59237</v></c></row>`) } }));
    const { out, code } = lotwright("recalc", path);
    expect(out).toMatch(/^Lots!B1\tleft as it is: .*\n0 cells computed, 0 differ from what was stored$/);
    expect(code).toBe(0);
    expect(lotwright("share", path, inFolder("nested-copy.xlsx"))).toMatchObject({ code: 2, error: expect.stringContaining("Cannot share Lots!B1: Cannot read the formula: it is nested too deep") });
  });
});
