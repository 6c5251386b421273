import { existsSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { openXlsx } from "../../src/workbook/file";
import { lotwright } from "./lotwright";

const sample = fileURLToPath(new URL("../../sample-workbooks/cost-sheet.xlsx", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "lotwright-"));
const inFolder = (name: string): string => join(folder, name);

describe("share and unshare", () => {
  it("make a copy without our formulas and turn it back, and never change what they read", () => {
    const before = readFileSync(sample);
    const [copy, back] = [inFolder("copy.xlsx"), inFolder("back.xlsx")];
    const shared = lotwright("share", sample, copy);
    expect(shared).toMatchObject({ code: 0, out: expect.stringMatching(/^\d+ cells: \d+ hold ordinary formulas now, 0 their values/) });
    expect(lotwright("recalc", copy).out).toMatch(/^0 cells computed/);
    const put = lotwright("unshare", copy, back);
    expect(put).toMatchObject({ code: 0, out: expect.stringMatching(/^\d+ formulas of ours stand again, 0 cells stay/) });
    expect(lotwright("recalc", back)).toMatchObject({ code: 0, out: expect.stringMatching(/^\d{3,} cells computed, 0 differ/) });
    expect(readFileSync(sample).equals(before)).toBe(true);
  });

  it("put fresh values into the copy where the stored ones are out of date", () => {
    const file = openXlsx(readFileSync(sample));
    const cell = [...file.cells("Lots")].find(({ formula }) => formula?.startsWith("=LOT.FINEWEIGHT("))?.address ?? "";
    const fresh = [...file.cells("Lots")].find(({ address }) => address === cell)?.value;
    const stale = inFolder("stale.xlsx");
    writeFileSync(stale, file.patch([{ sheet: "Lots", cell, value: 12345.678 }]));
    const copy = inFolder("of-stale.xlsx");
    const shared = lotwright("share", stale, copy, "--values");
    expect(shared.error).toMatch(/out-of-date values: the copy has fresh ones/);
    expect([...openXlsx(readFileSync(copy)).cells("Lots")].find(({ address }) => address === cell)).toMatchObject({ formula: null, value: fresh });
  });

  it("list a cell that was changed in the copy, and end with 1", () => {
    const [copy, changed] = [inFolder("c.xlsx"), inFolder("changed.xlsx")];
    lotwright("share", sample, copy);
    writeFileSync(changed, openXlsx(readFileSync(copy)).patch([{ sheet: "Lots", cell: "K5", formula: null, value: 6 }]));
    expect(lotwright("unshare", changed, inFolder("d.xlsx"))).toMatchObject({ code: 1, out: expect.stringContaining("Lots!K5\tstays as it is: what stands there was changed\twas =LOT.COPPER(") });
  });

  it.each<[string, readonly string[], RegExp]>([
    ["without a name for the copy", ["share", sample], /name of the one to write/],
    ["onto the file itself", ["share", sample, sample], /needs a name of its own/],
    ["with a flag that there is not", ["share", sample, inFolder("x.xlsx"), "--value"], /There is no "--value" here/],
    ["with a third name", ["unshare", sample, inFolder("x.xlsx"), "y.xlsx"], /came after them/],
    ["of a file that is no copy", ["unshare", sample, inFolder("x.xlsx")], /no sheet of workings/],
    ["of a file that is not there", ["share", inFolder("none.xlsx"), inFolder("x.xlsx")], /there is no such file/],
  ])("refuse in a sentence to run %s, end with 2 and write nothing", (_, words, says) => {
    expect(lotwright(...words)).toMatchObject({ code: 2, error: expect.stringMatching(says) });
    expect(existsSync(inFolder("x.xlsx"))).toBe(false);
  });

  it("replace a copy that is there only when forced", () => {
    const copy = inFolder("there.xlsx");
    writeFileSync(copy, "mine");
    expect(lotwright("share", sample, copy)).toMatchObject({ code: 2, error: expect.stringContaining("is there already") });
    expect(readFileSync(copy, "utf8")).toBe("mine");
    expect(lotwright("share", sample, copy, "--force").code).toBe(0);
  });
});
