import type { BookPort, Change } from "../workbook/port";
import { readSettings, settingsChanges } from "../workbook/settings";

export const ACCOUNT_IDS = ["metal", "refining", "treatment", "lot", "rounding", "clients"] as const;
export type AccountId = (typeof ACCOUNT_IDS)[number];

/** The names that the shop's books use. */
export type Accounts = Readonly<Record<AccountId, string>>;

interface Account {
  readonly id: AccountId;
  readonly title: string;
  readonly about: string;
  /** A plain name until the shop tells its own. */
  readonly usual: string;
}

export const accountFields: readonly Account[] = [
  { id: "metal", title: "Metal taken in", about: "Debited with the value of the payable metal.", usual: "Silver from clients" },
  { id: "refining", title: "Refining charges", about: "Credited.", usual: "Refining charges earned" },
  { id: "treatment", title: "Treatment charges", about: "Credited.", usual: "Treatment charges earned" },
  { id: "lot", title: "Lot charges", about: "Credited.", usual: "Lot charges earned" },
  { id: "rounding", title: "Rounding", about: "The cents by which rounded lines differ from the payout.", usual: "Rounding" },
  { id: "clients", title: "Owed to clients", about: "Credited with the payout; debited where a client owes.", usual: "Owed to clients" },
];

export const ACCOUNTS_KEY = "accounts";

const usual = Object.fromEntries(accountFields.map(({ id, usual: name }) => [id, name])) as Accounts;

/** With our own names where the shop has told none. */
export const accountsWith = (told: Readonly<Partial<Record<AccountId, string>>>): Accounts => ({ ...usual, ...Object.fromEntries(Object.entries(told).filter(([, name]) => name.trim() !== "")) });

export async function readAccounts(port: BookPort): Promise<Accounts> {
  const kept = (await readSettings(port)).values.get(ACCOUNTS_KEY);
  if (typeof kept !== "object" || kept === null) return usual;
  const told = Object.entries(kept).filter(([id, name]) => ACCOUNT_IDS.some((one) => one === id) && typeof name === "string");
  return accountsWith(Object.fromEntries(told) as Partial<Record<AccountId, string>>);
}

/** What to write so that the workbook keeps the names; those that are our own are not kept. */
export function accountChanges(port: BookPort, accounts: Accounts): Promise<readonly Change[]> {
  const own = Object.entries(accounts).filter(([id, name]) => name.trim() !== "" && name !== usual[id as AccountId]);
  return settingsChanges(port, new Map([[ACCOUNTS_KEY, own.length === 0 ? undefined : Object.fromEntries(own)]]));
}
