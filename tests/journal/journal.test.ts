import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { accountChanges, accountsWith, readAccounts } from "../../src/journal/accounts";
import { csvBytes, csvText } from "../../src/journal/csv";
import type { Journal, JournalLine } from "../../src/journal/journal";
import { journalSheet } from "../../src/journal/journal-sheet";
import { cents, centsText } from "../../src/journal/money";
import { saysSettled } from "../../src/lots/settled";
import { bookOf } from "../lots/reconcile-books";
import { type UglyBook, uglyBooks } from "../lots/ugly/books";
import { lotsIn, placed } from "../month/books";
import { MARCH, column, journalFrom, journalIn, readElsewhere, rowsOf, shortly } from "./books";

const folder = mkdtempSync(join(tmpdir(), "lotwright-journal-"));

function written(journal: Journal, name: string): string[][] {
  const path = join(folder, name);
  writeFileSync(path, csvBytes(journal));
  return readElsewhere(path);
}

/** Sums a column of amounts by its digits alone. */
const total = (rows: readonly string[][], at: number): bigint => rows.slice(1).reduce((sum, row) => sum + BigInt((row[at] || "0.00").replace(".", "")), 0n);

describe("a month's settlements", () => {
  it("balance to the cent, each for itself and all together, as another program reads them", async () => {
    const journal = await journalFrom(await bookOf(rowsOf(60)));
    expect(journal.settlements).toHaveLength(48);
    for (const lines of journal.settlements) expect(lines.reduce((rest, { debit, credit }) => rest + debit - credit, 0n)).toBe(0n);
    expect(journal.debit).toBe(journal.credit);
    const rows = written(journal, "balanced.csv");
    expect(rows[0]).toEqual(["Date", "Lot", "Client", "Account", "Debit", "Credit", "Memo"]);
    expect(total(rows, 4)).toBe(journal.debit);
    expect(total(rows, 5)).toBe(journal.debit);
    expect(rows.slice(1).every((row) => row.length === 7 && (row[4] === "") !== (row[5] === ""))).toBe(true);
    expect(journal.remarks).toEqual(["12 lots of 2026-03 are not settled yet and not in the journal"]);
  });

  it("have the metal as debit, the charges and the payout as credit, as a pencil gives them", async () => {
    const journal = await journalFrom(await bookOf(rowsOf(1)));
    // 490.5 g of 925 at 96 % and 25 per ozt; 0.5 per payable ozt, 2 per lb of net weight, 15 for the lot.
    const payable = (490.5 * 0.925 * 0.96) / 31.1034768;
    const [metal, refining, treatment] = [payable * 25, payable * 0.5, (490.5 / 453.59237) * 2].map((amount) => amount.toFixed(2));
    const payout = (payable * 24.5 - (490.5 / 453.59237) * 2 - 15).toFixed(2);
    expect(written(journal, "one.csv").slice(1)).toEqual([
      ["2026-03-01", "26-001", "C-01", "Silver from clients", metal, "", "Metal value"],
      ["2026-03-01", "26-001", "C-01", "Refining charges earned", "", refining, "Refining charge"],
      ["2026-03-01", "26-001", "C-01", "Treatment charges earned", "", treatment, "Treatment charge"],
      ["2026-03-01", "26-001", "C-01", "Lot charges earned", "", "15.00", "Lot charges"],
      ["2026-03-01", "26-001", "C-01", "Owed to clients", "", payout, "Payout"],
    ]);
  });

  it("have a line for the cent that rounded lines are off, on the side that needs it", async () => {
    const rounding = shortly(await journalFrom(await bookOf(rowsOf(60)))).flat().filter((line) => line.startsWith("Rounding"));
    expect(new Set(rounding)).toEqual(new Set(["Rounding 1 | 0", "Rounding 0 | 1"]));
  });

  it("stand as two lines over the row's own payout where its terms give another, and that is said", async () => {
    const journal = await journalFrom(await bookOf(rowsOf(4, (row, i) => void (i === 1 && (row[column("Payout")] = 600)))));
    expect(shortly(journal)[1]).toEqual(["Silver from clients 60000 | 0", "Owed to clients 0 | 60000"]);
    expect(journal.remarks).toEqual([expect.stringMatching(/^Lot 26-002: its terms give \d+\.\d\d and its payout is 600\.00, so that it stands as two lines/)]);
  });

  it("turn sides where the payout is below zero", async () => {
    const journal = await journalFrom(await bookOf(rowsOf(3, (row) => (row[column("Lot charges")] = 5000) && (row[column("Payout")] = Math.round((Number(row[column("Payout")]) - 4985) * 100) / 100))));
    for (const lines of journal.settlements) {
      expect(lines.at(-1)).toMatchObject({ account: "Owed to clients", credit: 0n, memo: "Payout, below zero: the client owes it" });
      expect(lines.at(-1)?.debit).toBeGreaterThan(0n);
      expect(lines.reduce((rest, { debit, credit }) => rest + debit - credit, 0n)).toBe(0n);
    }
    expect(journal.settlements).toHaveLength(3);
    const two = await journalFrom(await bookOf(rowsOf(3, (row) => void (row[column("Payout")] = -12.5))));
    expect(shortly(two)[0]).toEqual(["Silver from clients 0 | 1250", "Owed to clients 1250 | 0"]);
  });

  it("never pass over a lot in silence: undated, unnumbered, unpriced, without a client or unpaid", async () => {
    const book = await bookOf(
      rowsOf(30, (row, i) => {
        if (i === 0) row[column("Date")] = null;
        if (i === 1) row[column("Date")] = "some day";
        if (i === 2) row[column("Lot")] = null;
        if (i === 3) [row[column("Price")], row[column("Payout")]] = [null, null];
        if (i === 5) row[column("Client")] = null;
        if (i === 6) row[column("Payout")] = null;
        if (i === 7) row[column("Price")] = null;
        if (i === 8) row[column("Payout")] = "see letter";
      }),
    );
    const journal = await journalFrom(book);
    expect(journal.remarks).toEqual([
      "Lot 26-001 has no date that can be read, so that it is in the journal of no month",
      "Lot 26-002 has no date that can be read, so that it is in the journal of no month",
      "Row 4 has no lot number: the journal calls it row 4",
      "Lot 26-004 has no payout and no price, so that it is not in the journal",
      "Lot 26-006 has no client: its lines do not say to whom the payout is owed",
      expect.stringMatching(/^Lot 26-007 has no payout in its row: the journal has \d+\.\d\d, which its terms give$/),
      "Lot 26-008 has no price, so that it stands as two lines over its payout",
      "Lot 26-009: ‘see letter’ in N10 is no amount, so that the lot is not in the journal: write the payout as a number",
      "6 lots of 2026-03 are not settled yet and not in the journal",
    ]);
    expect(journal.settlements.map(([line]) => line?.lot)).toContain("row 4");
    expect(journal.settlements).toHaveLength(20);
  });

  it("take the terms that the list has not from the shop, and say so where they do not give the payout", async () => {
    const rows = rowsOf(3, (row, i) => {
      if (i === 1) row[column("Payout")] = 100;
    }).map((row) => [0, 1, 2, 3, 4, 5, 6, 8, 11, 16, 13].map((at) => row[at] ?? null));
    const book = await lotsIn(await placed(await bookOf(rows, ["Lot", "Date", "Client", "Gross (g)", "Tare (g)", "Net (g)", "Fineness (‰)", "Price (per ozt)", "Treatment charge (per lb)", "Status", "Payout"])));
    const shop = { payable: { value: 0.96 }, refiningCharge: { value: 0.5, unit: "ozt" }, lotCharges: { value: 15 } } as const;
    const journal = await journalIn(book, MARCH, accountsWith({}), shop);
    expect(journal.settlements.map((lines) => lines.filter(({ account }) => account !== "Rounding").length)).toEqual([5, 2, 5]);
    expect(journal.remarks).toEqual([expect.stringMatching(/^Lot 26-002: its terms, with the shop’s payable share, refining charge, lot charges, give \d+\.\d\d and its payout is 100\.00, so that it stands as two lines/)]);
  });

  it("whose payout is a formula of ours with terms of its own are not sent to Reconcile", async () => {
    const port = await placed(await bookOf(rowsOf(2)));
    await port.write([{ sheet: "Lots", cell: "N2", content: '=LOT.PAYOUT(H2,"ozt",I2,0.9)' }]);
    const journal = await journalIn(await lotsIn(port));
    expect(journal.remarks).toEqual([expect.stringMatching(/^Lot 26-001: its terms give .* by a formula with terms of its own, so that it stands as two lines over the payout$/)]);
    expect(shortly(journal)[0]).toHaveLength(2);
  });

  it("of a list that has no terms are two lines each, which is said once", async () => {
    const rows = rowsOf(5).map((row) => [0, 1, 2, 3, 13].map((at) => row[at] ?? null));
    const journal = await journalFrom(await bookOf(rows, ["Lot", "Date", "Client", "Gross (g)", "Payout"]));
    expect(journal.settlements.map((lines) => lines.length)).toEqual([2, 2, 2, 2, 2]);
    expect(journal.remarks).toEqual(["The list has no columns for all of the terms, so that 5 lots stand as two lines over the payout"]);
  });

  it("of a French-Canadian book keep their accents, and count the settled lot alone", async () => {
    const journal = await journalFrom(await uglyBooks["French Canada"]());
    const rows = written(journal, "french.csv");
    expect(rows.slice(1).map((row) => row.slice(0, 6))).toEqual([
      ["2026-03-02", "26-03-01", "Atelier Nord", "Silver from clients", "6732.34", ""],
      ["2026-03-02", "26-03-01", "Atelier Nord", "Owed to clients", "", "6732.34"],
    ]);
    expect(journal.remarks).toEqual([expect.stringContaining("its terms give 6738.81 and its payout is 6732.34"), "2 lots of 2026-03 are not settled yet and not in the journal"]);
    const named = await journalIn(await lotsIn(await placed(await uglyBooks["French Canada"]())), MARCH, accountsWith({ metal: "Métal reçu — « argent »", clients: "À payer aux clients" }));
    expect(written(named, "accounts.csv").slice(1).map((row) => row[3])).toEqual(["Métal reçu — « argent »", "À payer aux clients"]);
  });

  it.each(["pounds and short headings", "two-row headings", "United Kingdom"] as const satisfies readonly UglyBook[])("balance in the untidy book ‘%s’", async (name) => {
    const rows = written(await journalFrom(await uglyBooks[name]()), "ugly.csv");
    expect(total(rows, 4)).toBe(total(rows, 5));
  });
});

