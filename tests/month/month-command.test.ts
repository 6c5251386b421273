import { existsSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeAll, describe, expect, it, vi } from "vitest";
import { month } from "../../src/cli/month";
import { shopChanges } from "../../src/lots/shop";
import { FilePort } from "../../src/workbook/file-port";
import { openXlsx } from "../../src/workbook/file";
import { uglyBooks } from "../lots/ugly/books";
import { MARCH, SHOP, close, metal, placed, twoMonths } from "./books";

const folder = mkdtempSync(join(tmpdir(), "lotwright-month-"));
const at = (name: string): string => join(folder, name);
const STOCK = "kind,what,weight,unit,fineness,litres,gramsPerLitre,uncertainty\ncounted,Crystal,21000,g,999.9,,,\nlot,26-012,,,,,,\nshipped,Bars,900,ozt,999,,,\n";
const ASKED = ["--month", "2026-03", "--stock", at("stock.csv")] as const;
const MEASURED = ["--scale", "0.5g", "--assay", "1", "--bias", "0.05%"] as const;
const OPENING = ["--opening", "100", "--opening-uncertainty", "0.3"] as const;

beforeAll(async () => {
  writeFileSync(at("lots.xlsx"), (await placed(await twoMonths())).file.bytes);
  writeFileSync(at("no-place.xlsx"), await uglyBooks["five thousand"]());
  writeFileSync(at("stock.csv"), STOCK);
});
afterEach(() => void vi.restoreAllMocks());

/** Runs the command, and gives what it printed or the sentence with which it refused. */
async function run(...words: readonly string[]): Promise<string> {
  const out: string[] = [];
  vi.spyOn(console, "log").mockImplementation((line: string) => void out.push(line));
  vi.spyOn(console, "error").mockImplementation((line: string) => void out.push(line));
  try {
    out.push(`ends with ${await month.run(words)}`);
  } catch (fault) {
    out.push(String(fault instanceof Error ? fault.message : fault));
  }
  return out.join("\n");
}

describe("the command month", () => {
  it("closes a month into a copy, with the same sheet that the pane makes, and never changes what it reads", async () => {
    const before = readFileSync(at("lots.xlsx"));
    const said = await run(at("lots.xlsx"), at("closed.xlsx"), ...ASKED, ...MEASURED, ...OPENING);
    expect(said).toMatch(/Opening\t100\n.*\nVerdict\tmetal/s);
    expect(said).toMatch(/ends with 0$/);
    expect(readFileSync(at("lots.xlsx")).equals(before)).toBe(true);
    const port = await placed(await twoMonths());
    await close(port, { ...SHOP, bias: 0.0005, month: MARCH, opening: { fine: 100, uncertainty: 0.3 }, counted: [metal("Crystal", 21000, "g", 999.9), { kind: "lot", lot: "26-012" }], shipped: [metal("Bars", 900, "ozt", 999)] });
    const place = { sheet: "Month 2026-03", range: "A1:J80" };
    expect(await new FilePort(openXlsx(readFileSync(at("closed.xlsx")))).read(place)).toEqual(await port.read(place));
  });

  it("reads the opening of the next month from that sheet", async () => {
    writeFileSync(at("april.csv"), "kind,what,weight,unit,fineness\ncounted,Crystal,1000,g,999.9\n");
    expect(await run(at("closed.xlsx"), at("april.xlsx"), "--month", "2026-04", "--stock", at("april.csv"), ...MEASURED)).toMatch(/ends with 0$/);
    const port = new FilePort(openXlsx(readFileSync(at("april.xlsx"))));
    const [[closing] = []] = await port.read({ sheet: "Month 2026-03", range: "B9" });
    const [[opening] = []] = await port.read({ sheet: "Month 2026-04", range: "B6" });
    expect(opening).toMatchObject({ value: closing?.value, formula: "='Month 2026-03'!B9" });
  });

  it("asks for nothing that the workbook keeps of the shop", async () => {
    const port = new FilePort(openXlsx(readFileSync(at("lots.xlsx"))));
    await port.write(await shopChanges(port, { scale: { value: "0,5", unit: "g" }, assay: { value: 1 }, scaleBias: { value: "0.05%" } }));
    writeFileSync(at("shop.xlsx"), port.file.bytes);
    expect(await run(at("shop.xlsx"), at("by-shop.xlsx"), ...ASKED, ...OPENING)).toMatch(/ends with 0$/);
    const read = async (name: string) => new FilePort(openXlsx(readFileSync(at(name)))).read({ sheet: "Month 2026-03", range: "A6:D20" });
    expect(await read("by-shop.xlsx")).toEqual(await read("closed.xlsx"));
  });

  it.each<[string, readonly string[], RegExp]>([
    ["without a month", [at("lots.xlsx"), at("x.xlsx"), "--stock", at("stock.csv")], /Say which month with --month/],
    ["for a month that is none", [at("lots.xlsx"), at("x.xlsx"), "--month", "March", "--stock", at("stock.csv")], /write it as 2026-03/],
    ["without stock", [at("lots.xlsx"), at("x.xlsx"), "--month", "2026-03"], /Name the file of what was counted/],
    ["with a stock file that is not there", [at("lots.xlsx"), at("x.xlsx"), "--month", "2026-03", "--stock", at("none.csv")], /there is no such file/],
    ["without an opening", [at("lots.xlsx"), at("x.xlsx"), ...ASKED, ...MEASURED], /no sheet ‘Month 2026-02’/],
    ["with half an opening", [at("lots.xlsx"), at("x.xlsx"), ...ASKED, ...MEASURED, "--opening", "5"], /together/],
    ["without knowing how the shop measures", [at("lots.xlsx"), at("x.xlsx"), ...ASKED, ...OPENING, "--assay", "1"], /say it with --scale 0.5g and --bias 0$/],
    ["with a scale without its unit", [at("lots.xlsx"), at("x.xlsx"), ...ASKED, ...OPENING, "--scale", "0.5", "--assay", "1", "--bias", "0"], /such as 0.5g/],
    ["of a workbook that does not know where its lots live", [at("no-place.xlsx"), at("x.xlsx"), ...ASKED, ...MEASURED, ...OPENING], /does not know where its lots live/],
    ["of a month that is closed", [at("closed.xlsx"), at("x.xlsx"), ...ASKED, ...MEASURED, ...OPENING], /is closed already/],
    ["with a flag that there is not", [at("lots.xlsx"), at("x.xlsx"), "--months", "2026-03"], /There is no "--months" here/],
    ["onto the file itself", [at("lots.xlsx"), at("lots.xlsx"), ...ASKED], /name of its own/],
  ])("refuses in a sentence to run %s, and writes nothing", async (_, words, says) => {
    expect(await run(...words)).toMatch(says);
    expect(existsSync(at("x.xlsx"))).toBe(false);
  });
});
