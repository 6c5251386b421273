import { existsSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeAll, describe, expect, it, vi } from "vitest";
import type { Command } from "../../src/cli/command";
import { journal } from "../../src/cli/journal";
import { reconcile } from "../../src/cli/reconcile";
import { accountChanges, accountsWith } from "../../src/journal/accounts";
import { csvText } from "../../src/journal/csv";
import { bookOf, goodRows, seeded } from "../lots/reconcile-books";
import { uglyBooks } from "../lots/ugly/books";
import { lotsIn, placed } from "../month/books";
import { column, journalIn, readElsewhere, rowsOf } from "./books";

const folder = mkdtempSync(join(tmpdir(), "lotwright-ledger-"));
const at = (name: string): string => join(folder, name);

beforeAll(async () => {
  const rows = rowsOf(20, (row, i) => void (i === 1 && (row[column("Payout")] = 600)));
  const port = await placed(await bookOf(rows));
  await port.write(await accountChanges(port, accountsWith({ metal: "=1200 Silver" })));
  writeFileSync(at("lots.xlsx"), port.file.bytes);
  writeFileSync(at("good.xlsx"), (await placed(await bookOf(goodRows(38)))).file.bytes);
  writeFileSync(at("wrong.xlsx"), (await placed(await seeded({ N6: 1400, B9: 20_260_314 }, 38))).file.bytes);
  writeFileSync(at("no-place.xlsx"), await uglyBooks["French Canada"]());
  writeFileSync(at("no-book.xlsx"), "PK and nothing more");
});
afterEach(() => void vi.restoreAllMocks());

/** Runs a command: what it printed, what it remarked, and how it ended; or the sentence with which it refused. */
async function run(command: Command, ...words: readonly string[]): Promise<{ readonly out: string[]; readonly remarks: string[]; readonly ends: number | string }> {
  const [out, remarks]: [string[], string[]] = [[], []];
  vi.spyOn(console, "log").mockImplementation((line: string) => void out.push(line));
  vi.spyOn(console, "error").mockImplementation((line: string) => void remarks.push(line));
  try {
    return { out, remarks, ends: await command.run(words) };
  } catch (fault) {
    return { out, remarks, ends: fault instanceof Error ? fault.message : String(fault) };
  }
}

describe("the command journal", () => {
  it("writes the last month's settlements with the workbook's own account names, and never changes the workbook", async () => {
    const before = readFileSync(at("lots.xlsx"));
    const { out, remarks, ends } = await run(journal, at("lots.xlsx"), at("march.csv"));
    expect(ends).toBe(0);
    expect(out).toEqual([expect.stringMatching(/^2026-03: 16 settlements in \d+ lines, debits (\d+\.\d\d), credits \1$/)]);
    expect(remarks).toEqual([expect.stringMatching(/^Lot 26-002: its terms give/), "4 lots of 2026-03 are not settled yet and not in the journal"]);
    const rows = readElsewhere(at("march.csv"));
    expect(rows[1]?.slice(0, 4)).toEqual(["2026-03-01", "26-001", "C-01", "'=1200 Silver"]);
    expect(readFileSync(at("march.csv"), "utf8")).toBe(csvText(await journalIn(await lotsIn(await placed(await bookOf(rowsOf(20, (row, i) => void (i === 1 && (row[column("Payout")] = 600)))))), undefined, accountsWith({ metal: "=1200 Silver" }))));
    expect(readFileSync(at("lots.xlsx")).equals(before)).toBe(true);
  });

  it("keeps a file that is there already unless it may replace it", async () => {
    writeFileSync(at("kept.csv"), "mine");
    expect((await run(journal, at("lots.xlsx"), at("kept.csv"))).ends).toMatch(/--force/);
    expect(readFileSync(at("kept.csv"), "utf8")).toBe("mine");
    expect((await run(journal, at("lots.xlsx"), at("kept.csv"), "--force", "--month", "2026-03")).ends).toBe(0);
    expect(readElsewhere(at("kept.csv"))).toHaveLength(readElsewhere(at("march.csv")).length);
  });

  it.each([
    [["lots.xlsx", "none.csv", "--month", "2026-05"], /^2026-05 has no lot that is settled: there is nothing to write$/],
    [["lots.xlsx", "none.csv", "--month", "May"], /^Cannot read the month "May": write it as 2026-03$/],
    [["lots.xlsx", "none.csv", "--month"], /^Give a value after --month, such as --month 2026-03$/],
    [["lots.xlsx", "none.csv", "--moth", "2026-03"], /^There is no "--moth" here/],
    [["lots.xlsx"], /^Give the workbook to read and the name of the file to write$/],
    [["no-place.xlsx", "none.csv"], /does not know where its lots live/],
    [["no-book.xlsx", "none.csv"], /^2$/],
  ] as const)("refuses %j with a sentence and writes nothing", async (words, sentence) => {
    const { ends } = await run(journal, ...words.map((word) => (/\.(xlsx|csv)$/.test(word) ? at(word) : word)));
    expect(String(ends)).toMatch(sentence);
    expect(existsSync(at("none.csv"))).toBe(false);
  });
});

describe("the command reconcile", () => {
  it("ends with 0 where nothing contradicts itself, and tells what was looked at", async () => {
    const { out, remarks, ends } = await run(reconcile, at("good.xlsx"));
    expect([out, ends]).toEqual([["Nothing contradicts itself in 38 lots"], 0]);
    expect(remarks).toContain("Payout: 38 looked at");
  });

  it("ends with 1 where something does, a line for each with its cell and the reason", async () => {
    const { out, ends } = await run(reconcile, at("wrong.xlsx"));
    expect(ends).toBe(1);
    expect(out.map((line) => line.split("\t"))).toEqual([
      ["Lots!B9", "Dates", "Lot 26-008", "Date", "20260314 is no date: write the day as a date"],
      ["Lots!N6", "Payout", "Lot 26-005", "Payout", expect.stringMatching(/^The terms of its row give/)],
      ["2 contradictions in 2 lots of 38"],
    ]);
  });

  it.each([
    [[], /^Give the workbook whose lots are to be looked at$/],
    [["good.xlsx", "lots.xlsx"], /^Give one name: "/],
    [["no-place.xlsx"], /does not know where its lots live/],
    [["no-book.xlsx"], /^2$/],
  ] as const)("refuses %j with a sentence", async (words, sentence) => {
    expect(String((await run(reconcile, ...words.map((word) => at(word)))).ends)).toMatch(sentence);
  });
});