describe("the file", () => {
  const line = (more: Partial<JournalLine>): JournalLine => ({ date: "2026-03-02", lot: "L-1", client: "C-01", account: "Metal", debit: 100n, credit: 0n, memo: "Metal value", ...more });
  const journal = (...lines: JournalLine[]): Journal => ({ month: MARCH, settlements: [lines], debit: 0n, credit: 0n, remarks: [] });

  it.each(["=HYPERLINK(\"x\")", "+48 shop", "-none-", "@bench", "\t=1+1", " =1+1", "＝1+1", "\r=1", "-12"])("keeps the client %j from being taken for a formula, by an apostrophe", (client) => {
    const [, row] = written(journal(line({ client })), "formula.csv");
    expect(row?.[2]).toBe(`'${client}`);
  });

  it("keeps formula-like lots, accounts and memos as texts too, and leaves other texts alone", () => {
    const [, row] = written(journal(line({ lot: "=A1", account: "+fees", memo: "-" , client: "O'Neil & \"Sons\", Ltd" })), "texts.csv");
    expect(row).toEqual(["2026-03-02", "'=A1", "O'Neil & \"Sons\", Ltd", "'+fees", "1.00", "", "'-"]);
  });

  it("takes line breaks, quotation marks, commas and any letters, and ends its lines with CR LF", () => {
    const clients = ["two\nlines", "three\r\nmore\r", "a \"quoted\" name", "1,5 kg; semi", "Łódź 銀 𝄞", " blanks around "];
    const rows = written(journal(...clients.map((client) => line({ client }))), "signs.csv");
    expect(rows.slice(1).map((row) => row[2])).toEqual(clients);
    expect(csvText(journal(line({}))).split("\r\n")).toHaveLength(3);
    expect(csvBytes(journal(line({}))).slice(0, 4)).toEqual(new TextEncoder().encode("Date"));
  });

  it("gives back any text, less the apostrophe", () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: "grapheme" }).filter((text) => !text.includes("\0")), { minLength: 1, maxLength: 8 }), (clients) => {
        const rows = written(journal(...clients.map((client) => line({ client }))), "any.csv");
        rows.slice(1).forEach((row, i) => expect([clients[i], `'${clients[i]}`]).toContain(row[2]));
        expect(rows.slice(1).every((row) => !/^[=+\-@\t\r\n]/.test(row[2] ?? ""))).toBe(true);
      }),
      { numRuns: 25 },
    );
  });
});

