import type { Journal } from "./journal";
import { centsText } from "./money";

export const COLUMNS = ["Date", "Lot", "Client", "Account", "Debit", "Credit", "Memo"] as const;

/** As a file: RFC 4180, in UTF-8 without a mark at its beginning. */
export const csvBytes = (journal: Journal): Uint8Array => new TextEncoder().encode(csvText(journal));

export function csvText({ settlements }: Journal): string {
  const amount = (value: bigint): string => (value === 0n ? "" : centsText(value));
  const lines = settlements.flat().map(({ date, lot, client, account, debit, credit, memo }) => [date, plainText(lot), plainText(client), plainText(account), amount(debit), amount(credit), plainText(memo)]);
  return [COLUMNS, ...lines].map((line) => `${line.map(quoted).join(",")}\r\n`).join("");
}

/** What a spreadsheet that opens the file would take for a formula; the wide signs are those of East Asian keyboards. */
const FORMULA_LIKE = /^\s*[=+\-@＝＋－＠]|^[\t\r\n]/u;

/** An apostrophe before it keeps a text a text. */
const plainText = (text: string): string => (FORMULA_LIKE.test(text) ? `'${text}` : text);

const quoted = (text: string): string => (/[",\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

export const csvName = ({ month: { year, month } }: Pick<Journal, "month">): string => `journal-${year}-${String(month).padStart(2, "0")}.csv`;
