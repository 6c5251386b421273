import type { LotMetal } from "./lot-metal";
import { type LotsBlock, NO_CLIENT } from "./lots-block";
import { FINE, MONEY, type Rows, SHARE, type SheetDraft, fixedRange } from "./sheet-draft";

/** The clients of a month's lots, as the list writes them, in the order of their names. */
export function clientsOf(received: readonly LotMetal[]): readonly (string | number)[] {
  const names = new Map(received.map(({ lot }) => lot.value("client") ?? NO_CLIENT).map((name) => [String(name).toLowerCase(), name]));
  return [...names.values()].sort((a, b) => String(a).localeCompare(String(b), "en", { numeric: true }));
}

/** The headings, and the rows in which the clients will stand. */
export function clientHeadings(draft: SheetDraft, clients: readonly unknown[]): Rows {
  draft.block("By client", ["Client"], ["Fine in (ozt)", "In, of finished", "Fine out (ozt)", "Recovery", "Lots", "Payout"], "The recovery is that of the lots that have an outturn.");
  const rows: Rows = { first: draft.row, last: draft.row + Math.max(clients.length, 1) - 1 };
  draft.row = rows.last + 1;
  return rows;
}

/** What came in and went out for each client, over the block of the month's lots. */
export function clientBlock(draft: SheetDraft, { first }: Rows, clients: readonly (string | number)[], { rows }: LotsBlock): void {
  const of = (column: string): string => fixedRange(column, rows);
  if (clients.length === 0) draft.text("A", "none", undefined, first);
  clients.forEach((client, i) => {
    const row = first + i;
    const own = `--(${of("C")}=$A${row})`;
    draft.put("A", client, typeof client === "string" ? { asText: true } : { align: "left" }, row);
    draft.put("B", `=SUMPRODUCT(${own},${of("D")})`, FINE, row);
    draft.put("C", `=SUMPRODUCT(${own},--(${of("F")}>0),${of("D")})`, FINE, row);
    draft.put("D", `=SUMPRODUCT(${own},${of("F")})`, FINE, row);
    draft.put("E", `=IF(D${row}>0,LOT.RECOVERY(D${row},C${row}),"")`, SHARE, row);
    draft.put("F", `=SUMPRODUCT(${own})`, {}, row);
    draft.put("G", `=ROUND(SUMPRODUCT(${own},${of("H")}),2)`, MONEY, row);
  });
}