describe("money", () => {
  it("is whole cents, half of one going away from zero", () => {
    expect([0.005, 1.005, -1.005, 2.675, 1e15 / 100, 5123.456789, -0.004].map((amount) => centsText(cents(amount)))).toEqual(["0.01", "1.01", "-1.01", "2.68", "10000000000000.00", "5123.46", "0.00"]);
  });
});

describe("a status", () => {
  it.each([["paid", true], ["Settled 3 April", true], ["réglé", true], ["payée", true], ["unpaid", false], ["not paid", false], ["to be paid", false], ["part paid", false], ["pas réglé", false], ["en cours", false], ["open", false], ["", false]])("‘%s’ says settled: %s", (status, isIt) => {
    expect(saysSettled(status, "Status")).toBe(isIt);
  });
  it("of yes says so under a heading that asks", () => {
    expect([saysSettled("Y", "Paid?"), saysSettled("n", "Paid?"), saysSettled("x", "Status")]).toEqual([true, false, false]);
  });
});

describe("in the workbook", () => {
  it("account names are kept with it, our own ones are not, and an empty one is our own again", async () => {
    const port = await placed(await bookOf(rowsOf(2)));
    expect(await readAccounts(port)).toEqual(accountsWith({}));
    const names = accountsWith({ metal: "1200 Silver", clients: " ", rounding: "=odd" });
    await port.write(await accountChanges(port, names));
    expect(await readAccounts(port)).toEqual({ ...accountsWith({}), metal: "1200 Silver", rounding: "=odd" });
    expect(await accountChanges(port, names)).toEqual([]);
  });

  it("the journal as a sheet has the same lines, live totals that agree, and texts that are no formulas", async () => {
    const port = await placed(await bookOf(rowsOf(8, (row, i) => void (i === 0 && (row[column("Client")] = "=HYPER")))));
    const journal = await journalIn(await lotsIn(port));
    const names = (await port.sheets()).map(({ name }) => name);
    await port.write([journalSheet(journal, names)]);
    const count = journal.settlements.flat().length;
    const rows = await port.read({ sheet: "Journal 2026-03", range: `A3:G${4 + count}` });
    expect(rows[0]?.map(({ value }) => value)).toEqual(["Date", "Lot", "Client", "Account", "Debit", "Credit", "Memo"]);
    expect(rows[1]?.[2]).toMatchObject({ value: "=HYPER", formula: null });
    const [debit, credit] = [rows.at(-1)?.[4], rows.at(-1)?.[5]];
    expect(debit?.formula).toBe(`=SUM(E4:E${3 + count})`);
    expect(Number(debit?.value)).toBeCloseTo(Number(journal.debit) / 100, 6);
    expect(Number(credit?.value)).toBeCloseTo(Number(journal.credit) / 100, 6);
    expect(journalSheet(journal, [...names, "journal 2026-03"]).newSheet).toBe("Journal 2026-03 (2)");
  });
});
