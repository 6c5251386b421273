import { dayNumber, readDay } from "../../lots/calendar";
import type { Weight } from "../../lots/plausible";
import type { PerMass } from "../../lots/quote";
import type { Settling, StatementInput } from "../../lots/settlement";
import { SettleFault, type SettlementFigures, settlementFigures } from "../../lots/settlement-figures";
import type { BookPort } from "../../workbook/port";
import type { Notation } from "../notation";
import { readingValues } from "../value-reading";
import type { Entered } from "./memory";
import { LABELS, type SettleKey } from "./settle-keys";

/** The form as it is read. */
export interface ReadSettlement {
  readonly faults: ReadonlyMap<SettleKey, string>;
  /** What is still to come: an umpire's assay. No mistake. */
  readonly awaits: string | null;
  /** Labels of what is still to be written. */
  readonly needs: readonly string[];
  /** Null while something is missing or wrong. */
  readonly result: { readonly settling: Settling; readonly figures: SettlementFigures } | null;
  /** What the paper says beside it; null while something of it is missing or wrong. */
  readonly paper: Pick<StatementInput, "number" | "date" | "client" | "goods" | "quoted" | "priceFrom"> | null;
}

const NEEDED: readonly SettleKey[] = ["weight", "price", "payable"];

export async function readSettlement(entered: (key: SettleKey) => Entered, uncertainty: Settling["uncertainty"], quote: string | null, notation: Notation, port: BookPort): Promise<ReadSettlement> {
  const faults = new Map<SettleKey, string>();
  const text = (key: SettleKey): string => entered(key).text.trim();
  const values = readingValues(notation, port);
  const needs = NEEDED.filter((key) => text(key) === "").map((key) => LABELS[key]);
  if (text("ours") === "" && text("theirs") === "") needs.push("an assay");

  async function one(key: SettleKey): Promise<number | string | undefined> {
    const read = await values.read(text(key));
    if (read !== null && "fault" in read) return fault(key, read.fault);
    return read?.value;
  }
  async function number(key: SettleKey): Promise<number | undefined> {
    const value = await one(key);
    return typeof value === "string" ? fault(key, `Cannot read ${value}: write the number alone`) : value;
  }
  async function measured(key: SettleKey, unit: string): Promise<(Weight & PerMass) | undefined> {
    const value = await number(key);
    if (value !== undefined && value < 0) return fault(key, `Cannot use ${LABELS[key].toLowerCase()} = ${value}: it must be a number from 0 up`);
    return value === undefined ? undefined : { value, unit: entered(key).unit ?? unit };
  }
  function fault(key: SettleKey, sentence: string): undefined {
    faults.set(key, sentence);
    return undefined;
  }
  const given = <K extends string, V>(key: K, value: V | undefined): Partial<Record<K, V>> => (value === undefined ? {} : ({ [key]: value } as Partial<Record<K, V>>));

  const [weight, price, payable] = [await measured("weight", "g"), await measured("price", "ozt"), await one("payable")];
  const priceFrom = values.lastCell(text("price"));
  const assays = { ...given("ours", await one("ours")), ...given("theirs", await one("theirs")), ...given("limit", await one("limit")), ...given("umpire", await one("umpire")) };
  const terms = { ...given("refiningCharge", await measured("refiningCharge", "ozt")), ...given("treatmentCharge", await measured("treatmentCharge", "ozt")), ...given("lotCharges", await number("lotCharges")), ...given("deduction", await one("deduction")) };
  const found = { ...given("outturn", await measured("outturn", "ozt")), ...given("dropped", await measured("dropped", "ozt")), ...given("liquor", await measured("liquor", "ozt")), ...given("stubs", await measured("stubs", "ozt")), ...given("residues", await measured("residues", "ozt")) };
  const quoted = await number("quoted");
  let awaits: string | null = null;
  let result: ReadSettlement["result"] = null;
  if (faults.size === 0 && weight && price && payable !== undefined && Object.keys(assays).some((key) => key === "ours" || key === "theirs")) {
    const settling: Settling = { weight, assays, terms: { price, payable, ...terms }, payment: text("payment") === "metal" ? "metal" : "money", metalUnit: text("metalUnit"), found, ...(uncertainty ? { uncertainty } : {}) };
    try {
      result = { settling, figures: settlementFigures(settling) };
    } catch (thrown) {
      if (!(thrown instanceof SettleFault)) throw thrown;
      if (thrown.isAwaited) awaits = thrown.message;
      else if (thrown.fields.length === 0) fault("price", thrown.message);
      else for (const field of thrown.fields) fault(field, thrown.message);
    }
  }
  return { faults, awaits, needs, result, paper: paper() };

  function paper(): ReadSettlement["paper"] {
    const day = readDay(text("date"));
    if (text("number") === "") fault("number", "Write the number of the statement");
    if (!day) fault("date", "Write the day of the settlement");
    if (!day || text("number") === "") return null;
    const told = (key: "client" | "goods") => (text(key) === "" ? {} : { [key]: text(key) });
    return { number: text("number"), date: dayNumber(day), ...told("client"), ...told("goods"), ...(quoted === undefined ? {} : { quoted: { payout: quoted, ...(quote === null ? {} : { quote }) } }), ...(priceFrom === null ? {} : { priceFrom }) };
  }
}
