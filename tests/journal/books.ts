import { execFileSync } from "node:child_process";
import { type Accounts, accountsWith } from "../../src/journal/accounts";
import { type Journal, journalOf } from "../../src/journal/journal";
import type { Shop } from "../../src/lots/shop";
import { HEADINGS, goodRows } from "../lots/reconcile-books";
import { type Content } from "../lots/ugly/writing";
import { type OpenPlace, lotsIn, placed } from "../month/books";

export const MARCH = { year: 2026, month: 3 } as const;

export const journalIn = ({ place }: OpenPlace, month = MARCH, accounts: Accounts = accountsWith({}), shop: Shop = {}): Promise<Journal> => journalOf(place, month, { accounts, shop });

export const journalFrom = async (bytes: Uint8Array): Promise<Journal> => journalIn(await lotsIn(await placed(bytes)));

/** A line short: "clients 0.00 | 12.34", with the accounts of the shop by their usual names. */
export const shortly = (journal: Journal): string[][] => journal.settlements.map((lines) => lines.map(({ account, debit, credit }) => `${account} ${debit} | ${credit}`));

const READER = `
import csv, json, sys
with open(sys.argv[1], encoding="utf-8", newline="") as file:
    print(json.dumps(list(csv.reader(file, strict=True))))
`;

/** The file's rows, as another program's reader finds them. */
export const readElsewhere = (path: string): string[][] => JSON.parse(execFileSync("python3", ["-c", READER, path], { encoding: "utf8" })) as string[][];

/** The good rows of these columns, all in March, with some cells changed. */
export function rowsOf(count: number, change: (row: Content[], i: number) => void = () => undefined): Content[][] {
  return goodRows(count).map((row, i) => {
    row[1] = 46_082 + (i % 28);
    change(row, i);
    return row;
  });
}

export const column = (heading: string): number => HEADINGS.findIndex((one) => one.startsWith(heading));
